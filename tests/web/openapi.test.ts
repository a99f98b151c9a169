import { Validator } from "@seriousme/openapi-schema-validator";
import { beforeAll, describe, expect, test } from "vitest";
import { openApiDocument, OPERATIONS } from "#lib/web/openapi.ts";
import { routeHandlers, type RouteHandler } from "./routes.ts";

let handlers: RouteHandler[] = [];
beforeAll(async () => {
  handlers = await routeHandlers();
});

const name = (method: string, path: string) => `${method.toUpperCase()} ${path}`;

describe("the description of the interface", () => {
  test("is a valid OpenAPI 3.1 document", async () => {
    const validator = new Validator();
    const result = await validator.validate(structuredClone(openApiDocument()));
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
    expect(validator.version).toBe("3.1");
  });

  test("has exactly the routes that there are files for", () => {
    expect(OPERATIONS.map(({ method, path }) => name(method, path)).toSorted()).toEqual(
      handlers.map(({ method, path }) => name(method, path)).toSorted(),
    );
  });

  test("says of each route what its handler enforces", () => {
    const enforced = handlers.map(({ method, path, rule }): [string, unknown] => [name(method, path), rule]);
    const described = OPERATIONS.map(({ method, path, role, scope, always }): [string, unknown] => [
      name(method, path),
      { role, scope, ...(always && { always }) },
    ]);
    expect(Object.fromEntries(described)).toEqual(Object.fromEntries(enforced));
  });

  test("gives every operation a name of its own", () => {
    const paths = openApiDocument().paths as Record<string, Record<string, { operationId: string }>>;
    const names = Object.values(paths).flatMap((item) => Object.values(item).map((one) => one.operationId));
    expect(names).toHaveLength(OPERATIONS.length);
    expect(new Set(names).size).toBe(names.length);
  });

  test("asks for what the schemas ask for: a check without a place is not one", () => {
    const { schemas } = openApiDocument().components as { schemas: Record<string, { required?: string[] }> };
    expect(schemas.Check?.required).toEqual(["kind", "at"]);
    expect(schemas.Check).toMatchObject({ type: "object", additionalProperties: false });
  });

  test("every change of a record that has versions needs the version that was read", () => {
    const unversioned = OPERATIONS.filter(
      ({ method, versioned }) => (method === "patch" || method === "delete") && !versioned,
    );
    // Photos, files and documents have no text of their own to overwrite: they are there or they are not.
    expect(unversioned.map(({ method, path }) => name(method, path))).toEqual([
      "DELETE /documents/{id}",
      "DELETE /attachments/{id}",
    ]);
  });
});
