import type { BaseUnit } from "../units/dimension.js";
import type { Quantity } from "../units/quantity.js";
import type { Expr, ResultType } from "./values.js";

/** The type of result that a written quantity stands for. */
export function typeOfQuantity(q: Quantity): ResultType {
  const byUnit: Partial<Record<BaseUnit, ResultType>> = {
    deg: "angle",
    m: "length",
    stop: "stops",
    f: "f-number",
    "lx s": "exposure",
    lx: "illuminance",
    EV: "ev",
    K: "colour-temperature",
    mired: "mired",
    J: "energy",
    "lm s": "luminous-energy",
    s: "time",
  };
  if (q.unit === "1" && q.written.includes(":")) return "contrast";
  return byUnit[q.unit] ?? "number";
}

const typeWords: Record<ResultType, string> = {
  angle: "an angle",
  length: "a length",
  number: "a plain number",
  contrast: "a contrast",
  stops: "a number of stops",
  reading: "a reading",
  "f-number": "an f-number",
  exposure: "a luminous exposure",
  illuminance: "an illuminance",
  ev: "an exposure value",
  "colour-temperature": "a colour temperature",
  mired: "a mired shift",
  energy: "an energy",
  "luminous-energy": "a luminous energy",
  time: "a time",
  truth: "something that is true or false",
};

/** A type of result in words. */
export function wordsOf(type: ResultType): string {
  return typeWords[type];
}

/** Types that may be compared with one another: all that say how much light there is, and contrasts with stops. */
const families: readonly (readonly ResultType[])[] = [
  ["reading", "f-number", "exposure", "ev"],
  ["contrast", "stops"],
];

/** True where a value of one type may be compared with one of the other. */
export function comparable(a: ResultType, b: ResultType): boolean {
  if (a === "truth" || b === "truth") return false;
  if (a === b) return true;
  const family = families.find((types) => types.includes(a) && types.includes(b));
  if (family === undefined) return false;
  // A reading meets each of its family; the members meet one another only through a reading.
  return family[0] === "contrast" || a === "reading" || b === "reading";
}

/** The unit of a tolerance besides per cent, and whether per cent may be used. */
export function toleranceOf(type: ResultType): {
  readonly unit: BaseUnit;
  readonly share: boolean;
  readonly example: string;
} {
  switch (type) {
    case "reading":
    case "f-number":
    case "contrast":
    case "stops":
    case "ev":
      return { unit: "stop", share: false, example: "1/3 stop" };
    case "exposure":
    case "luminous-energy":
    case "illuminance":
      return { unit: "stop", share: true, example: "1/3 stop" };
    case "colour-temperature":
      return { unit: "mired", share: false, example: "10 mired" };
    case "mired":
      return { unit: "mired", share: false, example: "10 mired" };
    case "angle":
      return { unit: "deg", share: true, example: "1 deg" };
    case "length":
      return { unit: "m", share: true, example: "1 cm" };
    case "time":
      return { unit: "s", share: true, example: "5 %" };
    case "energy":
      return { unit: "J", share: true, example: "5 %" };
    case "number":
    case "truth":
      return { unit: "1", share: true, example: "5 %" };
    default:
      return type satisfies never;
  }
}

/** A written quantity as an expression. */
export function valueExpr(q: Quantity): Expr {
  return { kind: "value", type: typeOfQuantity(q), quantity: q };
}

/** The base unit in which a type of result may be shown; none for those that have one form only. */
export const shownIn: Partial<Record<ResultType, string>> = {
  angle: "deg",
  length: "m",
  number: "1",
  contrast: "stop",
  stops: "stop",
  exposure: "lx s",
  illuminance: "lx",
  "colour-temperature": "K",
  mired: "mired",
  energy: "J",
  "luminous-energy": "lm s",
  time: "s",
};

/** Types of results that add up. Readings do not: what lies between them is `stops(a, b)`. */
export const adding: readonly ResultType[] = [
  "angle",
  "length",
  "number",
  "stops",
  "exposure",
  "luminous-energy",
  "energy",
  "time",
];

/** A written tolerance as a claim is judged by it; null where it is of the wrong kind. */
export function toleranceModel(
  type: ResultType,
  target: Expr,
  read: Quantity,
): { readonly value: number; readonly kind: "difference" | "share" } | null {
  const allowed = toleranceOf(type);
  const value = Math.abs(read.value);
  const inPerCent = ({ unit, written }: Quantity): boolean => unit === "1" && written.endsWith("%");
  if (read.unit === allowed.unit && !inPerCent(read)) return { value, kind: "difference" };
  if (!inPerCent(read) || !allowed.share) return null;
  return { value, kind: target.kind === "value" && inPerCent(target.quantity) ? "difference" : "share" };
}
