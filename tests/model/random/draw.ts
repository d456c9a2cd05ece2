import { randomFrom } from "../../helpers/random.js";

/** Draws values one after the other; each may depend on those before. */
export interface Draw {
  /** A number from 0 to 1. */
  share(): number;
  one<T>(values: readonly T[]): T;
  /** True once in so many times. */
  once(times: number): boolean;
  /** A whole number, both ends included. */
  int(low: number, high: number): number;
}

/** Draws that follow from a seed. */
export function drawFrom(seed: number): Draw {
  const share = randomFrom(seed);
  const int = (low: number, high: number): number => low + Math.floor(share() * (high - low + 1));
  return {
    share,
    int,
    once: (times) => share() * times < 1,
    one: (values) => {
      const value = values[int(0, values.length - 1)];
      if (value === undefined && values.length === 0) throw new Error("nothing to draw from");
      return value as (typeof values)[number];
    },
  };
}
