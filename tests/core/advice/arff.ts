import { readFile } from "node:fs/promises";
import path from "node:path";

export interface Table {
  names: string[];
  /** The values declared for each attribute. */
  values: string[][];
  /** Rows of values; null is unknown (`?`). The last attribute is the class. */
  rows: (string | null)[][];
}

/** Reads a nominal data set of Debian's `weka` package; the format is described in the package's documentation. */
export async function readTable(wekaFolder: string, name: string): Promise<Table> {
  const text = await readFile(path.join(wekaFolder, "usr/share/doc/weka/examples", `${name}.arff`), "utf8");
  const table: Table = { names: [], values: [], rows: [] };
  for (const line of text.split(/\r?\n/)) {
    const declared = /^@attribute\s+(\S+)\s+\{(.*)\}/i.exec(line);
    if (declared !== null) {
      table.names.push(declared[1] ?? "");
      table.values.push((declared[2] ?? "").split(",").map((value) => value.trim()));
    } else if (line !== "" && !/^[%@]/.test(line))
      table.rows.push(line.split(",").map((cell) => (cell.trim() === "?" ? null : cell.trim())));
  }
  return table;
}
