import type { Quantity } from "./quantity.js";

/** Every quantity, by topic. A topic adds its own import line above and its own line here. */
const TOPICS: readonly (readonly Quantity[])[] = [];

/** All quantities in the order of their topics. */
export function allQuantities(): readonly Quantity[] {
  return TOPICS.flat();
}

/** The quantity of a name, or undefined. */
export function findQuantity(name: string): Quantity | undefined {
  return allQuantities().find((quantity) => quantity.name === name);
}
