import type { Metadata, Viewport } from "next";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { CspNonce } from "#lib/ui/csp-nonce.client.tsx";
import { appearance } from "#lib/web/appearance.ts";
import "./globals.css";
// After the tokens, which it replaces on paper.
import "./print.css";

export const metadata: Metadata = {
  title: { default: "Benchlore", template: "%s · Benchlore" },
  description: "What a repair club has learnt: faults, readings, causes, cures, and the parts that really fit.",
  robots: { index: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  colorScheme: "light dark",
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#fcfcfc" },
    { media: "(prefers-color-scheme: dark)", color: "#0a0c0d" },
  ],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  // A page made beforehand can carry no nonce, and without one every script of it is blocked.
  await connection();
  const { nonce, theme } = await appearance();
  return (
    <html lang="en" data-theme={theme} suppressHydrationWarning>
      <head>{nonce && <CspNonce nonce={nonce} />}</head>
      <body>
        <a className="skip-link" href="#main">
          Skip to the content
        </a>
        {children}
      </body>
    </html>
  );
}
