export { createClaim, updateClaim, type SavedClaim } from "./claims.ts";
export { addEvidence, restoreEvidence, retractEvidence, type SavedEvidence } from "./evidence.ts";
export { findCode, type CodeChoice, type FoundCode } from "./find.ts";
export { createHouse, listHouses, updateHouse, type HouseView, type SavedHouse } from "./houses.ts";
export type { Provenance } from "./provenance.ts";
export { createCode, updateCode, type SavedCode } from "./save.ts";
export { addSighting, type SavedSighting } from "./sightings.ts";
