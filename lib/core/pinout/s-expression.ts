import { done, failed, type Result } from "../shared/index.ts";

/** A bracketed list: its first word, what follows it, and the line on which it opens (from 1). */
export interface SList {
  head: string;
  items: (string | SList)[];
  line: number;
}

export interface SyntaxProblem {
  line: number;
  reason: string;
}

export interface ReadRules {
  /** Deepest nesting that is read; deeper text is refused, whatever it says. */
  nestingLimit: number;
  /** Lists with these first words are checked for balance and then dropped. */
  dropped: ReadonlySet<string>;
  /** Says why a list may not stand inside `parent` (null at the outermost level), or null when it may. */
  misplaced: (head: string, parents: readonly SList[]) => SyntaxProblem | null;
}

const TAB = 9;
const NEWLINE = 10;
const RETURN = 13;
const SPACE = 32;
const QUOTE = 34;
const OPEN = 40;
const CLOSE = 41;
const BACKSLASH = 92;

const ESCAPES: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", '"': '"', "\\": "\\" };

/** Reads one bracketed list and everything in it, in one pass and without recursion. */
export function readSExpression(text: string, rules: ReadRules): Result<SList, SyntaxProblem> {
  const reader = new Reader(text, rules);
  return reader.read();
}

/** The state of one pass: where it stands, on which line, and which lists are open. */
class Reader {
  private at = 0;
  private line = 1;
  private readonly open: SList[] = [];
  private root: SList | null = null;
  private problem: SyntaxProblem | null = null;

  constructor(
    private readonly text: string,
    private readonly rules: ReadRules,
  ) {}

  read(): Result<SList, SyntaxProblem> {
    while (this.problem === null && this.at < this.text.length) this.step();
    if (this.problem !== null) return failed(this.problem);
    const unclosed = this.open.at(-1);
    if (unclosed !== undefined) return failed({ line: unclosed.line, reason: "closing bracket missing" });
    if (this.root === null) return failed({ line: 1, reason: "the file is empty" });
    return done(this.root);
  }

  private step(): void {
    const code = this.text.charCodeAt(this.at);
    if (code === NEWLINE) {
      this.line++;
      this.at++;
    } else if (isBlank(code)) this.at++;
    else if (code === OPEN) this.openList();
    else if (code === CLOSE) this.closeList();
    else if (code === QUOTE) this.readQuoted();
    else this.readWord();
  }

  private stop(line: number, reason: string): void {
    this.problem = { line, reason };
  }

  private openList(): void {
    if (this.root !== null && this.open.length === 0)
      return this.stop(this.line, "text after the last closing bracket");
    if (this.open.length === this.rules.nestingLimit)
      return this.stop(this.line, `brackets nested more than ${this.rules.nestingLimit} deep`);
    this.at++;
    const list: SList = { head: this.headWord(), items: [], line: this.line };
    const misplaced = this.rules.misplaced(list.head, this.open);
    if (misplaced !== null) return this.stop(misplaced.line, misplaced.reason);
    if (!this.rules.dropped.has(list.head)) this.open.at(-1)?.items.push(list);
    this.root ??= list;
    this.open.push(list);
  }

  /** The bare word right behind an opening bracket; empty when something else stands there. */
  private headWord(): string {
    const end = this.wordEnd();
    const word = this.text.slice(this.at, end);
    this.at = end;
    return word;
  }

  private closeList(): void {
    this.at++;
    if (this.open.pop() === undefined) this.stop(this.line, "closing bracket without an opening one");
  }

  private readWord(): void {
    const end = this.wordEnd();
    this.addText(this.text.slice(this.at, end));
    this.at = end;
  }

  private wordEnd(): number {
    let end = this.at;
    while (end < this.text.length && !endsWord(this.text.charCodeAt(end))) end++;
    return end;
  }

  private readQuoted(): void {
    const opened = this.line;
    let value = "";
    let from = this.at + 1;
    for (let i = from; i < this.text.length; i++) {
      const code = this.text.charCodeAt(i);
      if (code === QUOTE) {
        this.at = i + 1;
        return this.addText(value + this.text.slice(from, i));
      }
      if (code === NEWLINE) this.line++;
      else if (code === BACKSLASH && i + 1 < this.text.length) {
        const escaped = this.text.charAt(i + 1);
        if (escaped === "\n") this.line++;
        value += this.text.slice(from, i) + (ESCAPES[escaped] ?? escaped);
        from = i + 2;
        i++;
      }
    }
    this.stop(opened, "closing quotation mark missing");
  }

  private addText(value: string): void {
    const list = this.open.at(-1);
    if (list === undefined) this.stop(this.line, "text outside the brackets");
    else list.items.push(value);
  }
}

function isBlank(code: number): boolean {
  return code === SPACE || code === TAB || code === RETURN || code === NEWLINE || code === 0xfeff;
}

function endsWord(code: number): boolean {
  return isBlank(code) || code === OPEN || code === CLOSE || code === QUOTE;
}

/** The lists of that first word directly inside `list`. */
export function listsNamed(list: SList, head: string): SList[] {
  return list.items.filter((item): item is SList => typeof item !== "string" && item.head === head);
}

/** The n-th bare or quoted word directly inside `list`, the first word not counted. */
export function wordAt(list: SList, n: number): string | undefined {
  const words = list.items.filter((item) => typeof item === "string");
  return words[n];
}
