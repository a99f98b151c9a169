import type { Metadata } from "next";
import { invitationOf } from "#lib/services/members/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SimpleForm } from "#lib/ui/simple-form.client.tsx";
import { openCtx } from "#lib/web/actor.ts";
import { joinAction } from "./actions.ts";

export const metadata: Metadata = { title: "Join the club", referrer: "no-referrer" };

export default async function JoinPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const invitation = await invitationOf(await openCtx(), token);
  if (!invitation) {
    return (
      <EmptyState title="This invitation does not open the door any more.">
        It is used up, revoked or too old. Ask the steward who sent it for another.
      </EmptyState>
    );
  }
  return (
    <>
      <PageHead title="Join the club" lead={`${invitation.by} invites you as a ${invitation.role}.`} />
      {invitation.note && <p>{invitation.note}</p>}
      <SimpleForm
        action={joinAction}
        submit="Join"
        pending="Joining …"
        fields={[
          { name: "token", label: "", kind: "hidden", value: token },
          {
            name: "name",
            label: "Your name",
            hint: "As the others will see it.",
            autoComplete: "name",
            required: true,
          },
          {
            name: "handle",
            label: "Short name",
            hint: "For addresses and mentions: lower-case letters, digits, hyphens.",
            mono: true,
            required: true,
          },
          {
            name: "email",
            label: "Mail address",
            hint: "For signing in. Others do not see it.",
            kind: "email",
            autoComplete: "username",
            required: true,
          },
          {
            name: "password",
            label: "Password",
            hint: "At least 10 characters. A few words you can remember are better than a short riddle.",
            kind: "password",
            autoComplete: "new-password",
            required: true,
          },
        ]}
      />
    </>
  );
}
