import type { ReactNode } from "react";
import { classNames } from "./class-names.ts";
import { Shape, type ShapeName } from "./shape.tsx";
import styles from "./notice.module.css";

/**
 * `info`: good to know. `done`: it worked. `warning`: something went wrong or is missing. `caution`: harm to the board.
 * `danger`: harm to people.
 */
export type NoticeKind = "info" | "done" | "warning" | "caution" | "danger";

const LOOKS: Record<NoticeKind, { shape: ShapeName; word: string }> = {
  info: { shape: "info", word: "Note" },
  done: { shape: "tick", word: "Done" },
  warning: { shape: "diamond", word: "Attention" },
  caution: { shape: "triangle", word: "Caution" },
  danger: { shape: "octagon", word: "Danger" },
};

export interface NoticeProps {
  kind: NoticeKind;
  /** One sentence. */
  title: ReactNode;
  children?: ReactNode;
}

/** A notice within the page; its kind is told by word and shape. */
export function Notice({ kind, title, children }: NoticeProps) {
  const { shape, word } = LOOKS[kind];
  return (
    <div className={classNames(styles.notice, styles[kind])}>
      <Shape name={shape} />
      <div className={styles.body}>
        <p className={styles.title}>
          <span className={styles.word}>{word}:</span> {title}
        </p>
        {children}
      </div>
    </div>
  );
}

export interface CautionProps {
  /** Who can be harmed decides how loudly it is said. */
  harms: "people" | "board";
  title: ReactNode;
  children?: ReactNode;
}

/** A caution of the trade, at the top of a page or beside the check that it concerns. */
export function Caution({ harms, title, children }: CautionProps) {
  return (
    <Notice kind={harms === "people" ? "danger" : "caution"} title={title}>
      {children}
    </Notice>
  );
}
