export { functionNumber, technologyOf } from "./chip-family.ts";
export { mirrored, packageOutline, PIN_SIDES, type Outline, type OutlinePin, type PinSide } from "./outline.ts";
export { readPackageName } from "./package-guess.ts";
export { printPinLines, readPinLines, type LinedPin, type PinLines } from "./pin-lines.ts";
export { comparePinNumbers } from "./pin-number.ts";
export { pinRole, pinRoles, supplyVolts } from "./pin-role.ts";
export { symbolDifference, type SymbolDifference } from "./symbol-difference.ts";
export {
  readPinName,
  readSymbolLibrary,
  SYMBOL_LIMITS,
  type RefusedSymbol,
  type SymbolLibrary,
} from "./symbol-library.ts";
export type { ChipSymbol, PackageGuess, SymbolPin } from "./symbol.ts";
