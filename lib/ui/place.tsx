import Link from "next/link";
import { classNames } from "./class-names.ts";
import styles from "./marks.module.css";

export interface PlaceProps {
  /** `U7.14`, `J3.5`, `+5V`: the one spelling used everywhere. */
  at: string;
  /** The second point of a check between two. */
  to?: string;
  href?: string;
  /** Not on the board's record. */
  unknown?: boolean;
}

/** A place on a board. */
export function Place({ at, to, href, unknown }: PlaceProps) {
  const text = to ? `${at} → ${to}` : at;
  const className = classNames(styles.place, unknown && styles.unknown);
  if (href) {
    return (
      <Link prefetch={false} className={className} href={href}>
        {text}
      </Link>
    );
  }
  return (
    <span className={className}>
      {text}
      {unknown && <span className="visually-hidden"> (not on the board’s record)</span>}
    </span>
  );
}
