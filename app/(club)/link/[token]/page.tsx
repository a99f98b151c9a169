import type { Metadata } from "next";
import { PageHead } from "#lib/ui/section.tsx";
import { SimpleForm } from "#lib/ui/simple-form.client.tsx";
import { useLinkAction } from "./actions.ts";

export const metadata: Metadata = { title: "Sign in by link", referrer: "no-referrer" };

/** The link is used by the button, not by opening the page: mail programs and chats open links by themselves. */
export default async function LinkPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  return (
    <>
      <PageHead
        title="Sign in by link"
        lead="This link signs you in once. Then set a password, so that you can come back."
      />
      <SimpleForm
        action={useLinkAction}
        submit="Sign in"
        pending="Signing in …"
        fields={[{ name: "token", label: "", kind: "hidden", value: token }]}
      />
    </>
  );
}
