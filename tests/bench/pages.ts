import { startServer } from "#tests/support/server.ts";
import { preparedDemo } from "#tests/support/prepared-clubs.ts";
import { percentile } from "./machine.ts";

const WARM_UP = 50;
const REQUESTS = 200;
/** What people type; the server answers from the index each time. */
const QUERIES = ["no picture", "74ls244", "VQ4 0061", "freezes when warm", "+5V ripple", "coil dead", "no sond", "U7"];
const CASES = 40;

export interface PageFigures {
  search: number;
  case: number;
  advice: number;
}

/** Median server times over the demo club on the embedded database, at the socket from loopback, one client. */
export async function benchPages(): Promise<PageFigures> {
  const server = await startServer({ copyOf: await preparedDemo() });
  try {
    const cases = Array.from({ length: CASES }, (_, index) => index * 3 + 1);
    return {
      search: await median(
        (n) => `${server.url}/api/v1/search?q=${encodeURIComponent(QUERIES[n % QUERIES.length] ?? "")}`,
      ),
      case: await median((n) => `${server.url}/cases/${cases[n % CASES]}`),
      advice: await median((n) => `${server.url}/api/v1/cases/${cases[n % CASES]}/advice`),
    };
  } finally {
    await server.stop();
  }
}

async function median(address: (n: number) => string): Promise<number> {
  const times: number[] = [];
  for (let n = 0; n < WARM_UP + REQUESTS; n++) {
    const start = performance.now();
    const response = await fetch(address(n));
    await response.arrayBuffer();
    if (!response.ok) throw new Error(`${address(n)} answered ${response.status}`);
    if (n >= WARM_UP) times.push(performance.now() - start);
  }
  return percentile(times, 0.5);
}
