import { checkPassword, hashPassword } from "./password.ts";
import { newToken, tokenHash } from "./token.ts";

/** What services need of cryptography. */
export interface Secrets {
  hashPassword(password: string): Promise<string>;
  checkPassword(stored: string | null | undefined, password: string): Promise<boolean>;
  newToken(prefix?: string): string;
  tokenHash(token: string): string;
}

export const secrets: Secrets = { hashPassword, checkPassword, newToken, tokenHash };
export { sessionSecret } from "./secret.ts";
