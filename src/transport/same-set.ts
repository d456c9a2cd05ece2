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
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((part, i) => same(part, b[i]));
  }
  const keys = Object.keys(a);
  if (Array.isArray(b) || keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (key) =>
      Object.hasOwn(b, key) && same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
