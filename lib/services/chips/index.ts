export { listChips, type ChipLine } from "./list.ts";
export { packagesOfText, type PackageText } from "./packages-of-text.ts";
export { readChip, type ChipView, type PinView } from "./read.ts";
export { createChip, touchedChip, updateChip, writePackages, type SavedChip } from "./save.ts";
