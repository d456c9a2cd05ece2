import { exp2 } from "../../core/exp2.js";
import type { ClaimModel } from "../../model/values.js";
import type { Quantity } from "../../units/quantity.js";
import type { Plan } from "../plan.js";

/** A set-up and what is claimed about it: what a dial turns. */
export interface Situation {
  readonly plan: Plan;
  readonly claims: readonly ClaimModel[];
}

/** One thing that may be changed by itself so that an expectation holds. */
export interface Dial {
  /** As a recipe names it: `key.distance`, `camera.aperture`. */
  readonly path: string;
  /** What it is now, in its base unit; a power in stops below full. */
  readonly now: number;
  readonly low: number;
  readonly high: number;
  readonly unit: "m" | "deg" | "stop" | "f" | "ISO";
  /** The place of a value on the scale on which an ordinary change of it is 1. */
  readonly place: (value: number) => number;
  readonly valueAt: (place: number) => number;
  /** Values near one that can be set and said, the best first. */
  readonly near: (value: number) => readonly number[];
  /** The set-up with it changed, the light of the set kept: what the search looks at. */
  readonly turned: (value: number) => Situation;
  /** The set-up built anew from the changed recipe: what is judged before it is said. */
  readonly rebuilt: (value: number) => Situation;
  /** The value in words. */
  readonly say: (value: number) => string;
}

/** A search finds the place of a bound to this share of a step: which side of a round number it lies is not known. */
const UNSURE = 1e-3;

/**
 * A value as a multiple of a step, and both neighbours: nearest first, then on finer steps. Of a value that is a
 * multiple itself both neighbours count, since a bound that must not be reached may lie on it.
 */
export function nearSteps(...steps: readonly number[]): (value: number) => readonly number[] {
  return (value) =>
    steps.flatMap((step) => {
      const count = Math.round(value / step);
      const [other, third] = count * step > value ? [count - 1, count + 1] : [count + 1, count - 1];
      const isRound = Math.abs(value / step - count) < UNSURE;
      return [count, other, ...(isRound ? [third] : [])].map((n) => Number((n * step).toPrecision(12)));
    });
}

/**
 * Values of a series near one: the next above it and the next below it; of a value of the series itself both its
 * neighbours, too.
 */
export function nearSeries(
  atLeast: (value: number) => number | undefined,
  atMost: (value: number) => number | undefined,
): (value: number) => readonly number[] {
  return (value) => {
    const [under, over] = [value * (1 - UNSURE), value * (1 + UNSURE)];
    const found = [atLeast(under), atMost(over), atLeast(over), atMost(under)];
    return [...new Set(found)].filter((setting) => setting !== undefined);
  };
}

/** A value that takes the place of a measured one: what may be off stays as it was written. */
export function asMeasured<Q extends Quantity>(value: Q, before: Quantity): Q {
  const { plusMinus } = before;
  return plusMinus === undefined ? value : { ...value, plusMinus };
}

/** A scale on which equal ratios are equal steps; `size` is the ratio's logarithm to base 2 that counts as 1. */
export function byRatio(size: number): Pick<Dial, "place" | "valueAt"> {
  return {
    place: (value) => Math.log2(value) / size,
    valueAt: (place) => exp2(place * size),
  };
}

/** A scale on which equal differences are equal steps. */
export function byDifference(size: number): Pick<Dial, "place" | "valueAt"> {
  return { place: (value) => value / size, valueAt: (place) => place * size };
}
