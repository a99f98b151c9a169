/** Characters that a worn print or a poor photograph turns into one another. Common practice, no source. */
const ALIKE: readonly (readonly string[])[] = [
  ["0", "o"],
  ["1", "i", "l"],
  ["5", "s"],
  ["8", "b"],
  ["2", "z"],
];

/** At most this many forms are given: enough to look each up, few enough to do it while somebody waits. */
const MOST_FORMS = 200;

const OTHERS = new Map<string, string[]>(
  ALIKE.flatMap((group) => group.map((one) => [one, group.filter((other) => other !== one)] as const)),
);

function oneChange(form: string, from: number): { form: string; at: number }[] {
  const changed: { form: string; at: number }[] = [];
  for (let at = from; at < form.length; at++) {
    for (const other of OTHERS.get(form.charAt(at)) ?? []) {
      changed.push({ form: form.slice(0, at) + other + form.slice(at + 1), at });
    }
  }
  return changed;
}

/**
 * Forms that a worn print of this normal form could be: one character read as its look-alike first, then two. Never
 * the form itself; at most 200. For "did you mean", never for matching.
 */
export function lookAlikes(form: string): string[] {
  const single = oneChange(form, 0);
  const forms = single.map((change) => change.form);
  for (const { form: changed, at } of single) {
    if (forms.length >= MOST_FORMS) break;
    forms.push(...oneChange(changed, at + 1).map((change) => change.form));
  }
  return forms.slice(0, MOST_FORMS);
}
