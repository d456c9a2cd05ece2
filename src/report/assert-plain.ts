import { invariant } from "../core/invariant.js";

/**
 * Proves that a report is plain JSON: no NaN, no infinity, no undefined and nothing but objects, arrays, texts,
 * numbers, truths and null. A breach is our own mistake and throws.
 */
export function assertPlain(value: unknown, path = "report"): void {
  if (typeof value === "number") {
    invariant(Number.isFinite(value), `${path} is not a finite number`);
    return;
  }
  if (value === null || typeof value === "string" || typeof value === "boolean") return;
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) assertPlain(value[i], `${path}[${i}]`);
    return;
  }
  invariant(typeof value === "object", `${path} is not plain`);
  for (const [name, item] of Object.entries(value as object)) assertPlain(item, `${path}.${name}`);
}

/** The same value with every -0 turned into 0. */
export function withoutMinusZero<T>(value: T): T {
  if (typeof value === "number") return (value === 0 ? 0 : value) as T;
  if (Array.isArray(value)) {
    const items: unknown[] = [];
    for (const item of value) items.push(withoutMinusZero(item));
    return items as T;
  }
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value) as [string, unknown][];
  for (const entry of entries) entry[1] = withoutMinusZero(entry[1]);
  return Object.fromEntries(entries) as T;
}
