import fc from "fast-check";
import { expect, test } from "vitest";
import { createIntLists } from "#lib/core/advice/int-lists.ts";
import { createIntTable } from "#lib/core/advice/int-table.ts";

test("lists in one array hold what plain arrays hold", () => {
  const step = fc.tuple(fc.constantFrom("push", "truncate", "reserve"), fc.nat(4), fc.integer({ min: 0, max: 300 }));
  fc.assert(
    fc.property(fc.array(step, { maxLength: 400 }), (steps) => {
      const lists = createIntLists();
      const twin: number[][] = Array.from({ length: 5 }, () => []);
      twin.forEach(() => lists.create());
      for (const [what, list, value] of steps) {
        const plain = twin[list] ?? [];
        if (what === "push") {
          plain.push(value);
          lists.push(list, value);
        } else if (what === "truncate") {
          plain.length = Math.min(plain.length, value % 8);
          lists.truncate(list, plain.length);
        } else lists.reserve(list, value);
      }
      const held = twin.map((_, list) => [
        ...lists.items().subarray(lists.start(list), lists.start(list) + lists.length(list)),
      ]);
      expect(held).toEqual(twin);
    }),
  );
});

test("blocks that a list has outgrown serve the next list", () => {
  const lists = createIntLists();
  const fill = (length: number) => {
    const list = lists.create();
    for (let at = 0; at < length; at++) lists.push(list, at);
  };
  fill(512);
  const bytes = lists.bytes();
  // Takes the blocks of 2 to 256 that the first list left: without them the array would have to grow.
  fill(256);
  expect(lists.bytes()).toBe(bytes);
});

test("a table of integers holds what a map holds, zero and the extremes included", () => {
  const key = fc.oneof(fc.integer({ min: -20, max: 20 }), fc.constantFrom(0, -2147483648, 2147483647), fc.integer());
  fc.assert(
    fc.property(fc.array(fc.tuple(key, fc.nat(1000)), { maxLength: 500 }), key, (entries, other) => {
      const table = createIntTable();
      const twin = new Map(entries);
      for (const [at, value] of entries) table.set(at, value);
      expect([...twin.keys()].map((at) => [at, table.get(at)])).toEqual([...twin]);
      expect(table.get(other)).toBe(twin.get(other) ?? -1);
    }),
  );
});
