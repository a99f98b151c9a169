import type { Ctx } from "../context.ts";
import { invalid } from "../errors.ts";
import { planSymbolImport } from "./plan.ts";
import type { ImportView } from "./read.ts";

/** The dry run of a file in any format that is taken. */
export async function planImport(
  ctx: Ctx,
  upload: { format: string; fileName: string; bytes: Uint8Array },
): Promise<ImportView> {
  const { format, fileName, bytes } = upload;
  if (format === "symbols") return planSymbolImport(ctx, { fileName, bytes });
  if (format === "") throw invalid("format", "Say what the file is: symbols (a .kicad_sym library).");
  throw invalid(
    "format",
    `Files of the format "${format.slice(0, 40)}" are not taken yet. Symbol libraries are: symbols.`,
  );
}
