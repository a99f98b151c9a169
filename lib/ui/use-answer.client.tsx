"use client";

import { useEffect, useState } from "react";

/** A pause in typing before the server is asked: short enough to feel at once, long enough to skip single letters. */
const PAUSE_MS = 120;

export type Answer = { state: "idle" | "trouble" } | { state: "answered"; value: unknown };

const IDLE: Answer = { state: "idle" };

/**
 * What the address answers as JSON, asked again when the address changes; null asks nothing. An older question is broken
 * off, and its answer stays until the new one is there. `trouble` when there was none (no connection, an error).
 */
export function useAnswer(address: string | null): Answer {
  const [answer, setAnswer] = useState<Answer>(IDLE);
  useEffect(() => {
    if (address === null) return;
    const stop = new AbortController();
    const ask = async () => {
      const next = await answerOf(address, stop.signal);
      if (!stop.signal.aborted) setAnswer(next);
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [address]);
  return address === null ? IDLE : answer;
}

async function answerOf(address: string, signal: AbortSignal): Promise<Answer> {
  try {
    const response = await fetch(address, { signal, headers: { accept: "application/json" } });
    if (!response.ok) return { state: "trouble" };
    return { state: "answered", value: await response.json() };
  } catch {
    return { state: "trouble" };
  }
}
