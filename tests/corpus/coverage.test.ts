import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import type { Expr } from "../../src/model/values.js";
import type { Block, File } from "../../src/syntax/ast.js";
import { unitTable } from "../../src/units/spellings.js";
import { blocks, definableKinds } from "../../src/vocabulary/index.js";
import { naturalLights } from "../../src/vocabulary/natural-lights.js";
import type { BlockRow } from "../../src/vocabulary/property.js";
import { results } from "../../src/vocabulary/results.js";
import { surfaces } from "../../src/vocabulary/surfaces.js";
import { withOurKits } from "../helpers/kits.js";
import { corpusTexts } from "./folder.js";

/** Only the longer recipes and kits: the near misses are short, and would hide what these leave out. */
const compiled = corpusTexts("accept")
  .filter(({ name }) => /^(recipe|kit|session)-/.test(name))
  .map(({ name, text }) => compile({ name, text }, withOurKits));
const all = compiled.map(({ source }) => source.text).join("\n");

/** Every block of a file, also those in others and in definitions. */
function blocksOf(file: File): readonly Block[] {
  const found: Block[] = [];
  const add = (block: Block): void => {
    found.push(block);
    for (const entry of block.entries) if (entry.kind === "block") add(entry);
  };
  for (const item of file.items) {
    if (item.kind === "block") add(item);
    if (item.kind === "define") add(item.block);
  }
  return found;
}

const written = compiled.flatMap(({ file }) => blocksOf(file));

test("every kind of block occurs, with every one of its properties", () => {
  const rows: readonly BlockRow[] = Object.values(blocks);
  const wanted = rows.flatMap((row) => [
    row.kind,
    ...row.properties.map(({ name }) => `${row.kind}.${name}`),
  ]);
  const seen = new Set(
    written.flatMap((block) => {
      const kind = block.words[0]?.text ?? "";
      const names = block.entries.flatMap((entry) =>
        entry.kind === "property" ? [`${kind}.${entry.path.parts[0]?.text}`] : [],
      );
      return [kind, ...names];
    }),
  );
  expect(wanted.filter((name) => !seen.has(name))).toEqual([]);
});

test("every word that a property may take occurs", () => {
  const rows: readonly BlockRow[] = Object.values(blocks);
  const words = new Set(rows.flatMap((row) => row.properties.flatMap((property) => property.words ?? [])));
  expect([...words].filter((word) => !new RegExp(`: ${word}\\b`).test(all))).toEqual([]);
});

test("every kind of definition, surface, natural light and unit occurs", () => {
  expect(definableKinds.filter((kind) => !all.includes(`define ${kind} `))).toEqual([]);
  expect(surfaces.map(({ name }) => name).filter((name) => !new RegExp(`: ${name}\\b`).test(all))).toEqual(
    [],
  );
  expect(naturalLights.map(({ name }) => name).filter((name) => !all.includes(`pass_for: ${name}`))).toEqual(
    [],
  );
  const said = (word: string): boolean => new RegExp(`\\d ?${word}(?![\\w/])`).test(all);
  expect(unitTable.filter((row) => ![row.name, ...row.also].some(said)).map(({ name }) => name)).toEqual([]);
});

/** The forms of the values of a model: what its `kind` says, and each key that is one of several ways to say a thing. */
function formsOf(value: unknown, into: Set<string>): void {
  if (Array.isArray(value)) for (const item of value) formsOf(item, into);
  else if (typeof value === "object" && value !== null) {
    const { kind, tint, side, edge } = value as Record<string, unknown>;
    for (const form of [kind, tint, side, edge]) if (typeof form === "string") into.add(form);
    for (const [key, inner] of Object.entries(value))
      if (key !== "origins" && key !== "origin") formsOf(inner, into);
  }
}

test("every form of a value and of a claim occurs", () => {
  const seen = new Set<string>();
  for (const { recipe } of compiled) formsOf(recipe, seen);
  const forms = [
    ...["coordinates", "offset", "named", "between", "midpoint"],
    ...["bearing", "point", "straight", "left", "right"],
    ...["disc", "sphere", "rectangle", "capsule"],
    ...["metered", "guide_number", "efficacy"],
    ...["luminous_energy", "flux", "intensity", "intensity_time"],
    ...["full", "off", "fraction", "below", "energy", "dial"],
    ...["lambertian", "cosine_power", "measured", "warm", "cool", "neutral"],
    ...["hanging", "raised", "spread", "ahead"].filter((word) => word !== "hanging"),
    ...["sunlight", "sun_at", "overcast", "window"],
    ...["true", "within", "between", "compare"],
    ...["value", "reading", "result", "sum", "product", "negation"],
  ];
  expect(forms.filter((form) => !seen.has(form))).toEqual([]);
});

/** The names of the results in an expression. */
function resultsIn(expr: Expr, into: Set<string>): void {
  switch (expr.kind) {
    case "result":
      into.add(`${expr.of === null ? "" : "light."}${expr.name}`);
      for (const { name, value } of expr.args) {
        into.add(`${expr.name}(${name})`);
        if (typeof value === "object" && "type" in value) resultsIn(value, into);
      }
      break;
    case "sum":
      for (const term of expr.terms) resultsIn(term.value, into);
      break;
    case "product":
      for (const factor of expr.factors) resultsIn(factor.value, into);
      break;
    case "negation":
      resultsIn(expr.operand, into);
      break;
    default:
  }
}

test("every result occurs, with every one of its arguments", () => {
  const seen = new Set<string>();
  for (const { recipe } of compiled) {
    for (const claim of recipe?.expectations.flatMap(({ claims }) => claims) ?? []) {
      resultsIn(claim.value, seen);
      if (claim.kind === "compare" || claim.kind === "within") resultsIn(claim.target, seen);
    }
  }
  const wanted = results.flatMap((row) => [
    `${row.of === "light" ? "light." : ""}${row.name}`,
    ...row.args.map(({ name }) => `${row.name}(${name})`),
  ]);
  expect(wanted.filter((name) => !seen.has(name))).toEqual([]);
});
