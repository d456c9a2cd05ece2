import type { Scene } from "../scene/types.js";

/**
 * Whether two scenes have the same set: the same room, surfaces and bodies, so that one's light holds for the other.
 * Lamps, stations, camera and names may differ.
 */
export function sameSet(a: Scene, b: Scene): boolean {
  return a === b || (same(a.room, b.room) && same(a.polygons, b.polygons) && same(a.bodies, b.bodies));
}

/** Deep equality of plain data. */
function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && sameList(a, b);
  return !Array.isArray(b) && sameRecord(a as Plain, b as Plain);
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!same(a[i], b[i])) return false;
  return true;
}

type Plain = Readonly<Record<string, unknown>>;

function sameRecord(a: Plain, b: Plain): boolean {
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) if (!Object.hasOwn(b, key) || !same(a[key], b[key])) return false;
  return true;
}
