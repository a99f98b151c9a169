// How the lists of a board are edited: what each row has, and what it is called.

export type EditedList = "rails" | "connectors" | "selfTests" | "cautions" | "revisions";

export interface RowField {
  name: string;
  label: string;
  kind?: "text" | "area" | "select";
  mono?: boolean;
  /** Takes the whole width below the others. */
  wide?: boolean;
  hint?: string;
  choices?: { value: string; label: string }[];
}

export interface ListForm {
  list: EditedList;
  title: string;
  lead: string;
  /** On the button that adds a row. */
  add: string;
  fields: RowField[];
}

export type Row = Record<string, string>;

/** The plain facts of a board as they stand in its form. */
export interface BoardFactsTyped {
  name: string;
  kind: string;
  maker: string;
  machine: string;
  year: string;
  summary: string;
  notes: string;
  width: string;
  height: string;
  highestVoltage: string;
  hazards: string[];
}

/** Parts of the record in the order in which they are edited; each is a page of its own. */
export const EDIT_STEPS = [
  { part: "", text: "Name and facts" },
  { part: "parts", text: "Parts" },
  { part: "rails", text: "Rails" },
  { part: "connectors", text: "Connectors" },
  { part: "nets", text: "Nets" },
  { part: "self-test", text: "Self-test" },
  { part: "cautions", text: "Cautions" },
  { part: "revisions", text: "Revisions" },
  { part: "documents", text: "Documents and photos" },
] as const;

export const RAIL_FORM: ListForm = {
  list: "rails",
  title: "Rails",
  lead: "What each supply should read. A tolerance that is left out is the usual one: 5 % for logic, 10 % for the others.",
  add: "Another rail",
  fields: [
    { name: "name", label: "Rail", mono: true, hint: "+5V" },
    { name: "nominal", label: "Volts", mono: true, hint: "As its name says" },
    { name: "tolerancePercent", label: "Tolerance in %", mono: true, hint: "Usual if empty" },
    {
      name: "ac",
      label: "Current",
      kind: "select",
      choices: [
        { value: "no", label: "d.c." },
        { value: "yes", label: "a.c. (RMS)" },
      ],
    },
    {
      name: "regulated",
      label: "Regulated",
      kind: "select",
      choices: [
        { value: "yes", label: "regulated" },
        { value: "no", label: "unregulated" },
      ],
    },
    { name: "source", label: "Made by", mono: true, hint: "VR1" },
    { name: "notes", label: "Notes", wide: true },
  ],
};

/** Rails of the period that a tap adds. Common practice, no source. */
export const USUAL_RAILS = ["+5V", "+12V", "-12V", "-5V", "+15V", "-15V", "+9V", "-5.2V"] as const;

export const LIST_FORMS: Record<string, ListForm> = {
  rails: RAIL_FORM,
  connectors: {
    list: "connectors",
    title: "Connectors",
    lead: "Each pin a line: 1 GND. A run is one line: 3-10 D0-7 counts along, 11-14 GND names four alike.",
    add: "Another connector",
    fields: [
      { name: "designator", label: "Designator", mono: true, hint: "J1" },
      { name: "name", label: "What it is for", hint: "Power" },
      { name: "kind", label: "What it looks like", hint: "6-pin header" },
      { name: "pins", label: "Pins, one a line", kind: "area", mono: true, wide: true },
    ],
  },
  "self-test": {
    list: "selfTests",
    title: "Self-test codes",
    lead: "What the machine says about itself, what it means, and which parts to look at.",
    add: "Another code",
    fields: [
      {
        name: "form",
        label: "How",
        kind: "select",
        choices: [
          { value: "beeps", label: "beeps" },
          { value: "flashes", label: "flashes" },
          { value: "message", label: "message" },
        ],
      },
      { name: "signal", label: "It says", mono: true, hint: "3 short" },
      { name: "suspects", label: "Suspects", mono: true, hint: "U4 U5" },
      { name: "meaning", label: "It means", wide: true },
    ],
  },
  cautions: {
    list: "cautions",
    title: "Cautions",
    lead: "What harms this board. Shown at the top of its page, when a case is opened, and beside each check at that place. Mains, tubes and other dangers to people are ticked under “Name and facts”.",
    add: "Another caution",
    fields: [
      { name: "at", label: "Place", mono: true, hint: "VR3; empty: the whole board" },
      { name: "text", label: "What to mind", kind: "area", wide: true },
    ],
  },
  revisions: {
    list: "revisions",
    title: "Revisions",
    lead: "The issues of the board and how they differ. Cases and copies name them.",
    add: "Another revision",
    fields: [
      { name: "name", label: "Revision", hint: "Issue 2" },
      { name: "notes", label: "What differs", kind: "area", wide: true },
    ],
  },
};

export function blankRow({ fields }: ListForm): Row {
  return Object.fromEntries(fields.map(({ name, choices }) => [name, choices?.[0]?.value ?? ""]));
}

/** Whether nothing was typed into a row; choices do not count. */
export function isBlank({ fields }: ListForm, row: Row): boolean {
  return fields.every(({ name, choices }) => choices !== undefined || (row[name] ?? "").trim() === "");
}

/** A row in one line, for comparing two versions. */
export function rowText({ fields }: ListForm, row: Row): string {
  return fields
    .map(({ name, choices }) => {
      const value = (row[name] ?? "").trim();
      return (choices?.find((choice) => choice.value === value)?.label ?? value).replaceAll("\n", ", ");
    })
    .filter((text) => text !== "")
    .join(" · ");
}
