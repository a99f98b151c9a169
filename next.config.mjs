/** Sent with every answer; the content security policy of pages is made for each request in proxy.ts. */
const SECURITY_HEADERS = [
  { key: "x-content-type-options", value: "nosniff" },
  { key: "referrer-policy", value: "same-origin" },
  {
    key: "permissions-policy",
    value: "camera=(self), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()",
  },
  { key: "x-frame-options", value: "DENY" },
];

/** @type {import("next").NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  typedRoutes: false,
  // The development server is opened by its number as well as by `localhost`.
  allowedDevOrigins: ["127.0.0.1"],
  // Thumbnails are made when a photo is stored; no picture comes from another server.
  images: { unoptimized: true, remotePatterns: [] },
  // Native code, and packages that load files of their own beside them.
  serverExternalPackages: ["@electric-sql/pglite", "@node-rs/argon2", "sharp", "pg", "pino"],
  headers: async () => [{ source: "/:path*", headers: SECURITY_HEADERS }],
};

export default config;
