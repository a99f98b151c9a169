export { boardPicture } from "./board-picture.ts";

/** Boards whose picture is put into the demo club. */
export const PICTURED_BOARDS: readonly string[] = [
  "harrow-80",
  "osprey-voice-card",
  "tern-arcade-main",
  "moth-driver",
  "moth-mpu",
];
