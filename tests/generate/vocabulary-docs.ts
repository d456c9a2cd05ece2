import { unitTable } from "../../src/units/spellings.js";
import { blockRow } from "../../src/vocabulary/index.js";
import { naturalLights } from "../../src/vocabulary/natural-lights.js";
import type { BlockRow, PropertyRow } from "../../src/vocabulary/property.js";
import { type ResultRow, results } from "../../src/vocabulary/results.js";
import { surfaces } from "../../src/vocabulary/surfaces.js";
import { thresholdTable } from "../../src/vocabulary/thresholds.js";
import { toleranceTable } from "../../src/vocabulary/tolerances.js";
import { valueTypes } from "../../src/vocabulary/value-types.js";
import { table } from "./regions.js";

const code = (text: string): string => `\`${text}\``;

/** How the base unit of a range is called; types that are not listed have plain numbers. */
const RANGE_UNITS: ReadonlyMap<string, string> = new Map([
  ["length", "m"],
  ["tape", "m"],
  ["rectangle", "m"],
  ["volume", "m"],
  ["angle", "deg"],
  ["bearing", "deg"],
  ["time", "s"],
  ["energy", "Ws"],
  ["mass", "kg"],
  ["illuminance", "lx"],
  ["temperature", "K"],
  ["stops", "stop"],
  ["mired", "mired"],
]);

function allowed(row: PropertyRow): string {
  if (row.words !== undefined) return row.words.map(code).join(", ");
  const words = valueTypes[row.type].words;
  if (row.range === undefined) return words;
  const [low, high] = row.range;
  if (row.type === "fraction") return `${words}, ${low * 100} to ${high * 100} %`;
  const unit = RANGE_UNITS.get(row.type);
  return `${words}, ${low} to ${high}${unit === undefined ? "" : ` ${unit}`}`;
}

function meaning(row: PropertyRow): string {
  const from = row.from === undefined ? "" : ` Measured from ${row.from}.`;
  return `${row.help}${from}`;
}

function rowOf(kind: string): BlockRow {
  const row = blockRow(kind);
  if (row === null) throw new Error(`there is no block "${kind}"`);
  return row;
}

/** The properties of a kind of block as a table, and what it may hold. */
export function blockDocs(kind: string): string {
  const row = rowOf(kind);
  const named = {
    none: "It has no name.",
    needed:
      row.names === undefined ? "It needs a name." : `Its name is one of ${row.names.map(code).join(", ")}.`,
    optional: "It may have a name.",
  }[row.named];
  const parts = row.parts.length === 0 ? "" : ` It may hold ${row.parts.map(code).join(", ")}.`;
  const lines = [`${row.help} ${named}${parts}`];
  if (row.properties.length > 0) {
    lines.push(
      "",
      table(
        ["property", "example", "takes", "left out", "meaning"],
        row.properties.map((one) => [
          code(one.name),
          code(one.example),
          allowed(one),
          one.default,
          meaning(one),
        ]),
      ),
    );
  }
  return lines.join("\n");
}

const argumentOf = (argument: ResultRow["args"][number]): string =>
  `\`${argument.name}\`${argument.needed ? "" : " (may be left out)"}${argument.many === true ? " (any number)" : ""}`;

/** Results that an expectation may ask for. */
function resultsDocs(): string {
  const rows: readonly ResultRow[] = results;
  return table(
    ["result", "takes", "gives", "meaning"],
    rows.map((row) => [
      code(row.example),
      row.args.length === 0 ? "-" : row.args.map(argumentOf).join(", "),
      row.type,
      row.help,
    ]),
  );
}

const PARTS: ReadonlyMap<string, () => string> = new Map([
  ["results", resultsDocs],
  [
    "units",
    () =>
      table(
        ["unit", "also read as", "in the base unit"],
        unitTable.map((row) => [
          code(row.name),
          row.also.map(code).join(", ") || "-",
          row.times === row.over ? row.base : `${Number((row.times / row.over).toPrecision(10))} ${row.base}`,
        ]),
      ),
  ],
  [
    "types",
    () =>
      table(
        ["value", "example"],
        Object.values(valueTypes).map((row) => [row.words, code(row.example)]),
      ),
  ],
  [
    "surfaces",
    () =>
      table(
        ["surface", "reflectance", "source"],
        surfaces.map((row) => [
          code(row.name),
          `${Number((row.reflectance * 100).toPrecision(6))} %`,
          row.source,
        ]),
      ),
  ],
  [
    "thresholds",
    () =>
      table(
        ["threshold", "value", "meaning", "source"],
        thresholdTable.map((row) => [
          code(row.name),
          row.unit === "1" ? String(row.value) : `${row.value} ${row.unit}`,
          row.help,
          row.source,
        ]),
      ),
  ],
  [
    "tolerances",
    () =>
      table(
        ["tolerance", "value", "of what"],
        toleranceTable.map((row) => [
          code(row.name),
          row.unit === "1" ? String(row.value) : `${row.value} ${row.unit}`,
          row.help,
        ]),
      ),
  ],
  [
    "natural-lights",
    () =>
      table(
        ["light", "takes", "meaning"],
        naturalLights.map((row) => [code(row.name), row.args.map(code).join(", ") || "-", row.help]),
      ),
  ],
]);

/** A table of the vocabulary by name: `results`, `units`, `surfaces` ... Null for a name that is none. */
export function vocabularyDocs(name: string): string | null {
  return PARTS.get(name)?.() ?? null;
}
