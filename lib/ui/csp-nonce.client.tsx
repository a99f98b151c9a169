"use client";

import { useState } from "react";

/**
 * Tells client code which nonce its style elements need. The first one stays: the policy is the document's, and a later
 * answer to the same document brings a nonce of its own that the policy does not know.
 */
export function CspNonce({ nonce }: { nonce: string }) {
  const [first] = useState(nonce);
  return <meta property="csp-nonce" content={first} nonce={first} suppressHydrationWarning />;
}
