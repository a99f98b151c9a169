import { readPackageName, readPinLines } from "#lib/core/pinout/index.ts";
import { PACKAGE_STYLES, type PackageStyle } from "#lib/core/shared/index.ts";
import { ServiceError } from "../errors.ts";
import type { PackageInput } from "./schema.ts";

/** A package as it is typed: its pins one a line. */
export interface PackageText {
  name: string;
  /** Empty: as its name says. */
  style: string;
  pins: string;
}

/** Reads packages as they are typed; one without name and pins is left out. Throws `invalid`, naming every bad line. */
export function packagesOfText(packages: readonly PackageText[]): PackageInput[] {
  const problems: { path: string; message: string }[] = [];
  const read = packages.flatMap((one, index) => {
    if (one.name.trim() === "" && one.pins.trim() === "") return [];
    const table = readPinLines(one.pins);
    problems.push(
      ...table.problems.map(({ line, reason }) => ({
        path: `packages.${index}.pins`,
        message: `Line ${line}: ${reason}.`,
      })),
    );
    return [{ name: one.name.trim(), style: styleOf(one), pins: table.pins }];
  });
  if (problems.length > 0) {
    throw new ServiceError("invalid", "Some lines of the pin tables could not be read.", { problems });
  }
  return read;
}

function styleOf({ name, style }: PackageText): PackageStyle {
  return PACKAGE_STYLES.find((known) => known === style) ?? readPackageName(name)?.style ?? "other";
}
