import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { expect, test } from "vitest";

/** Actions that a visitor may call, and why. Every other one is denied before it does anything. */
const OPEN: Record<string, string> = {
  "app/(club)/signin/actions.ts signInAction": "who signs in is no member yet",
  "app/(club)/join/[token]/actions.ts joinAction": "an invitation makes the member",
  "app/(club)/link/[token]/actions.ts useLinkAction": "the link is the key",
  "app/(club)/account/actions.ts signOutAction": "ends only the session of the cookie that is sent",
};

interface Action {
  name: string;
  /** The role that `act` demands; null where the work does not run inside `act`. */
  role: string | null;
  /** Services that are called outside of `act`, where nobody has asked who calls. */
  outside: string[];
}

const files = readdirSync("app", { recursive: true, encoding: "utf8" })
  .filter((file) => /(^|\/)actions[.]ts$/.test(file))
  .map((file) => `app/${file}`)
  .toSorted();

function actionsOf(file: string): Action[] {
  const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true);
  const services = importedFrom(source, "#lib/services/");
  return source.statements.filter(isExported).map((statement) => {
    if (!ts.isFunctionDeclaration(statement) || !statement.name) throw new Error(`${file}: export a function by name`);
    const call = callsIn(statement).find((one) => one.expression.getText() === "act");
    const outside = callsIn(statement)
      .filter((one) => services.has(one.expression.getText()))
      .filter((one) => !call || one.pos < call.pos || one.end > call.end)
      .map((one) => one.expression.getText());
    return { name: `${file} ${statement.name.text}`, role: call ? roleOf(call) : null, outside };
  });
}

function importedFrom(source: ts.SourceFile, prefix: string): Set<string> {
  const names = new Set<string>();
  for (const statement of source.statements) {
    if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) continue;
    const bindings = statement.importClause?.namedBindings;
    if (!statement.moduleSpecifier.text.startsWith(prefix) || !bindings || !ts.isNamedImports(bindings)) continue;
    for (const element of bindings.elements) names.add(element.name.text);
  }
  return names;
}

function isExported(statement: ts.Statement): boolean {
  const modifiers = ts.canHaveModifiers(statement) ? ts.getModifiers(statement) : undefined;
  const isValue = !ts.isInterfaceDeclaration(statement) && !ts.isTypeAliasDeclaration(statement);
  return isValue && (modifiers ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword);
}

function callsIn(node: ts.Node): ts.CallExpression[] {
  const found: ts.CallExpression[] = [];
  const visit = (one: ts.Node): void => {
    if (ts.isCallExpression(one)) found.push(one);
    ts.forEachChild(one, visit);
  };
  visit(node);
  return found;
}

function roleOf(call: ts.CallExpression): string | null {
  const [rule] = call.arguments;
  if (!rule || !ts.isObjectLiteralExpression(rule)) return null;
  const property = rule.properties.find((one) => ts.isPropertyAssignment(one) && one.name.getText() === "role");
  if (!property || !ts.isPropertyAssignment(property)) return null;
  return ts.isStringLiteral(property.initializer) ? property.initializer.text : null;
}

const actions = files.flatMap(actionsOf);

test("there are actions to look at, and every file of them says that it runs on the server", () => {
  expect(files.filter((file) => !readFileSync(file, "utf8").startsWith('"use server";'))).toEqual([]);
  expect(actions.length).toBeGreaterThan(20);
});

test("every action runs inside `act` with a role of the club", () => {
  const roles = ["anyone", "member", "reviewer", "steward"];
  expect(actions.filter(({ role }) => role === null || !roles.includes(role)).map(({ name }) => name)).toEqual([]);
});

test("no action touches a record before it has asked who calls", () => {
  const hasty = actions.filter(({ outside }) => outside.length > 0);
  expect(hasty.map(({ name, outside }) => `${name}: ${outside.join(", ")}`)).toEqual([]);
});

test("only the actions listed here, each with a reason, are open to visitors", () => {
  const open = actions.filter(({ role }) => role === "anyone").map(({ name }) => name);
  expect(open.toSorted()).toEqual(Object.keys(OPEN).toSorted());
});
