import { parseQuantity } from "../units/parse.js";
import { findUnit, fromBase } from "../units/spellings.js";
import type { QuantityInput } from "./quantity.js";

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A number in an input's unit, or a sentence on why the text is none. `bare` tells that no unit was written. */
export type ReadNumber =
  | { readonly value: number; readonly bare: boolean; readonly problem?: never }
  | { readonly problem: string };

/** Units of the tables that are written differently from the language's. */
const SAME_UNIT: ReadonlyMap<string, string> = new Map([["MK^-1", "mired"]]);

/**
 * Reads a number for an input: bare (`0.1`, `1/200`, `2e-3`) it is in the input's unit; with a unit (`10cm`, `f/11`,
 * `ISO 200`, `18 %`) it is turned into the input's unit. A bare 11 is 11, while `f/11` is the exact 11.31.
 */
export function readNumber(text: string, input: QuantityInput): ReadNumber {
  const trimmed = text.trim();
  if (PLAIN.test(trimmed)) return finite(Number(trimmed), true, text, input);
  if (trimmed.endsWith(input.unit) && PLAIN.test(trimmed.slice(0, -input.unit.length).trim())) {
    return finite(Number(trimmed.slice(0, -input.unit.length)), false, text, input);
  }
  const parsed = parseQuantity(trimmed);
  if (parsed === null) return { problem: `${input.name}: "${text}" is not a number${inUnit(input)}` };
  if (parsed.unit === "1") {
    const percent = trimmed.endsWith("%");
    if (percent && input.unit !== "1") return { problem: wrongUnit(text, input) };
    return finite(parsed.value, !percent, text, input);
  }
  if (parsed.unit === "f" && (input.unit === "f" || input.name.startsWith("f_number"))) {
    return finite(parsed.value, false, text, input);
  }
  if (parsed.unit === "ISO" && (input.unit === "ISO" || input.name === "iso")) {
    return finite(parsed.value, false, text, input);
  }
  const unit = findUnit(SAME_UNIT.get(input.unit) ?? input.unit);
  if (unit === null || unit.base !== parsed.unit) return { problem: wrongUnit(text, input) };
  return finite(fromBase(unit, parsed.value), false, text, input);
}

function finite(value: number, bare: boolean, text: string, input: QuantityInput): ReadNumber {
  return Number.isFinite(value)
    ? { value, bare }
    : { problem: `${input.name}: "${text}" is beyond the range of numbers` };
}

function inUnit(input: QuantityInput): string {
  return input.unit === "1" || input.unit === "" ? "" : ` in ${input.unit}`;
}

function wrongUnit(text: string, input: QuantityInput): string {
  return input.unit === "1"
    ? `${input.name} is a plain number; "${text}" has a unit`
    : `${input.name} is in ${input.unit}; "${text}" can't be turned into that`;
}

/**
 * An input's name without its unit: `radius` for `radius_m`, `luminance` for `luminance_cd_m2`. The whole name where
 * it does not end in its unit.
 */
export function nameWithoutUnit(input: QuantityInput): string {
  const unit = (SAME_UNIT.get(input.unit) ?? input.unit).replaceAll(" ", "");
  const endings = [`_${unit.replaceAll("/", "_")}`, `_${unit.replaceAll("/", "_per_")}`];
  for (const ending of endings) {
    if (ending.length > 1 && input.name.endsWith(ending) && input.name.length > ending.length) {
      return input.name.slice(0, -ending.length);
    }
  }
  return input.name;
}
