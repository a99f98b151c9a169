import { z } from "zod";
import { BOARD_KINDS, HAZARDS, NET_ROLES, PLACEMENT_KINDS } from "#lib/core/shared/vocabulary.ts";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);
const text = (most: number) => z.string().max(most, `At most ${most} characters.`);
const designator = line(20).regex(/^[A-Za-z0-9_+-]+$/, "A designator is letters and digits, such as U7 or 4F.");
const id = z.uuidv7("Must be a uuid of version 7.");

export const slug = z
  .string()
  .trim()
  .max(80)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "An address is lower-case letters, digits and single hyphens.");

export const RailInput = z.strictObject({
  name: line(20).min(1, "A rail needs a name, such as +5V."),
  nominal: z.number().min(-100_000).max(100_000),
  ac: z.boolean().default(false),
  tolerancePercent: z.number().positive().max(100).nullable().default(null),
  regulated: z.boolean().default(true),
  source: line(20).default(""),
  notes: text(2000).default(""),
});

export const ConnectorInput = z.strictObject({
  designator,
  name: line(80).default(""),
  kind: line(80).default(""),
  pins: z
    .array(z.strictObject({ number: line(10).min(1), name: line(60).default("") }))
    .max(300)
    .default([]),
});

export const PlacementInput = z.strictObject({
  designator,
  kind: z.enum(PLACEMENT_KINDS),
  /** Slug of a chip record. */
  chip: line(80).nullable().default(null),
  /** Printed on the fitted part, where it is a code of a house. */
  code: line(80).nullable().default(null),
  value: line(80).default(""),
  package: line(40).default(""),
  socketed: z.boolean().default(false),
  sheet: line(20).default(""),
  x: z.number().min(-10_000).max(10_000).nullable().default(null),
  y: z.number().min(-10_000).max(10_000).nullable().default(null),
  notes: text(2000).default(""),
});

export const NetInput = z.strictObject({
  name: line(60).min(1, "A net needs a name."),
  role: z.enum(NET_ROLES).default("unknown"),
  /** `U7.14` */
  pins: z.array(line(40).regex(/^[^.\s]+\.[^.\s]+$/, "A net's pin is written U7.14.")).max(2000),
});

export const SelfTestInput = z.strictObject({
  form: z.enum(["beeps", "flashes", "message"]),
  signal: line(120).min(1),
  meaning: line(500).min(1),
  suspects: z.array(line(20)).max(50).default([]),
});

export const BoardCautionInput = z.strictObject({ at: line(20).default(""), text: line(1000).min(1) });
export const RevisionInput = z.strictObject({ name: line(80).min(1), notes: text(4000).default("") });

const fields = {
  name: line(120).min(1, "A board needs a name."),
  kind: z.enum(BOARD_KINDS),
  maker: line(120),
  machine: line(120),
  year: z.number().int().min(1940).max(2100).nullable(),
  summary: line(600),
  notes: text(100_000),
  width: z.number().positive().max(2000).nullable(),
  height: z.number().positive().max(2000).nullable(),
  hazards: z.array(z.enum(HAZARDS)).max(HAZARDS.length),
  highestVoltage: z.number().min(0).max(100_000).nullable(),
  revisions: z.array(RevisionInput).max(50),
  rails: z.array(RailInput).max(40),
  connectors: z.array(ConnectorInput).max(100),
  placements: z.array(PlacementInput).max(2000),
  nets: z.array(NetInput).max(4000),
  selfTests: z.array(SelfTestInput).max(200),
  cautions: z.array(BoardCautionInput).max(50),
};

export const CreateBoard = z.strictObject({
  id: id.optional(),
  slug: slug.optional(),
  name: fields.name,
  kind: fields.kind,
  maker: fields.maker.default(""),
  machine: fields.machine.default(""),
  year: fields.year.default(null),
  summary: fields.summary.default(""),
  notes: fields.notes.default(""),
  width: fields.width.default(null),
  height: fields.height.default(null),
  hazards: fields.hazards.default([]),
  highestVoltage: fields.highestVoltage.default(null),
  revisions: fields.revisions.default([]),
  rails: fields.rails.default([]),
  connectors: fields.connectors.default([]),
  placements: fields.placements.default([]),
  nets: fields.nets.default([]),
  selfTests: fields.selfTests.default([]),
  cautions: fields.cautions.default([]),
});
export type CreateBoard = z.infer<typeof CreateBoard>;

/** Parts of a board that are edited together; a list that is given replaces the whole list. */
export const UpdateBoard = z.strictObject(fields).partial();
export type UpdateBoard = z.infer<typeof UpdateBoard>;

export const CopyInput = z.strictObject({
  id: id.optional(),
  board: line(120).min(1),
  tag: line(80).min(1, "A copy needs a tag: what is written on its bag."),
  /** Handle of the owner; left out: whoever adds it. */
  owner: line(80).nullable().optional(),
  revision: line(80).default(""),
  serial: line(120).default(""),
  modifications: text(4000).default(""),
  jumpers: text(4000).default(""),
  /** What a battery keeps alive. */
  contents: text(4000).default(""),
  works: z.boolean().nullable().default(null),
  notes: text(4000).default(""),
});
export type CopyInput = z.infer<typeof CopyInput>;

/** What a list of boards may be narrowed to. */
export const ListBoards = z.strictObject({
  kind: z.enum(BOARD_KINDS).optional(),
  /** Part of the name, maker or machine. */
  q: z.string().trim().max(120).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(100),
  /** Slug of the last board of the page before. */
  cursor: z.string().max(120).optional(),
});
