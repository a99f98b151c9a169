import { Notice } from "./notice.tsx";

/** One thing wrong with one field; `path` is the field's name. */
export interface FieldProblem {
  path: string;
  message: string;
}

/** The message for a field, for its `error`. */
export function problemAt(problems: readonly FieldProblem[] | undefined, path: string): string | undefined {
  return problems?.find((problem) => problem.path === path)?.message;
}

export interface FormErrorProps {
  /** What happened. Nothing is drawn when it is left out. */
  message?: string | undefined;
  problems?: readonly FieldProblem[] | undefined;
  /** Ids of fields by path: a problem with one becomes a link to its field. */
  fields?: Readonly<Record<string, string>>;
}

/** The summary above a form that was refused; read aloud when it appears. */
export function FormError({ message, problems = [], fields = {} }: FormErrorProps) {
  if (!message) return null;
  return (
    <div role="alert">
      <Notice kind="warning" title={message}>
        {problems.length > 0 && (
          <ul>
            {problems.map(({ path, message: text }) => {
              const id = fields[path];
              return <li key={`${path} ${text}`}>{id ? <a href={`#${id}`}>{text}</a> : text}</li>;
            })}
          </ul>
        )}
      </Notice>
    </div>
  );
}
