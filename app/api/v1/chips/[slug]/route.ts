import { readChip, updateChip } from "#lib/services/chips/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const chip = await readChip(ctx, params.slug ?? "");
  return json(chip, { headers: { etag: etag(chip.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const slug = params.slug ?? "";
  await updateChip(ctx, slug, ifMatch(request), await rawJson(request));
  const chip = await readChip(ctx, slug);
  return json(chip, { headers: { etag: etag(chip.version) } });
});
