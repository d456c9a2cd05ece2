import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { formatText } from "../../src/format/format.js";
import { run } from "../../src/pipeline.js";
import { canonicalUnit } from "../../src/units/spellings.js";
import { files, recipes, reportOf, textOf } from "./recipes.js";

const schema: object = JSON.parse(
  readFileSync(new URL("../../grammar/report.schema.json", import.meta.url), "utf8"),
);

/** What is meant to fail, and is the lesson of its recipe. */
const meantToFail = new Map([["low-ceiling.light", ["sun.height <= 2 m", "no_warnings"]]]);

/** Warnings of severity stop and check, by code; all other recipes have none. */
const meantToWarn = new Map([
  [
    "low-ceiling.light",
    [
      "lamp-through-ceiling",
      "stand-too-short",
      "lamp-through-wall",
      "camera-through-wall",
      "set-short-top",
      "sync-band",
      "stand-tip",
    ],
  ],
]);

test("there is a kit and there are at least seven recipes", () => {
  expect(files).toContain("foundry-kit.light");
  expect(recipes.length).toBeGreaterThanOrEqual(7);
});

describe.each(files)("%s", (name) => {
  const text = textOf(name);

  test("has no findings", () => {
    const { diagnostics, sound } = run({ name, text });
    expect(diagnostics.map((row) => row.code)).toEqual([]);
    expect(sound).toBe(true);
  });

  test("is in its usual form, in lines of 120 characters", () => {
    expect(formatText({ name, text }, { canonicalUnit }).text).toBe(text);
    expect(text.split("\n").filter((line) => line.length > 120)).toEqual([]);
  });

  test("names its lesson in the first comment", () => {
    if (name === "foundry-kit.light") return;
    expect(text.split("\n").find((line) => line.startsWith("#"))).toMatch(/^# Lesson: /);
  });
});

describe.each(recipes)("the report of %s", (name) => {
  test("is as its schema says", () => {
    const ajv = new Ajv2020({ strict: true });
    const valid = ajv.validate(schema, JSON.parse(JSON.stringify(reportOf(name))));
    expect(ajv.errors ?? []).toEqual([]);
    expect(valid).toBe(true);
  });

  test("meets its expectations, except where failing is the lesson", () => {
    const { expectations } = reportOf(name);
    expect(expectations.length).toBeGreaterThanOrEqual(6);
    const failing = meantToFail.get(name) ?? [];
    for (const row of expectations) {
      const meant = failing.some((words) => row.text.startsWith(`expect ${words}`));
      expect(row.outcome, `${name}: ${row.text}, found ${row.found}`).toBe(meant ? "failed" : "passed");
    }
  });

  test("warns where it is meant to and nowhere else", () => {
    const loud = reportOf(name).warnings.filter((row) => row.severity !== "note");
    expect(loud.map((row) => row.code)).toEqual(meantToWarn.get(name) ?? []);
  });

  test("is the same whenever it is made", () => {
    const again = run({ name, text: textOf(name) }).evaluated?.report;
    expect(JSON.stringify(again)).toBe(JSON.stringify(reportOf(name)));
  });
});

describe("definitions", () => {
  const defined = /^define \w+ (\w+) \{\n[\s\S]*?^\}\n/gm;
  const inKit = new Map([...textOf("foundry-kit.light").matchAll(defined)].map((m) => [m[1], m[0]]));

  test.each(recipes)("of %s are those of the kit, word for word", (name) => {
    for (const [text, word] of textOf(name).matchAll(defined)) {
      expect(inKit.get(word), `${name}: ${word}`).toBe(text);
    }
  });

  test("of the kit are all used by some recipe", () => {
    const all = recipes.map(textOf).join("\n");
    const idle = [...inKit.keys()].filter((word) => !new RegExp(`define \\w+ ${word} `).test(all));
    expect(idle).toEqual([]);
  });
});
