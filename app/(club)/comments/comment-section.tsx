import type { CommentView } from "#lib/services/comments/index.ts";
import type { Commented } from "#lib/services/comments/schema.ts";
import type { Prose } from "#lib/services/prose/index.ts";
import { Comments } from "#lib/ui/comments.tsx";
import { Section } from "#lib/ui/section.tsx";
import { addComment, editComment, takeCommentBack } from "./actions.ts";

export interface CommentSectionProps {
  kind: Commented;
  /** Id of the record. */
  record: string;
  comments: readonly CommentView[];
  /** Their bodies, in the same order: a page renders all of its prose in one go. */
  trees: readonly Prose[];
  zone: string;
  /** Id of the comment to come; null: the reader may not write here. */
  nextId: string | null;
}

/** The talk under a record. */
export function CommentSection({ kind, record, comments, trees, zone, nextId }: CommentSectionProps) {
  return (
    <Section id="comments" title="Comments" count={comments.length}>
      <Comments
        comments={comments.flatMap((comment, index) => {
          const tree = trees[index];
          return tree ? [{ ...comment, source: comment.body, tree }] : [];
        })}
        zone={zone}
        {...(nextId && {
          write: {
            record,
            nextId,
            add: addComment.bind(null, kind),
            edit: editComment.bind(null, kind),
            takeBack: takeCommentBack.bind(null, kind),
          },
        })}
      />
    </Section>
  );
}
