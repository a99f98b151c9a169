import Link from "next/link";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { EDIT_STEPS } from "../../edit-lists.ts";
import styles from "../../board.module.css";

interface EditHeadProps {
  slug: string;
  name: string;
  /** Of `EDIT_STEPS`. */
  part: string;
  title: string;
  lead?: string;
}

/** The head of every page on which a board's record is changed, with the way to the others. */
export function EditHead({ slug, name, part, title, lead }: EditHeadProps) {
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Boards", href: "/boards" },
              { text: name, href: `/boards/${slug}` },
            ]}
          />
        }
        kind="Change the board"
        title={title}
        {...(lead && { lead })}
      />
      <nav aria-label="Parts of the record" className={styles.steps}>
        <ul>
          {EDIT_STEPS.map((step) => (
            <li key={step.part}>
              <Link
                prefetch={false}
                href={`/boards/${slug}/edit${step.part && `/${step.part}`}`}
                aria-current={step.part === part ? "page" : undefined}
              >
                {step.text}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
    </>
  );
}
