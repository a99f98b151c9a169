import type { Metadata } from "next";
import { NothingHere } from "#lib/ui/nothing-here.tsx";

export const metadata: Metadata = { title: "Not found" };

/** For a record that is not there, or not for this person. */
export default function RecordNotFound() {
  return <NothingHere />;
}
