import { listMembers } from "#lib/services/members/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import type { Choice } from "#lib/ui/field.tsx";
import { PageHead } from "#lib/ui/section.tsx";

/** The head of the pages of a board's copies. */
export function CopyHead({ slug, name, title }: { slug: string; name: string; title: string }) {
  return (
    <PageHead
      trail={
        <Breadcrumb
          steps={[
            { text: "Boards", href: "/boards" },
            { text: name, href: `/boards/${slug}` },
          ]}
        />
      }
      title={title}
      lead="One real board: whose it is, which issue, and what was done to it."
    />
  );
}

/** Who may own a copy. */
export async function owners(ctx: Ctx): Promise<Choice[]> {
  return (await listMembers(ctx)).map(({ handle, name }) => ({ value: handle, label: name }));
}
