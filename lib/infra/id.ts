import { v7 } from "uuid";

/** A new id: uuid version 7, so that ids of one club sort by the time they were made. */
export function newId(): string {
  return v7();
}
