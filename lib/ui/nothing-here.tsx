import { ButtonLink, ButtonRow } from "./button.tsx";
import { PageHead } from "./section.tsx";

/** What a person sees where there is no page or no record. */
export function NothingHere() {
  return (
    <>
      <PageHead
        title="There is no such page here"
        lead="The address may be mistyped, or the record may be a draft that only its author sees. The search finds what is there."
      />
      <ButtonRow>
        <ButtonLink href="/">Search from the first page</ButtonLink>
        <ButtonLink href="/cases">All cases</ButtonLink>
        <ButtonLink href="/signin">Sign in</ButtonLink>
      </ButtonRow>
    </>
  );
}
