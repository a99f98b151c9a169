import type { ReactNode } from "react";
import styles from "./shape.module.css";

/**
 * The small signs before words. Each differs from the others in its outline, so that it is told apart in black and white,
 * at 16 px, and by people who see no colours.
 */
export const SHAPES = {
  tick: (
    <>
      <circle className={styles.solid} cx="8" cy="8" r="7" />
      <path className={styles.cut} d="M4.6 8.4 7 10.8 11.4 5.6" />
    </>
  ),
  cross: <path strokeWidth="3.4" d="M2.5 2.5 13.5 13.5M13.5 2.5 2.5 13.5" />,
  diamond: (
    <>
      <path d="M8 .8 15.2 8 8 15.2.8 8Z" />
      <path className={styles.solid} stroke="none" d="M8 .8 8 15.2.8 8Z" />
    </>
  ),
  note: (
    <>
      <path d="M2 2H14V14H2Z" />
      <path d="M5 6.2H11M5 9.8H9" />
    </>
  ),
  dash: <path strokeDasharray="3.2 3.6" strokeWidth="2.4" d="M1.5 8H14.5" />,
  ring: (
    <>
      <circle cx="8" cy="8" r="6.6" />
      <circle className={styles.solid} cx="8" cy="8" r="1.6" stroke="none" />
    </>
  ),
  hourglass: <path d="M3 1.5H13L3 14.5H13Z" />,
  question: (
    <>
      <circle className={styles.solid} cx="8" cy="8" r="7" />
      <path className={styles.cut} d="M5.8 6.2a2.3 2.3 0 1 1 3.2 2.1c-.7.3-1 .7-1 1.4M8 12.2v.1" />
    </>
  ),
  half: (
    <>
      <circle cx="8" cy="8" r="6.6" />
      <path className={styles.solid} stroke="none" d="M8 1.4a6.6 6.6 0 0 0 0 13.2Z" />
    </>
  ),
  equals: <path strokeWidth="2.6" d="M2 5.4H14M2 10.6H14" />,
  stop: (
    <>
      <path className={styles.solid} d="M1.8 1.8H14.2V14.2H1.8Z" />
      <path className={styles.cut} d="M5 8H11" />
    </>
  ),
  info: (
    <>
      <circle cx="8" cy="8" r="6.8" />
      <path d="M8 7.4V11.4M8 4.6v.1" />
    </>
  ),
  triangle: (
    <>
      <path d="M8 1.4 15.2 14.4H.8Z" />
      <path d="M8 6V10M8 12.2v.1" />
    </>
  ),
  octagon: (
    <>
      <path className={styles.solid} d="M5 .9H11L15.1 5V11L11 15.1H5L.9 11V5Z" />
      <path className={styles.cut} d="M8 4.2V8.6M8 11.5v.1" />
    </>
  ),
} satisfies Record<string, ReactNode>;
export type ShapeName = keyof typeof SHAPES;

/** One sign, as high as the text. Decoration only: the word beside it says the same. */
export function Shape({ name }: { name: ShapeName }) {
  return (
    <svg className={styles.shape} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      {SHAPES[name]}
    </svg>
  );
}
