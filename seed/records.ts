import { houses } from "#seed/houses.ts";
import { members } from "#seed/members.ts";
import { chips as genericChips } from "#seed/chips/index.ts";
import { genericCodes } from "#seed/codes/generic.ts";
import { claims as clubClaims, codes as clubCodes } from "#seed/codes/club.ts";
import { chips as chipsA, claims as claimsA, codes as codesA } from "#seed/customs/a.ts";
import { chips as chipsB, claims as claimsB, codes as codesB } from "#seed/customs/b.ts";
import { cases as casesA } from "#seed/cases/a/index.ts";
import { cases as casesB } from "#seed/cases/b/index.ts";
import { board as harrow } from "#seed/boards/harrow-80.ts";
import { board as merle } from "#seed/boards/merle-mainboard.ts";
import { board as mothDriver } from "#seed/boards/moth-driver.ts";
import { board as mothMpu } from "#seed/boards/moth-mpu.ts";
import { board as ospreyKeyer } from "#seed/boards/osprey-keyer.ts";
import { board as ospreyVoice } from "#seed/boards/osprey-voice-card.ts";
import { board as ploverCounter } from "#seed/boards/plover-counter.ts";
import { board as ploverSupply } from "#seed/boards/plover-supply.ts";
import { board as ternMain } from "#seed/boards/tern-arcade-main.ts";
import { board as ternSound } from "#seed/boards/tern-arcade-sound.ts";
import { board as vetchDeflection } from "#seed/boards/vetch-terminal-deflection.ts";
import { board as vetchLogic } from "#seed/boards/vetch-terminal-logic.ts";
import { spares } from "#seed/spares.ts";
import type { SeedBoard, SeedCase, SeedChip, SeedClaim, SeedCode } from "#seed/shapes.ts";

/** Everything of the demo club that was written by hand, gathered. */
export const boards: SeedBoard[] = [
  harrow,
  merle,
  vetchLogic,
  vetchDeflection,
  ospreyVoice,
  ospreyKeyer,
  ternMain,
  ternSound,
  mothMpu,
  mothDriver,
  ploverCounter,
  ploverSupply,
];
export const chips: SeedChip[] = [...genericChips, ...chipsA, ...chipsB];
export const codes: SeedCode[] = [...genericCodes, ...codesA, ...codesB, ...clubCodes];
export const claims: SeedClaim[] = [...claimsA, ...claimsB, ...clubClaims];
export const handWritten: SeedCase[] = [...casesA, ...casesB];
export { houses, members, spares };
