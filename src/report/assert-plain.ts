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
    value.forEach((item, i) => {
      assertPlain(item, `${path}[${i}]`);
    });
    return;
  }
  invariant(typeof value === "object", `${path} is not plain`);
  for (const [name, item] of Object.entries(value as object)) assertPlain(item, `${path}.${name}`);
}

/** The same value with every -0 turned into 0. */
export function withoutMinusZero<T>(value: T): T {
  if (typeof value === "number") return (value === 0 ? 0 : value) as T;
  if (Array.isArray(value)) return value.map((item: unknown) => withoutMinusZero(item)) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, item]: [string, unknown]) => [name, withoutMinusZero(item)]),
  ) as T;
}
