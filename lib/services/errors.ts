/** Why a service refused. Each code has one status in lib/web/http.ts. */
export type ServiceErrorCode =
  | "not-signed-in"
  | "forbidden"
  | "not-found"
  /** Someone else changed the record first; `present` is its state now. */
  | "stale"
  | "version-missing"
  | "conflict"
  | "invalid"
  | "too-large"
  | "unsupported"
  | "too-many"
  | "unavailable";

export interface FieldProblem {
  /** Where, as in the input: `checks.2.measured`. */
  path: string;
  message: string;
}

interface Extra {
  problems?: FieldProblem[];
  /** The record as it stands, for `stale`. */
  present?: unknown;
  /** Seconds to wait, for `too-many`. */
  retryAfter?: number;
}

/** An expected refusal, in words for the person who asked. Anything else that is thrown is a bug. */
export class ServiceError extends Error {
  constructor(
    readonly code: ServiceErrorCode,
    message: string,
    readonly extra: Extra = {},
  ) {
    super(message);
    this.name = "ServiceError";
  }
}

export function notFound(what: string): ServiceError {
  return new ServiceError("not-found", `There is no ${what}, or it is not for you to see.`);
}

export function invalid(path: string, message: string): ServiceError {
  return new ServiceError("invalid", message, { problems: [{ path, message }] });
}
