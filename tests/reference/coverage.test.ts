import { expect, test } from "vitest";
import { allQuantities, findQuantity } from "../../src/quantities/registry.js";
import { readRows, referenceTopics } from "../helpers/reference-rows.js";

/** Quantities of `calc` that no row from outside checks, each with the reason. */
const WITHOUT_ROWS: ReadonlyMap<string, string> = new Map([]);

const rows = referenceTopics().flatMap(readRows);
const covered = new Set(rows.map((row) => row.quantity));

test("every quantity has an outside value, or its name and reason stand in the list", () => {
  const bare = allQuantities()
    .map((quantity) => quantity.name)
    .filter((name) => !covered.has(name));
  const lines = bare.map((name) => `  ${name}: ${WITHOUT_ROWS.get(name) ?? "NO REASON GIVEN"}`);
  process.stdout.write(
    `${covered.size} quantities with ${rows.length} outside values; without one: ${bare.length}\n${lines.join("\n")}`,
  );
  expect(bare).toEqual([...WITHOUT_ROWS.keys()]);
});

test("every row is of a quantity that exists, and no id is used twice", () => {
  expect(rows.filter((row) => findQuantity(row.quantity) === undefined).map((row) => row.id)).toEqual([]);
  expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
});

test("names of quantities and of their inputs are used once", () => {
  const names = allQuantities().map((quantity) => quantity.name);
  expect(new Set(names).size).toBe(names.length);
  for (const { name, inputs } of allQuantities()) {
    expect(new Set(inputs.map((input) => input.name)).size, name).toBe(inputs.length);
  }
});
