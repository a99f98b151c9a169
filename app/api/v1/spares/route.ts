import { createSpare, listSpares } from "#lib/services/spares/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json({ spares: await listSpares(ctx, queryValues(query)) }),
);

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createSpare(ctx, await rawJson(request));
  return json(made, { status: made.made ? 201 : 200 });
});
