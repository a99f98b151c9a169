import { toJsxRuntime } from "hast-util-to-jsx-runtime";
import Link from "next/link";
import type { ComponentProps, JSX } from "react";
import { Fragment, jsx, jsxs } from "react/jsx-runtime";
import styles from "./prose.module.css";

/** A sanitised tree of HTML elements (hast), as the Markdown reader answers. */
export type ProseTree = Parameters<typeof toJsxRuntime>[0];

export interface ProseProps {
  tree: ProseTree;
  /** Level of the text's highest heading: 3 below a section's `h2`. */
  headingLevel?: 2 | 3 | 4;
}

type HeadingTag = "h1" | "h2" | "h3" | "h4" | "h5" | "h6";
const HEADINGS: readonly HeadingTag[] = ["h1", "h2", "h3", "h4", "h5", "h6"];

/** A text that people wrote, as elements: no HTML string is ever made of it. */
export function Prose({ tree, headingLevel = 3 }: ProseProps) {
  const content: JSX.Element = toJsxRuntime(tree, {
    Fragment,
    jsx,
    jsxs,
    components: { ...headingsFrom(headingLevel), table: ScrollingTable, a: ProseLink },
  });
  return <div className={styles.prose}>{content}</div>;
}

/** Headings one below the other from the page's place for them, `h6` at the most. */
function headingsFrom(level: number): Partial<Record<HeadingTag, HeadingTag>> {
  return Object.fromEntries(HEADINGS.map((tag, index) => [tag, HEADINGS[Math.min(5, level - 1 + index)] ?? "h6"]));
}

function ScrollingTable(props: ComponentProps<"table">) {
  return (
    // A region that scrolls must be reached by keyboard.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section className={styles.scroll} aria-label="Table" tabIndex={0}>
      <table {...props} />
    </section>
  );
}

function ProseLink({ href = "", children, ...rest }: ComponentProps<"a"> & { "data-record"?: string }) {
  if (href.startsWith("/") && !href.startsWith("//")) {
    return (
      <Link prefetch={false} href={href} title={rest.title} data-record={rest["data-record"]}>
        {children}
      </Link>
    );
  }
  return (
    <a {...rest} href={href} rel={rest.rel ?? "noopener nofollow ugc"}>
      {children}
    </a>
  );
}
