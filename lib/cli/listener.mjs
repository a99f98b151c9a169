// What Next's server is told about who asks. Next believes x-forwarded-* from anyone, so they are removed unless the
// configuration names the number of proxies in front.
import http from "node:http";

const FORWARDED = [
  "forwarded",
  "x-forwarded-for",
  "x-forwarded-host",
  "x-forwarded-proto",
  "x-forwarded-port",
  "x-real-ip",
];

/** The address of the visitor: the n-th from the right of x-forwarded-for behind n proxies, else the socket's. */
export function visitorAddress(headers, socketAddress, proxies) {
  if (proxies > 0) {
    const chain = String(headers["x-forwarded-for"] ?? "")
      .split(",")
      .map((address) => address.trim())
      .filter(Boolean);
    const told = chain[chain.length - proxies];
    if (told) return told;
  }
  return socketAddress ?? "unknown";
}

/** Replaces what a visitor may have forged by what is known. Changes the request's headers in place. */
export function cleanHeaders(request, proxies) {
  const address = visitorAddress(request.headers, request.socket.remoteAddress, proxies);
  if (proxies === 0) for (const name of FORWARDED) delete request.headers[name];
  delete request.headers["x-middleware-subrequest"];
  request.headers["x-benchlore-address"] = address;
}

/** Wraps the listener of every HTTP server that this process makes from now on. */
export function guardServers(proxies) {
  const create = http.createServer;
  http.createServer = function createServer(...args) {
    const listener = args.findLastIndex((argument) => typeof argument === "function");
    if (listener >= 0) {
      const inner = args[listener];
      args[listener] = (request, response) => {
        cleanHeaders(request, proxies);
        return inner(request, response);
      };
    }
    return create.apply(this, args);
  };
}
