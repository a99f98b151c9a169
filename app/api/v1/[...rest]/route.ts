import { notFound } from "#lib/services/errors.ts";
import { route } from "#lib/web/http.ts";

/** What is no address of the interface is told so as every other refusal is. */
const nothingHere = route({ role: "anyone", scope: "read" }, async ({ request }) => {
  throw notFound(
    `${request.method} ${new URL(request.url).pathname} in this interface; /api/v1/openapi.json lists all`,
  );
});

export const GET = nothingHere;
export const POST = nothingHere;
export const PUT = nothingHere;
export const PATCH = nothingHere;
export const DELETE = nothingHere;
