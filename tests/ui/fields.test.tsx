import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { VERDICTS } from "#lib/core/shared/index.ts";
import { CheckboxField, choicesOf, RadioField, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Table, NumberCell } from "#lib/ui/table.tsx";
import { VERDICT_WORDS } from "#lib/ui/words.ts";

/** The text of the element that has the id. */
function textOfId(markup: string, id: string): string | undefined {
  return new RegExp(`id="${id}"[^>]*>(.*?)</p>`, "s").exec(markup)?.[1]?.replace(/<svg.*?<\/svg>/s, "");
}

/** An attribute of the only control in the markup. */
function ofControl(markup: string, name: string): string | undefined {
  const control = /<(?:input|select|textarea)[^>]*>/.exec(markup)?.[0] ?? "";
  return new RegExp(`${name}="([^"]*)"`).exec(control)?.[1];
}

describe("label, hint and error belong to their control", () => {
  const frame = { label: "Reading", hint: "As you would write it.", error: "“4,8,7” is no number." };
  test.each([
    ["a line of text", <TextField key="f" {...frame} name="reading" />],
    ["several lines", <TextArea key="f" {...frame} name="reading" />],
    ["a closed set", <SelectField key="f" {...frame} name="reading" choices={[{ value: "a", label: "A" }]} />],
  ])("%s", (_, field) => {
    const markup = renderToStaticMarkup(field);
    const described = (ofControl(markup, "aria-describedby") ?? "").split(" ");
    expect(described.map((id) => textOfId(markup, id))).toEqual([frame.hint, frame.error]);
    expect(ofControl(markup, "aria-invalid")).toBe("true");
    expect(/<label[^>]*for="([^"]*)"/.exec(markup)?.[1]).toBe(ofControl(markup, "id"));
  });

  test("without hint and error nothing is pointed at", () => {
    const markup = renderToStaticMarkup(<TextField label="Reading" name="reading" />);
    expect(ofControl(markup, "aria-describedby")).toBeUndefined();
    expect(ofControl(markup, "aria-invalid")).toBeUndefined();
  });
});

test("a field works in a plain form: its name and what was typed before", () => {
  const markup = renderToStaticMarkup(<TextField label="Reading" name="reading" defaultValue="4.87 V" required />);
  expect([ofControl(markup, "name"), ofControl(markup, "value")]).toEqual(["reading", "4.87 V"]);
});

test("a reading is neither corrected nor capitalised by a phone", () => {
  const markup = renderToStaticMarkup(<TextField label="Reading" name="reading" mono />);
  expect([ofControl(markup, "autoCapitalize"), ofControl(markup, "spellCheck")]).toEqual(["off", "false"]);
});

test("an error of a box and of a choice stands beside it", () => {
  const box = renderToStaticMarkup(<CheckboxField label="Discharged" name="discharged" error="Tick it first." />);
  expect(textOfId(box, ofControl(box, "aria-describedby") ?? "")).toBe("Tick it first.");
  const radio = renderToStaticMarkup(
    <RadioField legend="Power" name="power" choices={[{ value: "off", label: "off" }]} error="Choose one." />,
  );
  expect(textOfId(radio, /<fieldset[^>]*aria-describedby="([^"]*)"/.exec(radio)?.[1] ?? "")).toBe("Choose one.");
});

test("a closed set becomes choices in its own order", () => {
  expect(choicesOf(VERDICTS, VERDICT_WORDS).map(({ value, label }) => `${value}: ${label}`)).toEqual([
    "in-spec: in spec",
    "out-of-spec: out of spec",
    "inconclusive: inconclusive",
    "noted: noted",
    "not-taken: not taken",
  ]);
});

describe("the summary of a refused form", () => {
  const problems = [
    { path: "title", message: "Say in a line what you saw." },
    { path: "symptoms", message: "Name at least one." },
  ];

  test("is read aloud, and leads to the fields it knows", () => {
    const markup = renderToStaticMarkup(
      <FormError message="Two fields need another look." problems={problems} fields={{ title: "case-title" }} />,
    );
    expect(markup).toContain('role="alert"');
    expect(markup).toContain(
      '<li><a href="#case-title">Say in a line what you saw.</a></li><li>Name at least one.</li>',
    );
  });

  test("is not there when nothing was refused", () => {
    expect(renderToStaticMarkup(<FormError problems={problems} />)).toBe("");
  });

  test("hands each field its own message", () => {
    expect([problemAt(problems, "title"), problemAt(problems, "board"), problemAt(undefined, "title")]).toEqual([
      "Say in a line what you saw.",
      undefined,
      undefined,
    ]);
  });
});

test("a table has a name, heads with a scope, and can be scrolled by keyboard", () => {
  const markup = renderToStaticMarkup(
    <Table label="Rails" columns={["Rail", { head: "Nominal", number: true }, { head: "Change", hidden: true }]}>
      <tr>
        <th scope="row">+5V</th>
        <NumberCell>5 V</NumberCell>
        <td>none</td>
      </tr>
    </Table>,
  );
  expect(markup).toMatch(/^<section [^>]*aria-label="Rails" tabindex="0">/i);
  expect(markup.match(/scope="col"/g)).toHaveLength(3);
  expect(markup).toContain('<span class="visually-hidden">Change</span>');
});
