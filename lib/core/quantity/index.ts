export * from "./units.ts";
export * from "./quantity.ts";
export * from "./print.ts";
export * from "./reading.ts";
export * from "./expectation.ts";
