import type { Metadata } from "next";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { readAccount } from "#lib/services/members/index.ts";
import { Button } from "#lib/ui/button.tsx";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { SimpleForm } from "#lib/ui/simple-form.client.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { openCtx } from "#lib/web/actor.ts";
import { sessionIdOf } from "#lib/web/auth.ts";
import { clubZone } from "#lib/web/zone.ts";
import {
  endSessionAction,
  passwordAction,
  profileAction,
  revokeTokenAction,
  signOutAction,
  tokenAction,
} from "./actions.ts";

export const metadata: Metadata = { title: "Your account" };

export default async function AccountPage({ searchParams }: { searchParams: Promise<{ welcome?: string }> }) {
  const ctx = await openCtx();
  if (ctx.actor.kind !== "member") redirect("/signin?next=/account");
  const session = await sessionIdOf(await headers());
  const [account, zone, { welcome }] = [await readAccount(ctx, session), await clubZone(), await searchParams];
  return (
    <>
      <PageHead title="Your account" lead={`${account.name}, ${account.role}`}>
        <form action={signOutAction}>
          <Button type="submit">Sign out</Button>
        </form>
      </PageHead>
      {welcome && !account.asksPresent && (
        <Notice kind="info" title="Set your mail address and a password now: the link that you used works only once." />
      )}
      <Section id="profile" title="Profile">
        <SimpleForm
          action={profileAction}
          submit="Save"
          done="Saved."
          fields={[
            { name: "name", label: "Name", value: account.name, required: true, autoComplete: "name" },
            {
              name: "email",
              label: "Mail address",
              hint: "For signing in. Others do not see it.",
              kind: "email",
              value: account.email ?? "",
              autoComplete: "username",
            },
            {
              name: "about",
              label: "About you",
              hint: "What you repair, and with what.",
              kind: "area",
              value: account.about,
              optional: true,
            },
          ]}
        />
      </Section>
      <Section id="password" title="Password">
        <SimpleForm
          action={passwordAction}
          submit={account.hasPassword ? "Change the password" : "Set the password"}
          done="Saved. Your other sign-ins have ended."
          fields={[
            ...(account.asksPresent
              ? [
                  {
                    name: "present",
                    label: "Present password",
                    kind: "password" as const,
                    autoComplete: "current-password",
                    required: true,
                  },
                ]
              : []),
            {
              name: "password",
              label: "New password",
              hint: "At least 10 characters.",
              kind: "password",
              autoComplete: "new-password",
              required: true,
            },
          ]}
        />
      </Section>
      <Section id="sign-ins" title="Where you are signed in" count={account.sessions.length}>
        <Table label="Sign-ins" columns={["Device", "Last seen", { head: "End", hidden: true }]}>
          {account.sessions.map((session) => (
            <tr key={session.id}>
              <th scope="row">{deviceWords(session.device)}</th>
              <td>
                <TimeText at={session.lastSeenAt} zone={zone} withClock />
              </td>
              <td>
                <EndSession id={session.id} />
              </td>
            </tr>
          ))}
        </Table>
        <form action={endSessionAction}>
          <Button type="submit">Sign out everywhere else</Button>
        </form>
      </Section>
      <Section id="tokens" title="Tokens for scripts" count={account.tokens.length}>
        <p>
          A token lets a program use the interface (<code>/api/v1/openapi.json</code> describes it) in your name, as far
          as its scopes allow.
        </p>
        {account.tokens.length === 0 ? (
          <EmptyState title="No token yet.">Make one below; it is shown once.</EmptyState>
        ) : (
          <Table
            label="Tokens"
            columns={["Name", "Begins with", "Scopes", "Last used", "Expires", { head: "Revoke", hidden: true }]}
          >
            {account.tokens.map((token) => (
              <tr key={token.id}>
                <th scope="row">{token.name}</th>
                <td>
                  <code>{token.hint}…</code>
                </td>
                <td>{token.scopes.join(", ")}</td>
                <td>{token.lastUsedAt ? <TimeText at={token.lastUsedAt} zone={zone} /> : "never"}</td>
                <td>{token.expiresAt ? <TimeText at={token.expiresAt} zone={zone} /> : "never"}</td>
                <td>
                  <RevokeToken id={token.id} name={token.name} />
                </td>
              </tr>
            ))}
          </Table>
        )}
        <SimpleForm
          action={tokenAction}
          submit="Make a token"
          done="The token is made."
          secretNote="Copy the token now: it is shown this once."
          fields={[
            { name: "name", label: "What it is for", required: true },
            { name: "scope-read", label: "Read", kind: "checkbox", value: "on" },
            { name: "scope-write", label: "Write: cases, readings, records", kind: "checkbox" },
            { name: "scope-review", label: "Review", kind: "checkbox" },
            { name: "scope-import", label: "Import libraries", kind: "checkbox" },
            {
              name: "days",
              label: "Days until it expires",
              kind: "number",
              value: "365",
              optional: true,
              hint: "Empty: never.",
            },
          ]}
        />
      </Section>
    </>
  );
}

function EndSession({ id }: { id: string }) {
  return (
    <form action={endSessionAction}>
      <Button type="submit" name="id" value={id}>
        End
      </Button>
    </form>
  );
}

function RevokeToken({ id, name }: { id: string; name: string }) {
  const question = `Revoke the token “${name}”? Programs that use it stop working.`;
  return (
    <form action={revokeTokenAction}>
      <ConfirmButton question={question} confirm="Revoke" name="id" value={id}>
        Revoke
      </ConfirmButton>
    </form>
  );
}

/** A device in a few words, from what its browser says of itself. */
function deviceWords(agent: string): string {
  const system = /(Android|iPhone|iPad|Windows|Mac OS X|Linux)/.exec(agent)?.[1] ?? "unknown system";
  const browser = /(Firefox|Edg|Chrome|Safari)/.exec(agent)?.[1] ?? "a program";
  return `${browser.replace("Edg", "Edge")} on ${system.replace("Mac OS X", "macOS")}`;
}
