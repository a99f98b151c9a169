import styles from "./marks.module.css";

export interface TimeTextProps {
  /** A time, or its RFC 3339 text. */
  at: Date | string;
  /** The club's zone (`CLUB_TIME_ZONE`), so that server and browser draw the same text. */
  zone: string;
  /** Left out: the day only. */
  withClock?: boolean;
}

/** "24 Nov 2025" or "24 Nov 2025, 19:40", in one fixed locale. */
export function timeText(at: Date | string, zone: string, withClock = false): string {
  return new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    day: "numeric",
    month: "short",
    year: "numeric",
    ...(withClock && { hour: "2-digit", minute: "2-digit" }),
  }).format(typeof at === "string" ? new Date(at) : at);
}

/** A time in the club's zone. */
export function TimeText({ at, zone, withClock }: TimeTextProps) {
  const iso = typeof at === "string" ? at : at.toISOString();
  return (
    <time className={styles.time} dateTime={iso}>
      {timeText(at, zone, withClock)}
    </time>
  );
}
