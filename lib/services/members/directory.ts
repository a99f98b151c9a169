import { z } from "zod";
import { ROLES, type Role } from "#lib/core/shared/vocabulary.ts";
import { visibleCases } from "../visible-cases.ts";
import { change } from "../change.ts";
import { memberId, type Ctx } from "../context.ts";
import { invalid, notFound } from "../errors.ts";
import { demandPerson } from "./person.ts";

export interface MemberLine {
  handle: string;
  name: string;
  role: Role;
  about: string;
  since: string;
  cases: number;
  disabled: boolean;
}

/** The members, by name. */
export async function listMembers(ctx: Ctx): Promise<MemberLine[]> {
  const rows = await ctx.db.member.findMany({
    select: {
      handle: true,
      name: true,
      role: true,
      about: true,
      createdAt: true,
      disabledAt: true,
      _count: { select: { cases: { where: visibleCases(ctx.actor) } } },
    },
    orderBy: [{ name: "asc" }, { id: "asc" }],
  });
  return rows.map(({ _count, createdAt, disabledAt, role, ...row }) => ({
    ...row,
    role: role as Role,
    since: createdAt.toISOString(),
    cases: _count.cases,
    disabled: disabledAt !== null,
  }));
}

export interface MemberView extends MemberLine {
  confirmations: { helped: boolean; note: string; number: number; title: string; at: string }[];
  copies: { tag: string; board: { slug: string; name: string }; works: boolean | null }[];
  evidence: number;
}

/** A member's page: what they did for the club. No points, no ranks. */
export async function readMember(ctx: Ctx, handle: string): Promise<MemberView> {
  const row = await ctx.db.member.findUnique({
    where: { handle },
    select: {
      handle: true,
      name: true,
      role: true,
      about: true,
      createdAt: true,
      disabledAt: true,
      confirmations: {
        where: { case: { state: "published" } },
        select: { helped: true, note: true, createdAt: true, case: { select: { number: true, title: true } } },
        orderBy: { createdAt: "desc" },
        take: 50,
      },
      boardCopies: {
        where: { board: { hiddenAt: null } },
        select: { tag: true, works: true, board: { select: { slug: true, name: true } } },
        orderBy: { tag: "asc" },
      },
      _count: { select: { cases: { where: visibleCases(ctx.actor) }, evidence: true } },
    },
  });
  if (!row) throw notFound(`member "${handle}"`);
  return {
    handle: row.handle,
    name: row.name,
    role: row.role as Role,
    about: row.about,
    since: row.createdAt.toISOString(),
    disabled: row.disabledAt !== null,
    cases: row._count.cases,
    evidence: row._count.evidence,
    copies: row.boardCopies,
    confirmations: row.confirmations.map((one) => ({
      helped: one.helped,
      note: one.note,
      number: one.case.number,
      title: one.case.title,
      at: one.createdAt.toISOString(),
    })),
  };
}

const ChangeMember = z.strictObject({ role: z.enum(ROLES).optional(), disabled: z.boolean().optional() });

/** A steward changes a member's role, or shuts and opens their account. The last steward stays one. */
export async function changeMember(ctx: Ctx, handle: string, raw: unknown): Promise<void> {
  const input = ChangeMember.parse(raw);
  demandPerson(ctx, "steward");
  await change(ctx, "steward", async (tx) => {
    // Two stewards who step down at the same time wait for each other here; else both would count the other one.
    await tx.$queryRaw`select "id" from "Member" where "role" = 'steward' order by "id" for update`;
    const found = await tx.member.findUnique({ where: { handle }, select: { id: true, role: true } });
    if (!found) throw notFound(`member "${handle}"`);
    if (found.id === memberId(ctx.actor) && input.disabled)
      throw invalid("disabled", "You cannot shut your own account.");
    const at = ctx.now();
    const changed = await tx.member.update({
      where: { id: found.id },
      data: {
        ...(input.role && { role: input.role }),
        ...(input.disabled !== undefined && { disabledAt: input.disabled ? at : null }),
        version: { increment: 1 },
        updatedAt: at,
      },
      select: { role: true, disabledAt: true },
    });
    const stewards = await tx.member.count({ where: { role: "steward", disabledAt: null } });
    if (stewards === 0)
      throw invalid(input.disabled ? "disabled" : "role", "The club needs a steward: make another one first.");
    if (input.disabled)
      await tx.session.updateMany({ where: { memberId: found.id, revokedAt: null }, data: { revokedAt: at } });
    // An invitation of a former steward would let them in again by the back door.
    if (changed.role !== "steward" || changed.disabledAt)
      await tx.invitation.updateMany({ where: { createdById: found.id, revokedAt: null }, data: { revokedAt: at } });
    return {
      value: undefined,
      did: "member.change",
      touched: [{ kind: "member", id: found.id }],
      detail: { member: handle, role: input.role ?? null, disabled: input.disabled ?? null },
    };
  });
}
