import { afterEach, beforeEach, vi, type MockInstance } from "vitest";

// An unexpected console.error is a defect nobody looked at, so it fails the test that caused it.
let spy: MockInstance<typeof console.error>;
beforeEach(() => {
  spy = vi.spyOn(console, "error");
});
afterEach(() => {
  const said = spy.mock.calls;
  spy.mockRestore();
  if (said.length > 0) throw new Error(`console.error was called: ${JSON.stringify(said)}`);
});
