import { CommentForm, OwnComment, type CommentAction } from "./comment-form.client.tsx";
import { EmptyState } from "./empty-state.tsx";
import { Prose, type ProseTree } from "./prose.tsx";
import { TimeText } from "./time-text.tsx";
import styles from "./comments.module.css";

export interface ShownComment {
  id: string;
  /** Markdown, for its author to edit. */
  source: string;
  tree: ProseTree;
  at: string;
  edited: boolean;
  takenBack: boolean;
  by: { handle: string; name: string } | null;
  version: number;
  /** Whether the reader may edit it or take it back. */
  mine: boolean;
}

export interface CommentsProps {
  comments: readonly ShownComment[];
  zone: string;
  /** Left out: the reader may not write here. */
  write?: {
    record: string;
    /** Id of the comment to come, so that sending twice makes one. */
    nextId: string;
    add: CommentAction;
    edit: CommentAction;
    takeBack: CommentAction;
  };
}

/** The talk under a record, oldest first, and a place to add to it. */
export function Comments({ comments, zone, write }: CommentsProps) {
  return (
    <>
      {comments.length === 0 ? (
        <EmptyState title="No comment yet.">
          <p>{write ? "Ask, correct, or tell how it went with yours." : "Members can comment: sign in first."}</p>
        </EmptyState>
      ) : (
        <ol className={styles.list}>
          {comments.map((comment) => (
            <li key={comment.id} id={`comment-${comment.id}`}>
              <p className={styles.head}>
                <strong>{comment.by?.name ?? "A former member"}</strong>{" "}
                <span className="soft">
                  <TimeText at={comment.at} zone={zone} withClock />
                  {comment.edited && ", edited"}
                </span>
              </p>
              {comment.takenBack ? (
                <p className="soft">Taken back.</p>
              ) : comment.mine && write ? (
                <OwnComment
                  id={comment.id}
                  source={comment.source}
                  version={comment.version}
                  edit={write.edit}
                  takeBack={write.takeBack}
                >
                  <Prose tree={comment.tree} />
                </OwnComment>
              ) : (
                <Prose tree={comment.tree} />
              )}
            </li>
          ))}
        </ol>
      )}
      {write && <CommentForm key={write.nextId} record={write.record} id={write.nextId} add={write.add} />}
    </>
  );
}
