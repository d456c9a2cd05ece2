import type { BaseUnit } from "./dimension.js";
import { exactFNumber, exactIso } from "./nominal.js";
import { findUnit, toBase } from "./spellings.js";

/** A number in its base unit, read from a short text outside a recipe. */
export interface ParsedQuantity {
  readonly value: number;
  readonly unit: BaseUnit;
}

const amount = /^\s*(-?)(?:(\d+(?:\.\d+)?)\s+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d+)?))\s*/;

/** Reads `2.4`, `1/200`, `7 1/2` at the start; null when there is no number. */
function readAmount(text: string): { value: number; rest: string } | null {
  const match = amount.exec(text);
  if (match === null) return null;
  const [all, minus, whole, top, bottom, fractionTop, fractionBottom, plain] = match;
  const size =
    plain !== undefined
      ? Number(plain)
      : fractionTop !== undefined
        ? Number(fractionTop) / Number(fractionBottom)
        : Number(whole) + Number(top) / Number(bottom);
  if (!Number.isFinite(size)) return null;
  return { value: minus === "-" ? -size : size, rest: text.slice(all.length) };
}

/**
 * Reads one quantity as people write it on a command line: `10cm`, `5 ft 7 1/2 in`, `1/200 s`, `f/11`, `ISO 200`,
 * `18 %`. A bare number comes back with the unit `1`. Nominal f-numbers and ISO values stand for their exact
 * series value. Null for anything else.
 */
export function parseQuantity(text: string): ParsedQuantity | null {
  const fNumber = /^\s*[fFƒ]\/(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (fNumber !== null) return { value: exactFNumber(Number(fNumber[1])), unit: "f" };
  const iso = /^\s*(?:ISO|iso)\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (iso !== null) return { value: exactIso(Number(iso[1])), unit: "ISO" };
  const first = readAmount(text);
  if (first === null) return null;
  if (first.rest.trim() === "") return { value: first.value, unit: "1" };
  const beside = /^(\D+?)\s*(-?\d.*)$/.exec(first.rest);
  if (beside !== null) {
    const upper = findUnit((beside[1] ?? "").trim());
    const second = parseQuantity(beside[2] ?? "");
    if (upper === null || second === null || upper.base !== second.unit || second.value < 0) return null;
    const value = toBase(upper, first.value);
    return { value: value < 0 ? value - second.value : value + second.value, unit: upper.base };
  }
  const unit = findUnit(first.rest.trim());
  return unit === null ? null : { value: toBase(unit, first.value), unit: unit.base };
}
