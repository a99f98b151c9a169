import "server-only";
import { notFound } from "next/navigation";
import type { z } from "zod";
import { ServiceError } from "#lib/services/errors.ts";

/** The search part of a page's address, as Next hands it over. */
export type SearchParams = Record<string, string | string[] | undefined>;

/** What a page was asked for: the values that the schema takes. One that it does not take is as if it were not there. */
export function queryOfPage<T extends z.ZodRawShape>(
  given: SearchParams,
  schema: z.ZodObject<T>,
): { [K in keyof T]?: string } {
  const asked: { [K in keyof T]?: string } = {};
  for (const name of Object.keys(schema.shape) as (keyof T & string)[]) {
    const value = given[name];
    const field = schema.shape[name] as unknown as z.ZodType | undefined;
    if (typeof value === "string" && value !== "" && field?.safeParse(value).success) asked[name] = value;
  }
  return asked;
}

/** A page's address with what it is asked for. */
export function pageAddress(path: string, query: Record<string, string | undefined>): string {
  const given = Object.entries(query).flatMap(([name, value]): [string, string][] => (value ? [[name, value]] : []));
  return given.length === 0 ? path : `${path}?${new URLSearchParams(given).toString()}`;
}

/** What a page reads; where it is not there, or not for the asker to see, the page of what is missing is drawn. */
export async function orNotFound<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") notFound();
    throw error;
  }
}

/** A part of a page's address as people read it. */
export function addressPart(encoded: string): string {
  try {
    return decodeURIComponent(encoded);
  } catch {
    return encoded;
  }
}

export { clubZone } from "./zone.ts";
