"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useId, useRef, useState, type KeyboardEvent } from "react";
import { classNames } from "./class-names.ts";
import { Highlighted } from "./highlighted.tsx";
import { groupedHits, hitsOf, type FoundHit } from "./search-answer.ts";
import { useAnswer } from "./use-answer.client.tsx";
import styles from "./search-box.module.css";

const MOST_HITS = 8;

export interface SearchBoxProps {
  defaultValue?: string;
  /** The first page's box: takes the focus and is larger. */
  large?: boolean;
  placeholder?: string;
}

/** The search form with what it would find under it, while typing. Without script it is the form alone. */
export function SearchBox({ defaultValue = "", large, placeholder }: SearchBoxProps) {
  const id = useId();
  const router = useRouter();
  const form = useRef<HTMLFormElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(defaultValue);
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(-1);

  useEffect(() => {
    // By hand and not by `autofocus`, which would move the page of a screen reader before it is read.
    if (large && window.matchMedia("(hover: hover)").matches) input.current?.focus();
  }, [large]);

  useEffect(() => {
    // What was typed before this script came stands in the box already, and nobody has been told.
    const typed = input.current?.value ?? "";
    if (typed === "" || typed === defaultValue) return;
    setText(typed);
    setOpen(true);
  }, [defaultValue]);

  const question = open ? text.trim() : "";
  const answer = useAnswer(question ? `/api/v1/search?q=${encodeURIComponent(question)}&limit=${MOST_HITS}` : null);
  const groups = groupedHits(answer.state === "answered" ? hitsOf(answer.value) : []);
  const hits = groups.flatMap((group) => group.hits);
  const shown = question !== "" && answer.state !== "idle";
  const chosen = at >= 0 ? hits[at] : undefined;
  const hitId = (hit: FoundHit) => `${id}-${hit.kind}-${hit.id}`;

  function close() {
    setOpen(false);
    setAt(-1);
  }

  function onKeyDown(event: KeyboardEvent) {
    if (event.key === "Escape" && shown) {
      event.preventDefault();
      close();
    } else if ((event.key === "ArrowDown" || event.key === "ArrowUp") && hits.length > 0) {
      event.preventDefault();
      const step = event.key === "ArrowDown" ? 1 : -1;
      // One place more than there are hits: between the last and the first stands the box itself.
      setAt((now) => ((now + 1 + step + hits.length + 1) % (hits.length + 1)) - 1);
    } else if (event.key === "Enter" && chosen) {
      event.preventDefault();
      close();
      router.push(chosen.url);
    }
  }

  useEffect(() => {
    if (chosen) document.getElementById(hitId(chosen))?.scrollIntoView({ block: "nearest" });
  });

  return (
    <search>
      <form
        className={classNames(styles.form, large && styles.large)}
        action="/search"
        method="get"
        onSubmit={close}
        ref={form}
      >
        <label className="visually-hidden" htmlFor={`${id}-input`}>
          Search cases, boards, chips and codes
        </label>
        <input
          ref={input}
          id={`${id}-input`}
          className={styles.input}
          type="search"
          name="q"
          value={text}
          placeholder={placeholder ?? "Symptom, board or code"}
          autoComplete="off"
          autoCapitalize="off"
          autoCorrect="off"
          spellCheck={false}
          role="combobox"
          aria-expanded={shown && hits.length > 0}
          aria-controls={`${id}-list`}
          aria-autocomplete="list"
          aria-activedescendant={chosen && hitId(chosen)}
          onChange={(event) => {
            setText(event.target.value);
            setOpen(true);
            setAt(-1);
          }}
          onKeyDown={onKeyDown}
          onBlur={(event) => !form.current?.contains(event.relatedTarget) && close()}
        />
        <button className={styles.button} type="submit">
          Search
        </button>
        <div className={shown ? styles.list : "visually-hidden"}>
          {/* The combo box pattern of WAI-ARIA; no HTML element draws what it needs. */}
          {/* oxlint-disable jsx-a11y/prefer-tag-over-role */}
          <div id={`${id}-list`} role="listbox" aria-label="Found" hidden={!shown || hits.length === 0}>
            {groups.map((group) => (
              <div key={group.label} role="group" aria-labelledby={`${id}-${group.label}`} className={styles.group}>
                <p id={`${id}-${group.label}`} role="presentation">
                  {group.label}
                </p>
                {group.hits.map((hit) => (
                  <Link
                    key={hit.url}
                    id={hitId(hit)}
                    role="option"
                    aria-selected={hit === chosen}
                    tabIndex={-1}
                    prefetch={false}
                    className={styles.hit}
                    href={hit.url}
                    onClick={close}
                  >
                    <span className={styles.title}>
                      <Highlighted text={hit.title} />
                    </span>
                    {(hit.board || hit.snippet) && (
                      <span className={styles.about}>
                        {hit.board && `${hit.board}${hit.snippet ? ": " : ""}`}
                        <Highlighted text={hit.snippet} />
                      </span>
                    )}
                  </Link>
                ))}
              </div>
            ))}
          </div>
          {/* oxlint-enable jsx-a11y/prefer-tag-over-role */}
          <SearchStatus state={answer.state} count={hits.length} shown={shown} />
        </div>
      </form>
    </search>
  );
}

/** How many there are, for the ear; that there is nothing, or no answer, for the eye as well. */
function SearchStatus({ state, count, shown }: { state: string; count: number; shown: boolean }) {
  const quiet = !shown || (state === "answered" && count > 0);
  return (
    <output className={quiet ? "visually-hidden" : styles.said}>
      {shown && state === "trouble" && "The search does not answer just now. Enter opens the search page."}
      {shown && state === "answered" && count === 0 && "Nothing yet. Try fewer words, or the code alone."}
      {shown && state === "answered" && count > 0 && `${count} found. Arrow keys choose.`}
    </output>
  );
}
