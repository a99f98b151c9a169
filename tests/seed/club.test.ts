import { describe, expect, test } from "vitest";
import { normalForm } from "#lib/core/marking/index.ts";
import { claims, codes } from "#seed/codes/club.ts";
import { genericCodes } from "#seed/codes/generic.ts";
import { houses } from "#seed/houses.ts";
import { members } from "#seed/members.ts";
import { boards, chips, codes as allCodes, claims as allClaims, handWritten, spares } from "#seed/records.ts";
import type { SeedBoard } from "#seed/shapes.ts";

const handles = new Set(members.map(({ handle }) => handle));
const boardOf = new Map<string, SeedBoard>(boards.map((board) => [board.slug, board]));
const chipOf = new Map(chips.map((chip) => [chip.slug, chip]));
const printed = new Set(allCodes.map(({ code }) => code));

function repeated(words: readonly string[]): string[] {
  return words.filter((word, index) => words.indexOf(word) !== index);
}

describe("the members", () => {
  test("are twelve: one steward, two reviewers, nine members", () => {
    const roles = members.map(({ role }) => role);
    expect(members.length).toBe(12);
    expect(repeated(members.flatMap(({ handle, name }) => [handle, name]))).toEqual([]);
    expect(roles.filter((role) => role === "steward")).toEqual(["steward"]);
    expect(roles.filter((role) => role === "reviewer")).toEqual(["reviewer", "reviewer"]);
  });
});

describe("all codes of the club", () => {
  test("are printed in one way each, and no two read as the same code", () => {
    expect(repeated(allCodes.map(({ code }) => code))).toEqual([]);
    expect(repeated(allCodes.map(({ code }) => normalForm(code)))).toEqual([]);
  });

  test("name chips and houses that exist", () => {
    const known = new Set(houses.map(({ slug }) => slug));
    expect(allCodes.filter(({ chip }) => chip !== undefined && !chipOf.has(chip)).map(({ code }) => code)).toEqual([]);
    expect(allCodes.filter(({ house }) => house !== undefined && !known.has(house)).map(({ code }) => code)).toEqual(
      [],
    );
  });

  test("include every chip that somebody could want to buy", () => {
    const carried = new Set(genericCodes.map(({ chip }) => chip));
    const generic = chips.filter(
      ({ slug }) => !slug.includes("-") && /^\d|^(z80|lm|tl|ne|ca|dac|mc|max|tip|uln)/.test(slug),
    );
    expect(generic.map(({ slug }) => slug).filter((slug) => !carried.has(slug))).toEqual([]);
  });
});

describe("the house codes of this folder", () => {
  test("are at least forty, of all six houses, about ten of them unknown", () => {
    expect(codes.length).toBeGreaterThanOrEqual(40);
    expect(new Set(codes.map(({ house }) => house))).toEqual(new Set(houses.map(({ slug }) => slug)));
    expect(codes.filter(({ chip }) => chip === undefined).length).toBe(10);
  });

  test("were seen where the board has the chip that they are", () => {
    const wrong = codes.flatMap(({ code, chip, sightings }) =>
      sightings.flatMap(({ board, at, member }) => {
        const placement = boardOf.get(board)?.placements.find(({ designator }) => designator === at);
        const isRight =
          placement !== undefined && handles.has(member) && (chip === undefined || isLike(placement.chip, chip));
        return isRight ? [] : [`${code} on ${board} ${at}: ${placement?.chip ?? "no such part"}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test("are seen with date codes of four digits", () => {
    const dates = codes.flatMap(({ sightings }) => sightings.flatMap(({ dateCode }) => dateCode ?? []));
    expect(dates.filter((date) => !/^\d{4}$/.test(date))).toEqual([]);
  });
});

/** The part of the parts list, or one of another technology or its clock-from-outside twin that was found there. */
function isLike(listed: string | undefined, found: string): boolean {
  const number = (slug: string): string => slug.replace(/^74(?:ls|hct|hc)/, "74").replace(/e$/, "");
  return listed !== undefined && number(listed) === number(found);
}

describe("all claims of the club", () => {
  test("stand between codes on record, once for a pair and grade", () => {
    expect(allClaims.flatMap(({ from, to }) => [from, to]).filter((code) => !printed.has(code))).toEqual([]);
    expect(repeated(claims.map(({ from, to, grade }) => `${from} > ${to} ${grade}`))).toEqual([]);
  });

  test("carry evidence of members, and of cases on record", () => {
    const evidence = allClaims.flatMap((claim) => claim.evidence);
    const keys = new Set(handWritten.map(({ key }) => key));
    expect(allClaims.filter((claim) => claim.evidence.length === 0)).toEqual([]);
    expect(evidence.filter(({ member }) => !handles.has(member))).toEqual([]);
    expect(evidence.flatMap((one) => one.case ?? []).filter((key) => !keys.has(key))).toEqual([]);
  });

  test("a conditional one names its condition, and only a failed fitting says where the part was proved", () => {
    expect(claims.filter(({ grade, conditions }) => grade === "conditional" && conditions.length === 0)).toEqual([]);
    const proved = claims.flatMap((claim) => claim.evidence).filter((one) => one.provedElsewhere !== undefined);
    expect(new Set(proved.map(({ kind }) => kind))).toEqual(new Set(["fitted-failed"]));
  });

  test("have every grade, several in dispute, and a chain of three", () => {
    expect(new Set(claims.map(({ grade }) => grade))).toEqual(
      new Set(["same-part", "drop-in", "conditional", "adapter", "not-a-fit"]),
    );
    const disputed = claims.filter(({ evidence }) => {
      const kinds = evidence.map(({ kind }) => kind);
      return kinds.includes("fitted-worked") && kinds.includes("fitted-failed");
    });
    expect(disputed.length).toBeGreaterThanOrEqual(6);
    const steps = ["VQ4-2001-01", "VQ4-2001-02", "SM2244P", "74LS244N"];
    const links = new Set(claims.map(({ from, to }) => `${from} > ${to}`));
    expect(steps.slice(1).map((to, n) => links.has(`${steps[n]} > ${to}`))).toEqual([true, true, true]);
  });

  // references.md, "Chip symbols" and "Levels".
  test.each([
    ["74LS244N", "74LS240N", "not-a-fit"],
    ["74LS244N", "74HC244N", "conditional"],
    ["74LS08N", "74LS32N", "not-a-fit"],
    ["74LS373N", "74LS374N", "not-a-fit"],
    ["2764-25", "27128-25", "conditional"],
    ["7805CT", "78L05", "not-a-fit"],
    ["7805CT", "7905CT", "not-a-fit"],
    ["4116-3", "4164-15", "not-a-fit"],
  ])("%s replaced by %s is %s", (from, to, grade) => {
    expect(claims.filter((one) => one.from === from && one.to === to).map((one) => one.grade)).toEqual([grade]);
  });
});

describe("the spares", () => {
  test("are at least thirty, offers and wants, donors among them, of records that exist", () => {
    expect(spares.length).toBeGreaterThanOrEqual(30);
    expect(spares.filter(({ member }) => !handles.has(member))).toEqual([]);
    const unknown = spares.filter(
      ({ code, chip, board }) =>
        (code !== undefined && !printed.has(code)) ||
        (chip !== undefined && !chipOf.has(chip)) ||
        (board !== undefined && !boardOf.has(board)),
    );
    expect(unknown).toEqual([]);
    expect(spares.filter(({ direction }) => direction === "want").length).toBeGreaterThanOrEqual(5);
    expect(
      spares.filter(({ direction, board }) => direction === "offer" && board !== undefined).length,
    ).toBeGreaterThanOrEqual(4);
  });
});
