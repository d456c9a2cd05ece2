import type { ResultType } from "../../model/values.js";
import type { Reading, Share } from "../light/reading.js";

/** What an expression came to. */
export interface Found {
  readonly type: ResultType;
  /**
   * In the base unit of its type: m, deg, lx s, lm s; a contrast in stops, a reading as its f-number. Null where it
   * cannot be had, and `reason` says why.
   */
  readonly value: number | null;
  readonly reason: string | null;
  /** The reading behind a value of type `reading`. */
  readonly reading: Reading | null;
  /** What each light gives to it; empty where no light is summed. */
  readonly shares: readonly Share[];
  /** How far what is known of bounced light leaves the value open, stops to either side; 0 where no light is summed. */
  readonly error: number;
  /** True for widths of shadow edges, which are said in millimetres. */
  readonly edge: boolean;
  /** True for shares of a whole, which are said in per cent. */
  readonly share?: true;
}

/** A value that is known. */
export function value(type: ResultType, amount: number): Found {
  return Number.isFinite(amount)
    ? {
        type,
        value: amount,
        reason: null,
        reading: null,
        shares: [],
        error: 0,
        edge: false,
      }
    : nothing(type, "it leaves the range of numbers");
}

/** A value that cannot be had. */
export function nothing(type: ResultType, reason: string): Found {
  return { type, value: null, reason, reading: null, shares: [], error: 0, edge: false };
}

/** A share of a whole, 0 to 1, or the reason where it is null. */
export function shareOr(amount: number | null, reason: string): Found {
  const found = valueOr("number", amount, reason);
  return found.value === null ? found : { ...found, share: true };
}

/** A value, or the reason where it is null. */
export function valueOr(type: ResultType, amount: number | null, reason: string): Found {
  return amount === null ? nothing(type, reason) : value(type, amount);
}
