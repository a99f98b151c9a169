export interface PolicyOptions {
  nonce: string;
  /** The development server evaluates code and injects styles. */
  development: boolean;
  /** An identity provider that a sign-in form leads to. */
  issuer?: string | undefined;
}

/** The content security policy of a page: scripts and styles by nonce, nothing from any other server. */
export function contentSecurityPolicy({ nonce, development, issuer }: PolicyOptions): string {
  const formTarget = issuer && URL.canParse(issuer) ? ` ${new URL(issuer).origin}` : "";
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${development ? " 'unsafe-eval'" : ""}`,
    `style-src 'self' ${development ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    // Style attributes of drawings; a nonce cannot be given to an attribute.
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    // The reader of PDF files works in a worker.
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    `form-action 'self'${formTarget}`,
    "frame-ancestors 'none'",
  ].join("; ");
}
