"use client";

import { useDeferredValue } from "react";
import { readPackageName, readPinLines } from "#lib/core/pinout/index.ts";
import { PACKAGE_STYLES, type PackageStyle } from "#lib/core/shared/index.ts";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { FieldRow, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { PackageFlip } from "#lib/ui/package-flip.client.tsx";
import { PinTable } from "./pin-table.tsx";
import styles from "./chip.module.css";

export interface TypedPackage {
  name: string;
  style: string;
  /** One pin a line. */
  pins: string;
}

export interface PackageFieldsProps {
  id: string;
  number: number;
  chip: string;
  typed: TypedPackage;
  nameError: string | undefined;
  pinsError: string | undefined;
  onChange: (typed: TypedPackage) => void;
  onRemove: () => void;
}

/** One package: its name, its pins as pasted lines, and below what they are read as. */
export function PackageFields({
  id,
  number,
  chip,
  typed,
  nameError,
  pinsError,
  onChange,
  onRemove,
}: PackageFieldsProps) {
  const shown = useDeferredValue(typed.pins);
  const { pins, problems } = readPinLines(shown);
  const named = typed.name.trim();
  const style = PACKAGE_STYLES.find((one) => one === typed.style) ?? readPackageName(named)?.style ?? "other";
  return (
    <fieldset className={styles.package}>
      <legend>{named || `Package ${number}`}</legend>
      <FieldRow>
        <TextField
          label="Package"
          name="packageName"
          mono
          value={typed.name}
          error={nameError}
          onChange={(event) => onChange({ ...typed, name: event.target.value })}
          hint="DIP-20, PLCC-32, SOIC-16, TO-220"
        />
        <SelectField
          label="Drawn as"
          name="packageStyle"
          value={typed.style}
          empty="as its name says"
          choices={PACKAGE_STYLES.map((value: PackageStyle) => ({ value, label: value }))}
          onChange={(event) => onChange({ ...typed, style: event.target.value })}
        />
      </FieldRow>
      <TextArea
        label="Pins, one a line"
        name="packagePins"
        id={id}
        mono
        wide
        rows={Math.min(24, Math.max(6, typed.pins.split("\n").length + 1))}
        value={typed.pins}
        error={pinsError}
        onChange={(event) => onChange({ ...typed, pins: event.target.value })}
        hint="Number, name, type, role, volts: “1 A0 input address”, “19 /OE input enable” (active low), “20 VCC power-in supply 5”. A run is one line: “11-18 D0-7 bidirectional data”."
      />
      <div aria-live="polite">
        {problems.length > 0 && (
          <Notice
            kind="warning"
            title={`${problems.length} ${problems.length === 1 ? "line" : "lines"} cannot be read`}
          >
            <ul>
              {problems.slice(0, 8).map(({ line, reason }) => (
                <li key={line}>
                  Line {line}: {reason}.
                </li>
              ))}
            </ul>
          </Notice>
        )}
        {pins.length > 0 && (
          <p className="soft">
            Read as {pins.length} {pins.length === 1 ? "pin" : "pins"}:
          </p>
        )}
      </div>
      {pins.length > 0 && (
        <div className={styles.preview}>
          <PackageFlip style={style} name={named || "package"} pins={pins} chip={chip} />
          <PinTable label={`Pins of ${named || `package ${number}`}, as read`} pins={pins} />
        </div>
      )}
      <ConfirmButton
        look="quiet"
        question={`Leave out ${named || "this package"} and its ${pins.length} pins?`}
        confirm="Leave it out"
        onConfirm={onRemove}
      >
        Leave this package out
      </ConfirmButton>
    </fieldset>
  );
}
