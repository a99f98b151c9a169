export interface SheetLine {
  /** As printed on the drawing. */
  sheet: string;
  /** Of the file, from 1. */
  page: number;
  title: string;
}

const LINE = /^(?:sheet\s+)?(\S+?)\s*[=:]?\s*(?:page|p\.?)\s*(\d{1,5})\b[\s,:–-]*(.*)$/i;
const SHORT = /^(?:sheet\s+)?(\S+?)\s*[=:]\s*(\d{1,5})\b[\s,:–-]*(.*)$/i;

/** Reads a list of sheets, one a line: `3 = page 4 Clock and reset`, `3 = 4 Clock`, `sheet 3: p. 4`. */
export function readSheetLines(text: string): { sheets: SheetLine[]; problems: { line: number; message: string }[] } {
  const sheets: SheetLine[] = [];
  const problems: { line: number; message: string }[] = [];
  for (const [index, raw] of text.split(/\r\n|[\n\r]/).entries()) {
    const line = raw.trim();
    if (line === "") continue;
    const found = LINE.exec(line) ?? SHORT.exec(line);
    const page = Number(found?.[2] ?? 0);
    if (!found || page < 1)
      problems.push({ line: index + 1, message: "Write sheet, page and what is on it, such as: 3 = page 4 Clock" });
    else sheets.push({ sheet: found[1] ?? "", page, title: (found[3] ?? "").trim() });
  }
  return { sheets, problems };
}
