import type { BoardFacts, ChipFacts } from "#lib/core/board/index.ts";
import type {
  BoardKind,
  Hazard,
  NetRole,
  PackageStyle,
  PinRole,
  PinType,
  PlacementKind,
  Technology,
} from "#lib/core/shared/index.ts";
import type { Db, Tx } from "#lib/infra/db/index.ts";

const CHIP = {
  slug: true,
  name: true,
  technology: true,
  packages: {
    select: {
      name: true,
      style: true,
      pins: {
        select: { number: true, name: true, type: true, role: true, activeLow: true, supply: true },
        orderBy: { position: "asc" },
      },
    },
    orderBy: { position: "asc" },
  },
} as const;

const BOARD = {
  slug: true,
  name: true,
  kind: true,
  hazards: true,
  highestVoltage: true,
  rails: {
    select: { name: true, nominal: true, ac: true, tolerancePercent: true, regulated: true, source: true },
    orderBy: { position: "asc" },
  },
  placements: {
    select: {
      designator: true,
      kind: true,
      value: true,
      socketed: true,
      package: true,
      chip: { select: { slug: true } },
    },
    orderBy: { position: "asc" },
  },
  connectors: {
    select: { designator: true, pins: { select: { number: true, name: true }, orderBy: { position: "asc" } } },
    orderBy: { position: "asc" },
  },
  nets: {
    select: { name: true, role: true, pins: { select: { designator: true, pin: true } } },
    orderBy: { position: "asc" },
  },
  cautions: { select: { at: true, text: true }, orderBy: { position: "asc" } },
} as const;

/** What a board's record says, as the core takes it. Null where there is no such board. */
export async function boardFacts(db: Db | Tx, boardId: string): Promise<BoardFacts | null> {
  const board = await db.board.findUnique({ where: { id: boardId }, select: BOARD });
  if (!board) return null;
  const slugs = [...new Set(board.placements.flatMap((placement) => placement.chip?.slug ?? []))];
  const chips = await db.chip.findMany({ where: { slug: { in: slugs } }, select: CHIP });
  const wanted = new Map(board.placements.map((placement) => [placement.chip?.slug, placement.package]));
  // The casts stand on the database's CHECK constraints, which keep these columns to the closed sets.
  return {
    slug: board.slug,
    name: board.name,
    kind: board.kind as BoardKind,
    hazards: board.hazards as Hazard[],
    highestVoltage: board.highestVoltage,
    rails: board.rails,
    placements: board.placements.map(({ chip, kind, designator, value, socketed }) => ({
      designator,
      value,
      socketed,
      kind: kind as PlacementKind,
      chip: chip?.slug ?? null,
    })),
    chips: Object.fromEntries(chips.map((chip) => [chip.slug, chipFacts(chip, wanted.get(chip.slug) ?? "")])),
    connectors: board.connectors,
    nets: board.nets.map((net) => ({
      name: net.name,
      role: net.role as NetRole,
      pins: net.pins.map((pin) => `${pin.designator}.${pin.pin}`),
    })),
    cautions: board.cautions,
  };
}

interface ChipRow {
  slug: string;
  name: string;
  technology: string;
  packages: {
    name: string;
    style: string;
    pins: { number: string; name: string; type: string; role: string; activeLow: boolean; supply: number | null }[];
  }[];
}

/** The pins of the package that sits on the board; of the first package where the placement does not say. */
function chipFacts(chip: ChipRow, packageName: string): ChipFacts {
  const fitting = chip.packages.find((candidate) => candidate.name === packageName) ?? chip.packages[0];
  return {
    slug: chip.slug,
    name: chip.name,
    technology: chip.technology as Technology,
    pins: (fitting?.pins ?? []).map((pin) => ({ ...pin, type: pin.type as PinType, role: pin.role as PinRole })),
    ...(fitting && { package: { name: fitting.name, style: fitting.style as PackageStyle } }),
  };
}
