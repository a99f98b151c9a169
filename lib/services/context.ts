import type { Role } from "#lib/core/shared/index.ts";
import type { Db } from "#lib/infra/db/index.ts";
import type { Secrets } from "#lib/infra/auth/index.ts";
import type { FileStore } from "#lib/infra/files/index.ts";
import type { Pictures } from "#lib/infra/files/pictures.ts";
import type { Limits } from "#lib/infra/limits.ts";
import type { LinkTable, ProseTree } from "#lib/infra/markdown/index.ts";
import type { SymbolReader } from "#lib/infra/symbols/index.ts";
import type { SearchEngine } from "#lib/infra/search/types.ts";
import type { CaseIndex } from "#lib/core/advice/index.ts";
import type { FactsCache } from "./boards/facts-cache.ts";
import { ServiceError } from "./errors.ts";

export const SCOPES = ["read", "write", "review", "import"] as const;
export type Scope = (typeof SCOPES)[number];

export interface MemberActor {
  kind: "member";
  id: string;
  handle: string;
  name: string;
  role: Role;
  /** What an interface token allows; left out: a signed-in person, everything the role allows. */
  scopes?: readonly Scope[];
}
/** Who asks. `club` is the program itself: start-up, command line, demo. */
export type Actor = { kind: "visitor" } | MemberActor | { kind: "club" };

/** All that a service may touch. Pages, routes, commands, the demo and tests build one each. */
export interface Ctx {
  db: Db;
  search: SearchEngine;
  files: FileStore;
  pictures: Pictures;
  /** Reads symbol libraries beside the main thread. */
  symbols: SymbolReader;
  /** Turns Markdown into a sanitised tree of elements; `links` are the records it mentions. */
  prose: (text: string, links: LinkTable) => ProseTree;
  secrets: Secrets;
  limits: Limits;
  /** Features of all published cases, for the ranker. */
  cases: CaseIndex;
  /** Facts of boards, for reading. */
  boards: FactsCache;
  actor: Actor;
  now: () => Date;
  newId: () => string;
  /** Tells whoever follows the change log that there is something new. */
  wake: () => void;
  /** Whose deed the program records in the history, when it loads the demo or old notes. */
  onBehalfOf?: string;
  /** The visitor's address, for limits and the audit trail; none from the command line. */
  address?: string;
}

const RANK: Record<Role, number> = { member: 1, reviewer: 2, steward: 3 };

export function isMember(actor: Actor): actor is MemberActor {
  return actor.kind === "member";
}

export function hasRole(actor: Actor, role: Role): boolean {
  if (actor.kind === "club") return true;
  return actor.kind === "member" && RANK[actor.role] >= RANK[role];
}

/** Throws unless the actor has the role and, when a token asks, the token has the scope. */
export function demand(actor: Actor, role: Role, scope: Scope): void {
  if (actor.kind === "visitor") throw new ServiceError("not-signed-in", "Sign in first.");
  if (!hasRole(actor, role)) throw new ServiceError("forbidden", `Only a ${role} may do this.`);
  if (actor.kind === "member" && actor.scopes && !actor.scopes.includes(scope)) {
    throw new ServiceError("forbidden", `This token lacks the scope "${scope}".`);
  }
}

export function memberId(actor: Actor): string | null {
  return actor.kind === "member" ? actor.id : null;
}
