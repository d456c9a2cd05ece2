import type { Place } from "../core/span.js";
import type { Recipe } from "./types.js";
import type { Expr } from "./values.js";

/** One reading of the meter on the day. `written` is the line as the session says it. */
export interface MeasuredReading {
  /** Where and how the meter was held, as it is written: `face.disc(towards: key)`. */
  readonly what: string;
  readonly written: string;
  readonly reading: Extract<Expr, { kind: "reading" }>;
  /** An f-number, a luminous exposure or an exposure value. */
  readonly value: Extract<Expr, { kind: "value" }>;
  /** How far it may be off, stops; null where the line does not say it, and the `meter` tolerance holds. */
  readonly tolerance: number | null;
  readonly origin?: Place;
}

/** A session after checking: the recipe it belongs to, the same as it was built, and what the meter said there. */
export interface SessionModel {
  readonly title: string;
  /** The path of the recipe, as the session says it. */
  readonly of: string;
  /** The variant of it that was built; null for the recipe itself. */
  readonly variant: string | null;
  readonly plan: Recipe;
  /** The set-up as built: the recipe with the tapes and settings of the day. */
  readonly built: Recipe;
  readonly readings: readonly MeasuredReading[];
}
