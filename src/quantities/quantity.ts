/** What kind of value an input takes. A `file` input holds the text of a file, read before the quantity is computed. */
export type InputKind = "number" | "numbers" | "text" | "json" | "file";

/** The values an input may have; a value outside is refused with a sentence before anything is computed. */
export interface InputRange {
  /** The value must be greater than this. */
  readonly above?: number;
  /** The value must be this or greater. */
  readonly atLeast?: number;
  /** The value must be less than this. */
  readonly below?: number;
  /** The value must be this or less. */
  readonly atMost?: number;
  /** The value must be a whole number. */
  readonly whole?: boolean;
  /** The texts that are accepted (for `text` inputs). */
  readonly oneOf?: readonly string[];
}

/** One named input of a quantity. */
export interface QuantityInput {
  /** The name people write, with its unit as a suffix where it has one: `radius_m`. */
  readonly name: string;
  readonly kind: InputKind;
  /** The unit that a bare number is in: `m`, `deg`, `lx s`; `1` for a plain number, empty for a text. */
  readonly unit: string;
  /** For `numbers`, the range holds for every member. */
  readonly range?: InputRange;
  /** Used when the input is left out; without it the input is required. */
  readonly default?: number | string;
}

/** The text of a file that an input named. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/**
 * The checked inputs of one call. A getter throws only when a quantity asks for an input that it did not declare,
 * or by the wrong kind: that is a fault of the quantity, never of the user.
 */
export interface Inputs {
  number(name: string): number;
  numbers(name: string): readonly number[];
  text(name: string): string;
  json(name: string): unknown;
  file(name: string): NamedText;
}

/**
 * What a quantity answers: a value; no finite value, with the reason (`null`, a legitimate answer: the umbra of a
 * source smaller than the obstacle has no end); or inputs that contradict each other, as a sentence.
 */
export type Outcome =
  | { readonly value: number | string; readonly reason?: never; readonly problem?: never }
  | { readonly value: null; readonly reason: string; readonly problem?: never }
  | { readonly value: null; readonly reason?: never; readonly problem: string };

/** One quantity of the table behind `halfshade calc`. */
export interface Quantity {
  readonly name: string;
  readonly inputs: readonly QuantityInput[];
  /** The unit of the value: `deg`, `m`, `stop`; `1` for a plain number. */
  readonly unit: string;
  /** One line in plain words. */
  readonly title: string;
  /** The formula and where it is published. */
  readonly source: string;
  /** Computes the value from checked inputs; never throws for a value inside the declared ranges. */
  compute(inputs: Inputs): Outcome;
}

/** A value. A number that is not finite is turned into `null` with a reason, so that none is ever printed. */
export function value(result: number | string): Outcome {
  if (typeof result === "number" && !Number.isFinite(result)) {
    return { value: null, reason: "the result is not a finite number" };
  }
  return { value: result };
}

/** No finite value, and why. */
export function none(reason: string): Outcome {
  return { value: null, reason };
}

/** Inputs that can't be true together, as a sentence that names them. */
export function impossible(problem: string): Outcome {
  return { value: null, problem };
}

/** A required number in the given unit. */
export function number(name: string, unit: string, range?: InputRange): QuantityInput {
  return range === undefined ? { name, kind: "number", unit } : { name, kind: "number", unit, range };
}

/** A number greater than zero. */
export function positive(name: string, unit: string): QuantityInput {
  return number(name, unit, { above: 0 });
}

/** A number of zero or more. */
export function nonNegative(name: string, unit: string): QuantityInput {
  return number(name, unit, { atLeast: 0 });
}

/** A list of numbers. */
export function numbers(name: string, unit: string, range?: InputRange): QuantityInput {
  return range === undefined ? { name, kind: "numbers", unit } : { name, kind: "numbers", unit, range };
}

/** A text, one of the given ones if a list is given. */
export function text(name: string, oneOf?: readonly string[]): QuantityInput {
  return oneOf === undefined
    ? { name, kind: "text", unit: "" }
    : { name, kind: "text", unit: "", range: { oneOf } };
}

/** A value of any JSON shape; the quantity checks the shape itself and answers `impossible` when it is wrong. */
export function json(name: string, unit = ""): QuantityInput {
  return { name, kind: "json", unit };
}

/** A file, given by its path; the quantity gets its text. */
export function file(name: string): QuantityInput {
  return { name, kind: "file", unit: "" };
}

/** The same input with a default, which makes it optional. */
export function optional(input: QuantityInput, byDefault: number | string): QuantityInput {
  return { ...input, default: byDefault };
}
