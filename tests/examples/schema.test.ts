import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { run } from "../../src/pipeline.js";
import { exampleTexts } from "../helpers/example-texts.js";
import { withOurKits } from "../helpers/kits.js";

const file = new URL("../../grammar/report.schema.json", import.meta.url);
const fits = new Ajv2020({ strict: true }).compile(JSON.parse(readFileSync(file, "utf8")));
const lessons = exampleTexts.filter(({ name }) => name.startsWith("examples/lessons/"));

test("there are lessons", () => {
  expect(lessons.length).toBeGreaterThanOrEqual(14);
});

test.each(lessons)("the report of $name is as its schema says, and nothing else is", ({ name, text }) => {
  const { evaluated } = run({ name, text }, withOurKits);
  if (evaluated === null) throw new Error(`${name} has no report`);
  const report = JSON.parse(JSON.stringify(evaluated.report));
  expect(fits(report) ? null : fits.errors).toBeNull();
  expect(fits({ ...report, headline: 3 })).toBe(false);
  expect(fits({ ...report, more: null })).toBe(false);
  expect(fits({ ...report, lights: [{ ...report.lights[0], height: "2 m" }] })).toBe(false);
});
