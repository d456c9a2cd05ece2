import type { Recipe } from "../../model/types.js";
import { type ThresholdName, threshold } from "../settings.js";

/** From where on a session says what, in stops: the recipe's `thresholds`, else their usual values. */
export interface Limits {
  /** From this on a difference from the plan is acted on. */
  readonly act: number;
  /** From this on it is noted. */
  readonly note: number;
  /** Up to this it is what meters and dials do by themselves. */
  readonly same: number;
  /** A lamp whose output the readings leave open by more than this to either side is not determined. */
  readonly telling: number;
  /** A lamp that gives less than its setting by more than this has not fired. */
  readonly dark: number;
}

/** The threshold of each limit. */
const names = {
  act: "session_act",
  note: "session_note",
  same: "session_same",
  telling: "session_telling",
  dark: "session_dark",
} as const satisfies Record<keyof Limits, ThresholdName>;

/** The thresholds that sessions use. */
export const sessionThresholds: readonly ThresholdName[] = Object.values(names);

/** The limits of a plan's recipe. */
export function limitsOf({ recipe }: { readonly recipe: Recipe }): Limits {
  const limit = (name: keyof Limits): number => threshold(recipe, names[name]);
  return {
    act: limit("act"),
    note: limit("note"),
    same: limit("same"),
    telling: limit("telling"),
    dark: limit("dark"),
  };
}

/**
 * A cause is told from the best one where the squares of what it leaves, in tolerances of the readings, come to this
 * much more: four in standard deviations, of which a tolerance holds two, the usual bound of a single number at 95 %.
 */
export const APART = 1;
