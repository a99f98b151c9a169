import Link from "next/link";
import type { ComponentProps, ReactNode } from "react";
import { classNames } from "./class-names.ts";
import styles from "./button.module.css";

/** `main`: the one thing to do here. `danger`: destroys. `quiet`: looks like a link. Left out: an ordinary button. */
export type ButtonLook = "main" | "danger" | "quiet";

export function buttonClass(look: ButtonLook | undefined, extra?: string): string {
  return classNames(styles.button, look && styles[look], extra);
}

export interface ButtonProps extends ComponentProps<"button"> {
  look?: ButtonLook;
}

/** A button, at least 44 px high. `type` is `button` unless said otherwise. */
export function Button({ look, className, type = "button", ...rest }: ButtonProps) {
  return <button {...rest} type={type} className={buttonClass(look, className)} />;
}

export interface ButtonLinkProps extends Omit<ComponentProps<typeof Link>, "className"> {
  look?: ButtonLook;
}

/** A link that looks like a button: it leads somewhere. Not prefetched. */
export function ButtonLink({ look, ...rest }: ButtonLinkProps) {
  return <Link prefetch={false} {...rest} className={buttonClass(look)} />;
}

/** Buttons side by side; they wrap on a phone. */
export function ButtonRow({ children }: { children: ReactNode }) {
  return <div className={classNames(styles.row, "no-print")}>{children}</div>;
}
