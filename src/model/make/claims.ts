import { quote } from "../../core/quote.js";
import { say } from "../../units/make.js";
import type { Quantity } from "../../units/quantity.js";
import { comparable, toleranceModel, wordsOf } from "../result-types.js";
import type { Expectation, HoldDial, HoldModel } from "../types.js";
import type { ClaimModel, Expr, ResultType } from "../values.js";
import { writePath } from "./points.js";
import { type Beside, type Said, saidOf, type ValueOf } from "./results.js";

/** One claim with its words; `expectation` takes one or several. */
export interface Claim {
  readonly model: ClaimModel;
  readonly written: string;
}

/** A tolerance: stops for readings, contrasts and f-numbers, mired for colour, a share or the own unit for the rest. */
export type ToleranceOf<T extends ResultType> = T extends "reading" | "f-number" | "contrast" | "stops" | "ev"
  ? Quantity<"stop">
  : T extends "exposure" | "luminous-energy" | "illuminance"
    ? Quantity<"stop"> | Quantity<"1">
    : T extends "colour-temperature" | "mired"
      ? Quantity<"mired">
      : T extends "angle"
        ? Quantity<"deg"> | Quantity<"1">
        : T extends "length"
          ? Quantity<"m"> | Quantity<"1">
          : T extends "time"
            ? Quantity<"s"> | Quantity<"1">
            : T extends "energy"
              ? Quantity<"J"> | Quantity<"1">
              : Quantity<"1">;

/** A result that is true or false is true: `isTrue(result("no_warnings"))`. */
export function isTrue(value: Said<"truth">): Claim {
  return { model: { kind: "true", value: value.expr }, written: value.written };
}

/** `A is B within T`. */
export function isWithin<T extends ResultType>(
  value: Said<T>,
  target: ValueOf<Beside<T>>,
  tolerance: ToleranceOf<T>,
): Claim {
  return within(value, saidOf<ResultType>(target), null, tolerance);
}

/** `A is N stop under B within T`: it gets less light. */
export function isUnder<T extends "reading" | "f-number" | "exposure" | "ev">(
  value: Said<T>,
  stops: ValueOf<"stops">,
  of: ValueOf<Beside<T>>,
  tolerance: Quantity<"stop">,
): Claim {
  return within(value, saidOf(stops), { word: "under", of: saidOf<ResultType>(of) }, tolerance);
}

/** `A is N stop over B within T`: it gets more light. */
export function isOver<T extends "reading" | "f-number" | "exposure" | "ev">(
  value: Said<T>,
  stops: ValueOf<"stops">,
  of: ValueOf<Beside<T>>,
  tolerance: Quantity<"stop">,
): Claim {
  return within(value, saidOf(stops), { word: "over", of: saidOf<ResultType>(of) }, tolerance);
}

function within(
  value: Said,
  target: Said,
  side: { readonly word: "under" | "over"; readonly of: Said } | null,
  tolerance: Quantity,
): Claim {
  together(value, side === null ? target : side.of);
  const type = side !== null ? "stops" : value.type === "number" ? target.type : value.type;
  const model = toleranceModel(type, target.expr, tolerance);
  if (model === null) throw new TypeError(`${tolerance.written} is no tolerance of ${wordsOf(type)}.`);
  const beside = side === null ? "" : ` ${side.word} ${side.of.written}`;
  return {
    model: {
      kind: "within",
      value: value.expr,
      target: target.expr,
      side: side === null ? null : { word: side.word, of: side.of.expr },
      tolerance: model,
    },
    written: `${value.written} is ${target.written}${beside} within ${say(tolerance)}`,
  };
}

/** `A between B and C`, both ends included. */
export function isBetween<T extends ResultType>(
  value: Said<T>,
  low: ValueOf<Beside<T>>,
  high: ValueOf<Beside<T>>,
): Claim {
  const [a, b] = [saidOf<ResultType>(low), saidOf<ResultType>(high)];
  together(value, a);
  together(value, b);
  return {
    model: { kind: "between", value: value.expr, low: a.expr, high: b.expr },
    written: `${value.written} between ${a.written} and ${b.written}`,
  };
}

/** `A < B`. */
export const isLess = <T extends ResultType>(value: Said<T>, target: ValueOf<Beside<T>>): Claim =>
  compared(value, "<", saidOf<ResultType>(target));
/** `A <= B`. */
export const isAtMost = <T extends ResultType>(value: Said<T>, target: ValueOf<Beside<T>>): Claim =>
  compared(value, "<=", saidOf<ResultType>(target));
/** `A > B`. */
export const isMore = <T extends ResultType>(value: Said<T>, target: ValueOf<Beside<T>>): Claim =>
  compared(value, ">", saidOf<ResultType>(target));
/** `A >= B`. */
export const isAtLeast = <T extends ResultType>(value: Said<T>, target: ValueOf<Beside<T>>): Claim =>
  compared(value, ">=", saidOf<ResultType>(target));

function compared(value: Said, sign: "<" | "<=" | ">" | ">=", target: Said): Claim {
  together(value, target);
  return {
    model: { kind: "compare", value: value.expr, sign, target: target.expr },
    written: `${value.written} ${sign} ${target.written}`,
  };
}

function together(value: Said, other: Said): void {
  if (comparable(value.type, other.type)) return;
  throw new TypeError(`${wordsOf(value.type)} is not compared with ${wordsOf(other.type)}.`);
}

/**
 * An `expect`: `expectation(isMore(resultOf("key", "angular_size"), deg(20)), { because: "soft" })`. Of several claims
 * each has to hold; `surely` asks that they hold over the whole interval.
 */
export function expectation(
  claims: Claim | readonly [Claim, ...Claim[]],
  { surely = false, because = null }: { readonly surely?: boolean; readonly because?: string | null } = {},
): Expectation {
  const all: readonly Claim[] = "model" in claims ? [claims] : claims;
  const said = all.map(({ written }) => written).join(" and ");
  return {
    written: `expect ${surely ? "surely " : ""}${said}${because === null ? "" : ` because ${quote(because)}`}`,
    surely,
    claims: all.map(({ model }) => model),
    because,
  };
}

/** A `hold`: a result is brought back to `target`, or to what it was, by the dials. */
export function hold<T extends ResultType>(
  value: Said<T>,
  by: readonly [HoldDial, ...HoldDial[]],
  target: ValueOf<Beside<T>> | null = null,
): HoldModel {
  const at: Said | null = target === null ? null : saidOf<ResultType>(target);
  if (at !== null) together(value, at);
  const dials = by.map(({ light, property }) => `${writePath(light)}.${property}`).join(", ");
  const aim: Expr | null = at === null ? null : at.expr;
  return {
    written: `hold ${value.written}${at === null ? "" : ` is ${at.written}`} by ${dials}`,
    reading: value.expr,
    target: aim,
    by: by.map(({ light, property }) => ({ light, property })),
  };
}
