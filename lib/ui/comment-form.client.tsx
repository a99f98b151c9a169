"use client";

import { useActionState, useState, type ReactNode } from "react";
import { Button } from "./button.tsx";
import { ConfirmButton } from "./confirm-button.client.tsx";
import { TextArea } from "./field.tsx";
import { FormError, problemAt, type FieldProblem } from "./form-error.tsx";
import { Notice } from "./notice.tsx";
import { SubmitButton } from "./submit-button.client.tsx";
import styles from "./comments.module.css";

export interface CommentAnswer {
  ok?: boolean;
  message?: string;
  problems?: FieldProblem[];
  present?: unknown;
}
export type CommentAction = (before: CommentAnswer, form: FormData) => Promise<CommentAnswer>;

const HINT = "Markdown. Name records with :code[27C256], :chip[74LS244], :board[its name], :case[12].";

/** Adds a comment. What was typed stays where the club refuses it. */
export function CommentForm({ record, id, add }: { record: string; id: string; add: CommentAction }) {
  const [state, send] = useActionState(add, {});
  return (
    <form action={send} onReset={(event) => event.preventDefault()} className="no-print">
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="record" value={record} />
      <input type="hidden" name="id" value={id} />
      <TextArea
        label="Your comment"
        name="body"
        rows={4}
        hint={HINT}
        required
        maxLength={20_000}
        error={problemAt(state.problems, "body")}
      />
      <SubmitButton>Add the comment</SubmitButton>
    </form>
  );
}

interface OwnCommentProps {
  id: string;
  source: string;
  version: number;
  edit: CommentAction;
  takeBack: CommentAction;
  /** The comment as it reads. */
  children: ReactNode;
}

/** A comment of one's own: it can be edited in place and taken back. */
export function OwnComment({ id, source, version, edit, takeBack, children }: OwnCommentProps) {
  const [editing, setEditing] = useState(false);
  const [dropped, drop] = useActionState(takeBack, {});
  if (editing) {
    return <EditForm key={id} {...{ id, source, version, edit }} onDone={() => setEditing(false)} />;
  }
  return (
    <>
      {children}
      <FormError message={dropped.message} problems={dropped.problems} />
      <form action={drop} className={`${styles.tools} no-print`}>
        <input type="hidden" name="comment" value={id} />
        <input type="hidden" name="version" value={version} />
        <Button look="quiet" onClick={() => setEditing(true)}>
          Edit
        </Button>
        <ConfirmButton look="quiet" question="Take this comment back? Its words go." confirm="Take it back">
          Take back
        </ConfirmButton>
      </form>
    </>
  );
}

interface EditFormProps {
  id: string;
  source: string;
  version: number;
  edit: CommentAction;
  onDone: () => void;
}

function EditForm({ id, source, version, edit, onDone }: EditFormProps) {
  const [text, setText] = useState(source);
  const [state, send] = useActionState(async (before: CommentAnswer, form: FormData) => {
    const answer = await edit(before, form);
    if (answer.ok) onDone();
    return answer;
  }, {});
  const present = presentOf(state.present);
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present === null ? (
        <FormError message={state.message} problems={state.problems} />
      ) : (
        <Notice kind="warning" title="This comment was changed elsewhere while you were writing.">
          <div className={styles.versions}>
            <div>
              <p>As it stands now:</p>
              <pre>{present.body}</pre>
            </div>
            <p>Yours is below. Saving again replaces what stands now; both are kept in the history.</p>
          </div>
        </Notice>
      )}
      <input type="hidden" name="comment" value={id} />
      <input type="hidden" name="version" value={present?.version ?? version} />
      <TextArea
        label="Your comment"
        name="body"
        rows={5}
        hint={HINT}
        required
        maxLength={20_000}
        value={text}
        onChange={(event) => setText(event.target.value)}
        error={problemAt(state.problems, "body")}
      />
      <div className={styles.tools}>
        <SubmitButton>Save</SubmitButton>
        <Button look="quiet" onClick={onDone}>
          Leave it as it was
        </Button>
      </div>
    </form>
  );
}

function presentOf(present: unknown): { body: string; version: number } | null {
  if (typeof present !== "object" || present === null) return null;
  const { body, version } = present as Record<string, unknown>;
  return typeof body === "string" && typeof version === "number" ? { body, version } : null;
}
