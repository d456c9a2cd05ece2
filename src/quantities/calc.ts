import { writeNumber } from "../core/write-number.js";
import { didYouMean } from "./near-names.js";
import type { Inputs, Quantity, QuantityInput } from "./quantity.js";
import { type FileReader, type InputValue, readInput } from "./read-input.js";
import { nameWithoutUnit } from "./read-number.js";
import { allQuantities, findQuantity } from "./registry.js";

/** What `calc` answers: a value or null with its reason, ready to print; or a sentence on what is wrong. */
export type CalcAnswer =
  | {
      readonly ok: true;
      readonly name: string;
      readonly value: number | string | null;
      readonly unit: string;
      /** Why there is no value, when there is none. */
      readonly reason?: string;
      /** The value with ten significant digits and its unit, or `null` and the reason. */
      readonly text: string;
    }
  | { readonly ok: false; readonly problem: string };

/** Answers that no file can be read; for callers without files. */
export const noFiles: FileReader = () => ({
  problem: "files can't be read here",
});

/**
 * Works out one quantity of the table from arguments as people write them: `radius_m=0.1` in the table's unit,
 * `radius=10cm` with a unit, `f_number=f/11`, lists and points as JSON, `file=path` through the reader.
 *
 * @param name - a name of the table, for example `angular_diameter_sphere`
 * @param args - `input=value`, in any order
 * @param readFile - reads files for `file` inputs
 */
export function calc(name: string, args: readonly string[], readFile: FileReader = noFiles): CalcAnswer {
  const quantity = findQuantity(name);
  if (quantity === undefined) {
    const names = allQuantities().map((one) => one.name);
    return {
      ok: false,
      problem: `there is no quantity "${name}".${didYouMean(name, names)}`,
    };
  }
  const read = readArguments(quantity, args, readFile);
  return "problem" in read ? { ok: false, problem: read.problem } : answer(quantity, read.values);
}

/** Works out a quantity from values that are read already. */
function answer(quantity: Quantity, values: ReadonlyMap<string, InputValue>): CalcAnswer {
  const outcome = quantity.compute(inputsOf(quantity, values));
  if (outcome.problem !== undefined) return { ok: false, problem: outcome.problem };
  const head = { ok: true, name: quantity.name, unit: quantity.unit } as const;
  const { value } = outcome;
  if (value === null || (typeof value === "number" && !Number.isFinite(value))) {
    const reason = outcome.reason ?? "the result is not a finite number";
    return { ...head, value: null, reason, text: `null (${reason})` };
  }
  if (typeof value === "string") return { ...head, value, text: value };
  const unit = quantity.unit === "1" || quantity.unit.startsWith("by ") ? "" : ` ${quantity.unit}`;
  return { ...head, value, text: `${tenDigits(value)}${unit}` };
}

/** A finite number with ten significant digits, without an exponent or trailing zeros. */
export function tenDigits(value: number): string {
  const rounded = Number(value.toPrecision(10));
  // The very largest numbers would round up beyond the range.
  return writeNumber(Number.isFinite(rounded) ? rounded : value);
}

/** Reads every `input=value`, fills in defaults, and names what is missing. */
function readArguments(
  quantity: Quantity,
  args: readonly string[],
  readFile: FileReader,
): { readonly values: ReadonlyMap<string, InputValue> } | { readonly problem: string } {
  const values = new Map<string, InputValue>();
  for (const arg of args) {
    const at = arg.indexOf("=");
    if (at < 1) return { problem: `"${arg}" is not name=value. ${usage(quantity)}` };
    const key = arg.slice(0, at).trim();
    const input = findInput(quantity, key);
    if (input === undefined) {
      const names = quantity.inputs.map((one) => one.name);
      return {
        problem: `${quantity.name} has no input "${key}".${didYouMean(key, names)} ${usage(quantity)}`,
      };
    }
    if (values.has(input.name)) return { problem: `${input.name} is given twice` };
    const read = readInput(input, arg.slice(at + 1), key !== input.name, readFile);
    if (read.problem !== undefined) return { problem: read.problem };
    values.set(input.name, read.value);
  }
  for (const input of quantity.inputs) {
    if (values.has(input.name)) continue;
    if (input.default === undefined) return { problem: `${input.name} is missing. ${usage(quantity)}` };
    values.set(
      input.name,
      typeof input.default === "number"
        ? { kind: "number", value: input.default }
        : { kind: "text", value: input.default },
    );
  }
  return { values };
}

/** The input of a name, with or without its unit. */
function findInput(quantity: Quantity, key: string): QuantityInput | undefined {
  return (
    quantity.inputs.find((input) => input.name === key) ??
    quantity.inputs.find((input) => nameWithoutUnit(input) === key)
  );
}

/** `Inputs: radius_m (m), distance_m (m), C (lx s, 250 if left out)`. */
function usage(quantity: Quantity): string {
  const inputs = quantity.inputs.map((input) => {
    const notes = [
      input.unit === "1" || input.unit === "" ? input.kind : input.unit,
      ...(input.default === undefined ? [] : [`${input.default} if left out`]),
    ];
    return `${input.name} (${notes.join(", ")})`;
  });
  return `Inputs: ${inputs.join(", ")}`;
}

function inputsOf(quantity: Quantity, values: ReadonlyMap<string, InputValue>): Inputs {
  const undeclared = (name: string): never => {
    throw new Error(`broken assumption: ${quantity.name} asks for "${name}" in a kind it did not declare`);
  };
  const get = (name: string): InputValue => values.get(name) ?? undeclared(name);
  return {
    number: (name) => {
      const input = get(name);
      return input.kind === "number" ? input.value : undeclared(name);
    },
    numbers: (name) => {
      const input = get(name);
      return input.kind === "numbers" ? input.value : undeclared(name);
    },
    text: (name) => {
      const input = get(name);
      return input.kind === "text" ? input.value : undeclared(name);
    },
    json: (name) => {
      const input = get(name);
      return input.kind === "json" ? input.value : undeclared(name);
    },
    file: (name) => {
      const input = get(name);
      return input.kind === "file" ? input.value : undeclared(name);
    },
  };
}
