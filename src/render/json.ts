import { exact } from "./number.js";

/**
 * Plain data as JSON with two spaces of indent and a line end, keys in the order in which they were built. Numbers
 * have at most 12 significant digits; a number that is not finite is our own mistake and becomes null.
 */
export function renderJson(data: unknown): string {
  const text = JSON.stringify(
    data,
    (_key, value: unknown) => (typeof value === "number" ? exact(value) : value),
    2,
  );
  return `${text}\n`;
}
