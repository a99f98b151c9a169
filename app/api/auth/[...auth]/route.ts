import { handleAuth } from "#lib/web/auth.ts";

export const GET = handleAuth;
export const POST = handleAuth;
