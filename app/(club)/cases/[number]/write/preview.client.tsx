"use client";

import { useEffect, useState } from "react";
import { Prose, type ProseTree } from "#lib/ui/prose.tsx";

/** A pause in typing before the text is drawn anew. */
const PAUSE_MS = 300;

/** The text as the page will show it, drawn by the server. While there is no answer the last drawing stays. */
export function Preview({ text, first }: { text: string; first: ProseTree }) {
  const [tree, setTree] = useState(first);
  const [trouble, setTrouble] = useState(false);
  const [drawn, setDrawn] = useState(text);
  useEffect(() => {
    if (text === drawn) return;
    const stop = new AbortController();
    const draw = async () => {
      const next = await treeOf(text, stop.signal);
      if (stop.signal.aborted) return;
      setTrouble(next === null);
      if (next === null) return;
      setTree(next);
      setDrawn(text);
    };
    const timer = setTimeout(() => void draw(), PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [text, drawn]);
  return (
    <>
      {trouble && <p className="soft">No connection just now: the preview waits, your text stays.</p>}
      {text.trim() === "" ? <p className="soft">The page will stand here.</p> : <Prose tree={tree} />}
    </>
  );
}

async function treeOf(text: string, signal: AbortSignal): Promise<ProseTree | null> {
  try {
    const response = await fetch("/api/v1/prose", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ text }),
      signal,
    });
    if (!response.ok) return null;
    const answer = (await response.json()) as { tree: ProseTree };
    return answer.tree;
  } catch {
    return null;
  }
}
