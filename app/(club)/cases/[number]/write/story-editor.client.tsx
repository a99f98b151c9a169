"use client";

import { useActionState, useEffect, useRef, useState } from "react";
import { Button, ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { TextArea } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import type { ProseTree } from "#lib/ui/prose.tsx";
import type { FormState } from "#lib/web/action.ts";
import { sentByHand } from "../close/sent-by-hand.client.tsx";
import { saveStory } from "./actions.ts";
import { InsertRecord } from "./insert-record.client.tsx";
import { keepDraft, keptDraft } from "./kept-draft.client.tsx";
import { Preview } from "./preview.client.tsx";
import styles from "./write.module.css";

interface StoryEditorProps {
  caseNumber: number;
  caseId: string;
  version: number;
  story: string;
  tree: ProseTree;
}

/** The story of a case: Markdown with its page beside it. What is typed is kept in the browser until it is saved. */
export function StoryEditor({ caseNumber, caseId, version, story, tree }: StoryEditorProps) {
  const [text, setText] = useState(story);
  const [saved, setSaved] = useState({ text: story, version });
  const [restored, setRestored] = useState(false);
  const area = useRef<HTMLDivElement>(null);
  const [state, send, isSending] = useActionState(async (before: FormState<{ version: number }>, form: FormData) => {
    const answer = await saveStory(before, form);
    if (answer.ok && answer.value) {
      setSaved({ text, version: answer.value.version });
      setRestored(false);
      keepDraft(caseId, null);
    }
    return answer;
  }, {});
  const present = presentStory(state.present);
  const theirs = present && present.story !== saved.text ? present.story : null;

  useEffect(() => {
    // After the page has been drawn as the server sent it, which knows nothing of this browser's store.
    const timer = setTimeout(() => {
      const kept = keptDraft(caseId);
      if (kept === null || kept.text === story) return;
      setText(kept.text);
      setRestored(true);
    });
    return () => clearTimeout(timer);
  }, [caseId, story]);

  function type(next: string) {
    setText(next);
    keepDraft(caseId, { text: next, from: saved.text });
  }

  function insert(directive: string) {
    const box = area.current?.querySelector("textarea");
    const at = box?.selectionStart ?? text.length;
    type(text.slice(0, at) + directive + text.slice(box?.selectionEnd ?? at));
    requestAnimationFrame(() => {
      box?.focus();
      box?.setSelectionRange(at + directive.length, at + directive.length);
    });
  }

  const dirty = text !== saved.text;
  return (
    <form
      action={send}
      onSubmit={(event) => {
        const leaves = (event.nativeEvent as SubmitEvent).submitter?.getAttribute("name") === "leave";
        // The page is left by a redirect, after which nothing here can tidy up; a refusal keeps it again below.
        if (leaves) keepDraft(caseId, null);
        sentByHand(send, isSending)(event);
      }}
    >
      {present ? (
        <Notice kind="warning" title="Someone changed this case while you were writing. Nothing of yours is lost.">
          {theirs === null ? (
            <p>The story itself is as you read it. Save again.</p>
          ) : (
            <p>Their story stands beside yours. Take over what should stay, and save again: both are in the history.</p>
          )}
        </Notice>
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      {restored && (
        <Notice kind="info" title="This is what you typed and did not save.">
          <Button
            onClick={() => {
              setText(saved.text);
              keepDraft(caseId, null);
              setRestored(false);
            }}
          >
            Go back to the saved story
          </Button>
        </Notice>
      )}
      <input type="hidden" name="case" value={caseNumber} />
      <input type="hidden" name="version" value={present?.version ?? saved.version} />
      <div className={styles.beside}>
        <div ref={area}>
          <TextArea
            label="The story"
            name="story"
            wide
            rows={22}
            maxLength={100_000}
            value={text}
            onChange={(event) => type(event.target.value)}
            error={problemAt(state.problems, "story")}
          />
          <InsertRecord onInsert={insert} />
        </div>
        {theirs === null ? (
          <section aria-label="How the page will read" className={styles.preview}>
            <Preview text={text} first={tree} />
          </section>
        ) : (
          <section aria-label="Their story" className={styles.preview}>
            <p>
              <strong>Their story</strong>, saved while you were writing:
            </p>
            <pre className={styles.theirs}>{theirs || "(empty)"}</pre>
          </section>
        )}
      </div>
      <p aria-live="polite" className="soft">
        {isSending ? "Saving …" : dirty ? "Not saved yet; kept in this browser." : state.ok ? "Saved." : ""}
      </p>
      <ButtonRow>
        <Button type="submit" look="main" name="leave" value="yes" aria-disabled={isSending}>
          Save and read it
        </Button>
        <Button type="submit" aria-disabled={isSending}>
          Save and write on
        </Button>
        <ButtonLink href={`/cases/${caseNumber}`} look="quiet">
          Back to the case
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function presentStory(present: unknown): { story: string; version: number } | null {
  if (typeof present !== "object" || present === null) return null;
  const { story, version } = present as Record<string, unknown>;
  return typeof story === "string" && typeof version === "number" ? { story, version } : null;
}
