import { readFileSync } from "node:fs";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { halfshade } from "../cli/fake-machine.js";
import { exampleTexts } from "../helpers/example-texts.js";

const schema = (name: string): ValidateFunction => {
  const file = new URL(`../../grammar/${name}.schema.json`, import.meta.url);
  return new Ajv2020({ strict: true }).compile(JSON.parse(readFileSync(file, "utf8")));
};
const having = (word: RegExp): readonly string[] =>
  exampleTexts.flatMap(({ name, text }) => (word.test(text) ? [name] : []));
const path = (name: string): string => new URL(`../../${name}`, import.meta.url).pathname;

// biome-ignore lint/suspicious/noExplicitAny: the JSON is what is examined.
async function json(...args: readonly string[]): Promise<any> {
  const { out } = await halfshade([...args, "--format", "json"]);
  return JSON.parse(out);
}

describe("tables as JSON", () => {
  const fits = schema("table");
  const names = having(/^table "/m);

  test("there are some", () => expect(names.length).toBeGreaterThanOrEqual(14));

  test.each(names)("of %s are as the schema says, and nothing else is", async (name) => {
    const data = await json("table", path(name));
    expect(fits(data) ? null : fits.errors).toBeNull();
    const [table] = data.tables;
    for (const row of table.rows) expect(row.length).toBe(table.columns.length);
    const spoilt = [
      { ...data, more: null },
      { ...data, format: 2 },
      { ...data, tables: [{ ...table, note: 3 }] },
      { ...data, tables: [{ ...table, rows: [[{ ...table.rows[0][0], shown: 3 }]] }] },
      { ...data, tables: [{ ...table, columns: [{ ...table.columns[0], unit: null }] }] },
    ];
    for (const one of spoilt) expect(fits(one)).toBe(false);
  });
});

describe("comparisons as JSON", () => {
  const fits = schema("comparison");
  const names = having(/^variant "/m);

  test("there are some", () => expect(names.length).toBeGreaterThanOrEqual(3));

  test.each(names)("of %s are as the schema says, and nothing else is", async (name) => {
    const data = await json("compare", path(name), "--all");
    expect(fits(data) ? null : fits.errors).toBeNull();
    const [first] = data.comparisons;
    const spoilt = [
      { ...data, more: null },
      { ...data, comparisons: [{ ...first, light: [{ ...first.light[0], change: "1" }] }] },
      { ...data, comparisons: [{ ...first, light: [{ ...first.light[0], scale: "metres" }] }] },
      { ...data, comparisons: [{ ...first, changes: [{ path: "key" }] }] },
    ];
    for (const one of spoilt) expect(fits(one)).toBe(false);
  });
});

describe("sessions as JSON", () => {
  const fits = schema("session");
  const names = having(/^session "/m);

  test("there is one", () => expect(names.length).toBeGreaterThanOrEqual(1));

  test.each(names)("%s is as the schema says, and nothing else is", async (name) => {
    const data = await json("report", path(name));
    expect(fits(data) ? null : fits.errors).toBeNull();
    const [first] = data.readings;
    const spoilt = [
      { ...data, more: null },
      { ...data, format: 2 },
      { ...data, readings: [{ ...first, off_plan: "0.3 stop" }] },
      { ...data, readings: [{ ...first, verdict: "bad" }] },
      { ...data, lamps: [{ ...data.lamps[0], interval: [1] }] },
      { ...data, causes: [{ ...data.causes[0], kind: "moon" }] },
    ];
    for (const one of spoilt) expect(fits(one)).toBe(false);
  });
});
