import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { formatText } from "../../src/format/format.js";
import { run } from "../../src/pipeline.js";
import { canonicalUnit } from "../../src/units/spellings.js";
import { withOurKits } from "../helpers/kits.js";
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
      "bare-frame",
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
    const { diagnostics, sound } = compile({ name, text }, withOurKits);
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
    const again = run({ name, text: textOf(name) }, withOurKits).evaluated?.report;
    expect(JSON.stringify(again)).toBe(JSON.stringify(reportOf(name)));
  });
});

describe("the kit", () => {
  const defined = [...textOf("foundry-kit.light").matchAll(/^define \w+ (\w+) \{/gm)].map(
    (match) => match[1],
  );
  const used = recipes.map((name) => {
    const [, names = ""] = /^use ([\w, ]+) from "\.\/foundry-kit\.light"$/m.exec(textOf(name)) ?? [];
    return names.split(", ");
  });

  test("serves every recipe, and no recipe has a copy of what is in it", () => {
    expect(recipes.filter((_name, index) => used[index]?.[0] === "")).toEqual([]);
    for (const name of recipes) {
      const own = [...textOf(name).matchAll(/^define \w+ (\w+) \{/gm)].map((match) => match[1]);
      expect(own.filter((word) => defined.includes(word))).toEqual([]);
    }
  });

  test("defines nothing that no recipe uses", () => {
    expect(defined.filter((word) => !used.flat().includes(word ?? ""))).toEqual([]);
  });
});
