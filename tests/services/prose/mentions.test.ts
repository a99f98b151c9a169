import { afterAll, beforeAll, expect, test } from "vitest";
import { createCode } from "#lib/services/codes/index.ts";
import { mentionedRecords } from "#lib/services/prose/index.ts";
import { openedCase, smallClub, type SmallClub } from "../cases/a-club.ts";

let at: SmallClub;
let codeId: string;
beforeAll(async () => {
  at = await smallClub();
  codeId = (await createCode(at.ada, { code: "VQ4-0061-03" })).id;
});
afterAll(() => at.club.close());

async function hrefs(ctx: SmallClub["ada"], ...texts: string[]): Promise<Record<string, string>> {
  return Object.fromEntries([...(await mentionedRecords(ctx, texts))].map(([key, link]) => [key, link.href]));
}

test("records are found by any way of writing them, over all texts at once", async () => {
  const shown = await openedCase(at.ada);
  const texts = [
    ":code[VQ4-0061-03] and :code[vq4 0061 03], :chip[74LS244] or :chip[74ls244]",
    `:board[Finch CPU] is :board[finch-cpu], see :case[${shown.number}] and :code[nothing like it]`,
  ];
  expect(await hrefs(at.visitor, ...texts)).toEqual({
    "code:VQ4-0061-03": `/codes/${codeId}`,
    "code:vq4 0061 03": `/codes/${codeId}`,
    "chip:74LS244": "/chips/74ls244",
    "chip:74ls244": "/chips/74ls244",
    "board:Finch CPU": "/boards/finch-cpu",
    "board:finch-cpu": "/boards/finch-cpu",
    [`case:${shown.number}`]: `/cases/${shown.number}`,
  });
});

test("a draft is a record for its author only", async () => {
  const draft = await openedCase(at.ada, { publish: false });
  const text = `:case[${draft.number}]`;
  expect(await hrefs(at.ada, text)).toEqual({ [`case:${draft.number}`]: `/cases/${draft.number}` });
  expect(await hrefs(at.bob, text)).toEqual({});
});

test("a text without mentions asks the database nothing and answers nothing", async () => {
  expect(await hrefs(at.ada, "12:30, 3:1, U7:14, :note[x], :case[twelve]")).toEqual({});
});
