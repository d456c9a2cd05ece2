import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { toJSONSchema } from "zod";
import { reportSchema } from "../../src/report/schema/report.js";
import { withReport } from "./report-guide.js";

const page = readFileSync(new URL("../../docs/guide/report.md", import.meta.url), "utf8");

/** Every name of a field anywhere in a JSON schema. */
function fields(schema: unknown): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap(fields);
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([name, value]) =>
    name === "properties"
      ? [...Object.keys(value as object), ...fields(Object.values(value as object))]
      : fields(value),
  );
}

test("the cuts of the report are those of the recipe; make them anew with tests/generate/report-guide.ts", () => {
  expect(withReport(page)).toBe(page);
});

test("every field of the report is explained outside of the examples", () => {
  const prose = page.replace(/```[\s\S]*?```/g, "");
  const names = [...new Set(fields(toJSONSchema(reportSchema)))];
  expect(names.length).toBeGreaterThan(80);
  expect(names.filter((name) => !new RegExp(`\`[^\`\n]*\\b${name}\\b[^\`\n]*\``).test(prose))).toEqual([]);
});
