"use client";

import type { ReactNode } from "react";
import { Button } from "#lib/ui/button.tsx";
import { SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { blankRow, isBlank, rowText, type ListForm, type Row, type RowField } from "./edit-lists.ts";
import styles from "./board.module.css";

export interface KeyedRow {
  key: number;
  row: Row;
}

export interface ListRowsProps {
  form: ListForm;
  rows: readonly KeyedRow[];
  problems: readonly { path: string; message: string }[] | undefined;
  onChange: (rows: KeyedRow[]) => void;
  /** Offers above the button that adds an empty row. */
  children?: ReactNode;
}

export function keyed(rows: readonly Row[]): KeyedRow[] {
  return rows.map((row, key) => ({ key, row }));
}

/** Rows that are sent: those in which something was typed. */
export function filledRows(form: ListForm, rows: readonly KeyedRow[]): Row[] {
  return rows.filter(({ row }) => !isBlank(form, row)).map(({ row }) => row);
}

export function addRow(rows: readonly KeyedRow[], row: Row): KeyedRow[] {
  return [...rows, { key: Math.max(-1, ...rows.map((one) => one.key)) + 1, row }];
}

/** A list of the board's record, each row with its fields; rows can be added, taken out and moved up. */
export function ListRows({ form, rows, problems, onChange, children }: ListRowsProps) {
  const sent = rows.filter(({ row }) => !isBlank(form, row));
  return (
    <>
      {rows.map(({ key, row }, index) => (
        <RowFields
          key={key}
          form={form}
          row={row}
          rowKey={key}
          isFirst={index === 0}
          problems={problemsOfRow(problems, `${form.list}.${sent.findIndex((one) => one.key === key)}`)}
          onChange={(changed) => onChange(rows.map((one) => (one.key === key ? { key, row: changed } : one)))}
          onRemove={() => onChange(rows.filter((one) => one.key !== key))}
          onUp={index === 0 ? undefined : () => onChange(movedUp(rows, index))}
        />
      ))}
      {children}
      <Button onClick={() => onChange(addRow(rows, blankRow(form)))}>{form.add}</Button>
    </>
  );
}

function movedUp(rows: readonly KeyedRow[], index: number): KeyedRow[] {
  const moved = rows[index];
  const rest = rows.filter((_, at) => at !== index);
  return moved ? rest.toSpliced(index - 1, 0, moved) : rest;
}

interface RowProblem {
  /** Empty: the row as a whole. */
  field: string;
  message: string;
}

function problemsOfRow(problems: ListRowsProps["problems"], path: string): RowProblem[] {
  return (problems ?? []).flatMap((problem) => {
    if (problem.path === path) return [{ field: "", message: problem.message }];
    if (!problem.path.startsWith(`${path}.`)) return [];
    return [{ field: problem.path.slice(path.length + 1).split(".")[0] ?? "", message: problem.message }];
  });
}

interface RowFieldsProps {
  form: ListForm;
  row: Row;
  rowKey: number;
  /** Hints stand in the first row only. */
  isFirst: boolean;
  problems: readonly RowProblem[];
  onChange: (row: Row) => void;
  onRemove: () => void;
  onUp: (() => void) | undefined;
}

function RowFields({ form, row, rowKey, isFirst, problems, onChange, onRemove, onUp }: RowFieldsProps) {
  const called = rowText({ ...form, fields: form.fields.slice(0, 1) }, row) || "this row";
  return (
    <fieldset className={styles.row}>
      <legend className="visually-hidden">{called}</legend>
      {form.fields.map((field, index) => (
        <div key={field.name} className={field.wide ? styles.rowWide : undefined}>
          <OneField
            field={isFirst ? field : withoutHint(field)}
            id={`${form.list}-${rowKey}-${field.name}`}
            value={row[field.name] ?? ""}
            error={errorOf(problems, field.name, index === 0)}
            onChange={(value) => onChange({ ...row, [field.name]: value })}
          />
        </div>
      ))}
      <div className={styles.rowTools}>
        <Button look="quiet" onClick={onRemove} aria-label={`Take out ${called}`}>
          Take out
        </Button>
        {onUp && (
          <Button look="quiet" onClick={onUp} aria-label={`Move ${called} up`}>
            Up
          </Button>
        )}
      </div>
    </fieldset>
  );
}

function withoutHint({ hint: _first, ...field }: RowField): RowField {
  return field;
}

function errorOf(problems: readonly RowProblem[], field: string, isFirst: boolean): string | undefined {
  const found = problems.filter((problem) => problem.field === field || (isFirst && problem.field === ""));
  return found.length === 0 ? undefined : found.map(({ message }) => message).join(" ");
}

interface OneFieldProps {
  field: RowField;
  id: string;
  value: string;
  error: string | undefined;
  onChange: (value: string) => void;
}

function OneField({ field, id, value, error, onChange }: OneFieldProps) {
  const { name, label, kind = "text", mono, hint, choices = [], wide } = field;
  const frame = { label, id, error, value, name: `row-${name}`, ...(hint && { hint }), ...(wide && { wide }) };
  const typed = (event: { target: { value: string } }) => onChange(event.target.value);
  switch (kind) {
    case "select":
      return <SelectField {...frame} choices={choices} onChange={typed} />;
    case "area":
      return (
        <TextArea
          {...frame}
          {...(mono && { mono })}
          rows={Math.min(20, Math.max(2, value.split("\n").length + 1))}
          onChange={typed}
        />
      );
    case "text":
      return <TextField {...frame} {...(mono && { mono })} onChange={typed} />;
  }
}
