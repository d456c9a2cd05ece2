import { numberProblem, textProblem } from "./check-range.js";
import type { NamedText, QuantityInput } from "./quantity.js";
import { readNumber } from "./read-number.js";

/** The value of one input after reading and checking. */
export type InputValue =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "numbers"; readonly value: readonly number[] }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "json"; readonly value: unknown }
  | { readonly kind: "file"; readonly value: NamedText };

/** Reads the text of a file that an input names, or says in a sentence why it can't be read. */
export type FileReader = (path: string) => { readonly text: string } | { readonly problem: string };

/** A value, or a sentence on what is wrong with what was written. */
export type ReadInput =
  | { readonly value: InputValue; readonly problem?: never }
  | { readonly problem: string };

/**
 * Reads what was written for an input and checks it against the input's range.
 *
 * @param unitRequired - the input was named without its unit, so that a bare number would be ambiguous
 */
export function readInput(
  input: QuantityInput,
  written: string,
  unitRequired: boolean,
  readFile: FileReader,
): ReadInput {
  switch (input.kind) {
    case "number": {
      const read = oneNumber(input, unquoted(written.trim()), unitRequired);
      return typeof read === "number" ? { value: { kind: "number", value: read } } : read;
    }
    case "numbers":
      return manyNumbers(input, written, unitRequired);
    case "text": {
      const text = unquoted(written.trim());
      const problem = textProblem(text, input);
      return problem === undefined ? { value: { kind: "text", value: text } } : { problem };
    }
    case "json": {
      const parsed = parseJson(written);
      return parsed === undefined
        ? { problem: `${input.name}: "${written}" is not JSON, like [[0,0,1],[1,0,1],[0,1,1]] or "text"` }
        : { value: { kind: "json", value: parsed.value } };
    }
    case "file": {
      const path = unquoted(written.trim());
      const read = readFile(path);
      return "problem" in read
        ? { problem: `${input.name}: ${read.problem}` }
        : { value: { kind: "file", value: { name: path, text: read.text } } };
    }
    default:
      return input.kind satisfies never;
  }
}

function oneNumber(
  input: QuantityInput,
  written: string,
  unitRequired: boolean,
): number | { readonly problem: string } {
  const read = readNumber(written, input);
  if (read.problem !== undefined) return read;
  if (read.bare && unitRequired) {
    return { problem: `${written} has no unit: write ${written} ${input.unit}, or ${input.name}=${written}` };
  }
  const problem = numberProblem(read.value, input);
  return problem === undefined ? read.value : { problem };
}

/** A JSON list of numbers, or numbers with commas between them, each with or without a unit. */
function manyNumbers(input: QuantityInput, written: string, unitRequired: boolean): ReadInput {
  const inner = /^\s*\[(.*)\]\s*$/s.exec(written)?.[1] ?? written;
  const members = inner.split(",").map((member) => unquoted(member.trim()));
  if (inner.trim() === "") return { problem: `${input.name} needs at least one number, like [8, 5.6]` };
  const values: number[] = [];
  for (const member of members) {
    const read = oneNumber(input, member, unitRequired);
    if (typeof read !== "number") return read;
    values.push(read);
  }
  return { value: { kind: "numbers", value: values } };
}

/** The text inside JSON quotes; anything else as it is. */
function unquoted(written: string): string {
  if (!written.startsWith('"')) return written;
  const parsed = parseJson(written);
  return typeof parsed?.value === "string" ? parsed.value : written;
}

function parseJson(written: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(written) as unknown };
  } catch {
    return undefined;
  }
}
