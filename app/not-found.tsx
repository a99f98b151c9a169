import type { Metadata } from "next";
import { NothingHere } from "#lib/ui/nothing-here.tsx";
import ClubLayout from "./(club)/layout.tsx";

export const metadata: Metadata = { title: "Not found" };

/** For an address that leads to no page at all; it stands outside the club's layout. */
export default function NotFound() {
  return (
    <ClubLayout>
      <NothingHere />
    </ClubLayout>
  );
}
