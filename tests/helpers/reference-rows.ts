import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Inputs, NamedText, Outcome, Quantity } from "../../src/quantities/quantity.js";

/** The folder that holds one folder a topic, each with `rows.csv`. */
export const REFERENCE = new URL("../reference/", import.meta.url).pathname;

/** One outside value: what it is of, from what, and how near a result must come. */
export interface ReferenceRow {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: ReadonlyMap<string, unknown>;
  readonly expected: number;
  readonly unit: string;
  readonly tolerance: { readonly kind: "rel" | "abs"; readonly size: number };
  readonly source: string;
}

/** Splits a text of comma-separated values with quoted fields (RFC 4180) into records. */
export function parseCsv(text: string): string[][] {
  const records: string[][] = [];
  let record: string[] = [];
  for (const match of text.matchAll(/("(?:[^"]|"")*"|[^",\r\n]*)(,|\r?\n|$)/g)) {
    const [, field = "", end = ""] = match;
    if (field === "" && end === "" && record.length === 0) break;
    record.push(field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field);
    if (end !== ",") {
      records.push(record);
      record = [];
    }
  }
  return records;
}

/** The topics that have rows. */
export function referenceTopics(): readonly string[] {
  return readdirSync(REFERENCE, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && readdirSync(join(REFERENCE, entry.name)).includes("rows.csv"))
    .map((entry) => entry.name)
    .sort();
}

/** The rows of a topic. */
export function readRows(topic: string): readonly ReferenceRow[] {
  const [, ...records] = parseCsv(readFileSync(join(REFERENCE, topic, "rows.csv"), "utf8"));
  return records.map(
    ([id = "", quantity = "", inputs = "{}", expected = "", unit = "", tolerance = "", source = ""]) => {
      const [kind, size] = tolerance.split(":");
      if (kind !== "rel" && kind !== "abs") throw new Error(`${id}: tolerance ${tolerance}`);
      return {
        id,
        quantity,
        inputs: new Map(Object.entries(JSON.parse(inputs) as object)),
        expected: Number(expected),
        unit,
        tolerance: { kind, size: Number(size) },
        source,
      };
    },
  );
}

/** How far a result may be from the expected value. */
export function allowed(row: ReferenceRow): number {
  return row.tolerance.kind === "abs" ? row.tolerance.size : row.tolerance.size * Math.abs(row.expected);
}

/** Computes a quantity from plain values; refuses values that the quantity's declaration refuses. */
export function computeFrom(
  quantity: Quantity,
  given: ReadonlyMap<string, unknown>,
  readFile: (name: string) => string = () => "",
): Outcome {
  const names = new Set(quantity.inputs.map((input) => input.name));
  for (const name of given.keys()) {
    if (!names.has(name)) throw new Error(`${quantity.name} has no input ${name}`);
  }
  const take = (name: string): unknown => {
    const input = quantity.inputs.find((each) => each.name === name);
    if (input === undefined) throw new Error(`${quantity.name} asks for an undeclared input ${name}`);
    const value = given.get(name) ?? input.default;
    if (value === undefined) throw new Error(`${quantity.name} lacks ${name}`);
    for (const each of Array.isArray(value) && input.kind === "numbers" ? value : [value])
      checkRange(input, each);
    return value;
  };
  const inputs: Inputs = {
    number: (name) => take(name) as number,
    numbers: (name) => take(name) as readonly number[],
    text: (name) => take(name) as string,
    json: take,
    file: (name): NamedText => ({ name: take(name) as string, text: readFile(take(name) as string) }),
  };
  return quantity.compute(inputs);
}

function checkRange(input: Quantity["inputs"][number], value: unknown): void {
  const { range = {}, name } = input;
  const fine =
    typeof value === "number"
      ? value > (range.above ?? Number.NEGATIVE_INFINITY) &&
        value >= (range.atLeast ?? Number.NEGATIVE_INFINITY) &&
        value < (range.below ?? Number.POSITIVE_INFINITY) &&
        value <= (range.atMost ?? Number.POSITIVE_INFINITY) &&
        (range.whole !== true || Number.isInteger(value))
      : typeof value !== "string" || range.oneOf === undefined || range.oneOf.includes(value);
  if (!fine) throw new Error(`${name} = ${JSON.stringify(value)} is outside its declared range`);
}
