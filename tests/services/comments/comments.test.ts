import { afterAll, beforeAll, expect, test } from "vitest";
import { newId } from "#lib/infra/id.ts";
import { createComment, deleteComment, listComments, updateComment } from "#lib/services/comments/index.ts";
import { deeds, failedCase, openedCase, refusal, smallClub, type SmallClub } from "../cases/a-club.ts";

let at: SmallClub;
beforeAll(async () => {
  at = await smallClub();
});
afterAll(() => at.club.close());

const comment = (record: string, body = "Mine did that too.") => ({ kind: "case", record, body });

test("a member comments on a case and on one of its checks; visitors read it", async () => {
  const { view, failed } = await failedCase(at.ada);
  const { id } = await createComment(at.bob, comment(view.id));
  await createComment(at.rita, { ...comment(view.id, "Measure at the pin."), check: failed });
  const listed = await listComments(at.visitor, "case", view.id);
  expect(listed).toMatchObject([
    { id, body: "Mine did that too.", check: null, edited: false, by: { handle: "bob" }, mine: false, version: 1 },
    { body: "Measure at the pin.", check: failed, by: { handle: "rita" } },
  ]);
  expect(await deeds(at.club, id)).toEqual(["comment.create"]);
});

test("its author edits it and takes it back; the words go, the place and the history stay", async () => {
  const { id: record } = await openedCase(at.ada);
  const { id } = await createComment(at.bob, comment(record));
  expect(await updateComment(at.bob, id, 1, { body: "Mine did not." })).toEqual({ version: 2 });
  await deleteComment(at.bob, id, 2);
  expect(await listComments(at.bob, "case", record)).toMatchObject([{ id, body: "", takenBack: true, mine: false }]);
  expect(await deeds(at.club, id)).toEqual(["comment.create", "comment.update", "comment.delete"]);
  expect(await refusal(updateComment(at.bob, id, 3, { body: "Back." }))).toMatchObject({ code: "not-found" });
});

test("another member may not change it; a steward may", async () => {
  const { id: record } = await openedCase(at.ada);
  const { id } = await createComment(at.bob, comment(record));
  expect(await refusal(updateComment(at.ada, id, 1, { body: "x" }))).toMatchObject({ code: "forbidden" });
  expect(await refusal(deleteComment(at.rita, id, 1))).toMatchObject({ code: "forbidden" });
  expect((await listComments(at.stella, "case", record))[0]).toMatchObject({ mine: true });
  await deleteComment(at.stella, id, 1);
});

test("written in two windows, the second is shown what stands", async () => {
  const { id: record } = await openedCase(at.ada);
  const { id } = await createComment(at.bob, comment(record));
  await updateComment(at.bob, id, 1, { body: "First." });
  await expect(updateComment(at.bob, id, 1, { body: "Second." })).rejects.toMatchObject({
    code: "stale",
    extra: { present: { body: "First.", version: 2 } },
  });
});

test("sent twice with the same id it is one; the same id for other words is refused", async () => {
  const { id: record } = await openedCase(at.ada);
  const input = { ...comment(record), id: newId() };
  expect(await createComment(at.bob, input)).toEqual({ id: input.id, made: true });
  expect(await createComment(at.bob, input)).toEqual({ id: input.id, made: false });
  expect(await refusal(createComment(at.bob, { ...input, body: "Other." }))).toMatchObject({ code: "conflict" });
});

test("a draft of another, a visitor, an empty text and a strange check are refused", async () => {
  const draft = await openedCase(at.ada, { publish: false });
  expect(await refusal(createComment(at.bob, comment(draft.id)))).toMatchObject({ code: "not-found" });
  const { id: record } = await openedCase(at.ada);
  expect(await refusal(createComment(at.visitor, comment(record)))).toMatchObject({ code: "not-signed-in" });
  expect(await refusal(createComment(at.bob, comment(record, "  ")))).toEqual({ code: "invalid", paths: ["body"] });
  const { failed } = await failedCase(at.ada);
  expect(await refusal(createComment(at.bob, { ...comment(record), check: failed }))).toEqual({
    code: "invalid",
    paths: ["check"],
  });
});
