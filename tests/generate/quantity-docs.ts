import type { Quantity, QuantityInput } from "../../src/quantities/quantity.js";
import { findQuantity } from "../../src/quantities/registry.js";
import { table } from "./regions.js";

const shown = (value: number): string => (value === 4 * Math.PI ? "4 pi" : String(value));

/** The values that an input takes, in words. */
function values(input: QuantityInput): string {
  const { range = {}, kind } = input;
  const said: string[] = [];
  if (range.above !== undefined) said.push(`above ${shown(range.above)}`);
  if (range.atLeast !== undefined) said.push(`${shown(range.atLeast)} or more`);
  if (range.below !== undefined) said.push(`below ${shown(range.below)}`);
  if (range.atMost !== undefined) said.push(`${shown(range.atMost)} or less`);
  if (range.whole === true) said.push("a whole number");
  if (range.oneOf !== undefined) said.push(range.oneOf.map((word) => `\`${word}\``).join(", "));
  if (said.length === 0) said.push(kind === "number" ? "any number" : `a ${kind}`);
  if (kind === "numbers") said.push("a list");
  if (input.default !== undefined) said.push(`${input.default} if left out`);
  return said.join(", ");
}

const unitOf = (unit: string): string => (unit === "1" || unit === "" ? "-" : unit);

const GIVES: ReadonlyMap<string, string> = new Map([
  ["1", "a plain number"],
  ["by output", "what `output` names, in the unit at the end of its name"],
]);

/** What the registry knows of a quantity: title, unit, inputs, source. */
export function quantityDocs(name: string): string {
  const quantity: Quantity | undefined = findQuantity(name);
  if (quantity === undefined) throw new Error(`there is no quantity "${name}"`);
  const inputs = quantity.inputs.map((input) => [`\`${input.name}\``, unitOf(input.unit), values(input)]);
  const gives = GIVES.get(quantity.unit) ?? `in ${quantity.unit}`;
  const rows = inputs.length === 0 ? [] : ["", table(["input", "unit", "values"], inputs)];
  return [`${quantity.title}; ${gives}.`, ...rows, "", `Source: ${quantity.source}.`].join("\n");
}
