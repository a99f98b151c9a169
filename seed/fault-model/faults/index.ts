import type { FaultClass } from "../fault.ts";
import { amplifierDead, driverDead, outputsDead, outputStuck } from "./chips.ts";
import { brokenTrace, coldJoint, dirtyContact, socketContact } from "./contacts.ts";
import { wrongPart } from "./earlier-repair.ts";
import { clockDead, contentsLost, memoryBad, resetHeld } from "./memory-and-clock.ts";
import { batteryLeak, electrolyticDry, regulatorDead, tantalumShort } from "./supply.ts";

/** Every class of fault that the model knows. */
export const FAULT_CLASSES: readonly FaultClass[] = [
  outputsDead,
  outputStuck,
  regulatorDead,
  tantalumShort,
  electrolyticDry,
  batteryLeak,
  socketContact,
  dirtyContact,
  coldJoint,
  brokenTrace,
  contentsLost,
  memoryBad,
  clockDead,
  resetHeld,
  wrongPart,
  driverDead,
  amplifierDead,
];
