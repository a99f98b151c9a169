import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { PageHead } from "#lib/ui/section.tsx";
import { SimpleForm } from "#lib/ui/simple-form.client.tsx";
import { currentActor } from "#lib/web/actor.ts";
import { nextAddress } from "#lib/web/next-address.ts";
import { signInAction } from "./actions.ts";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({ searchParams }: { searchParams: Promise<{ next?: string }> }) {
  const next = nextAddress((await searchParams).next);
  if ((await currentActor()).kind === "member") redirect(next);
  return (
    <>
      <PageHead
        title="Sign in"
        lead="Members enter readings, post cases and edit records. Reading needs no account, unless the club says so."
      />
      <SimpleForm
        action={signInAction}
        submit="Sign in"
        pending="Signing in …"
        fields={[
          { name: "email", label: "Mail address", kind: "email", autoComplete: "username", required: true },
          { name: "password", label: "Password", kind: "password", autoComplete: "current-password", required: true },
          { name: "next", label: "", kind: "hidden", value: next },
        ]}
      />
      <p>
        New members come in by a link from a steward. Forgotten your password? A steward can make you a sign-in link.
      </p>
    </>
  );
}
