import type { Quantity } from "./quantity.js";

/** Whether some data is a quantity. */
export function isQuantity(data: object): data is Quantity {
  return "value" in data && typeof data.value === "number" && "unit" in data && "written" in data;
}

/** Whether a tolerance is written behind a number of a value. */
export function hasSpread(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return false;
  return isQuantity(value) ? value.plusMinus !== undefined : Object.values(value).some(hasSpread);
}

/** The tolerance written behind an amount of light or energy, in stops upwards; null where none is. */
export function shareInStops({ value, plusMinus }: Quantity): number | null {
  if (plusMinus === undefined || !(value > 0)) return null;
  if (plusMinus.unit === "stop") return Math.abs(plusMinus.value);
  const share = plusMinus.unit === "%" ? plusMinus.value : plusMinus.value / value;
  return Math.log2(1 + Math.abs(share));
}
