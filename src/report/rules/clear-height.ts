import { findRoot } from "../../math/roots.js";
import type { Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { ceilTo } from "../say/number.js";

/** The highest that is tried, m. */
const HIGHEST = 6;
/** The share of the light that may still be hidden. */
const TRIFLE = 0.01;

/**
 * The least height, to a centimetre, at which a lamp clears whatever stands before it; null up to 6 m.
 *
 * @param hidden - The share that is hidden of the lamp where it is put.
 */
export function clearHeight(source: Source, hidden: (raised: Source) => number): number | null {
  const over = (height: number): number => (hidden(atHeight(source, height)) > TRIFLE ? -1 : 1);
  if (over(HIGHEST) < 0) return null;
  const height = findRoot(over, source.centre[2], HIGHEST, 1e-4);
  if (height === undefined) return null;
  const rounded = ceilTo(height + 0.001, 0.01);
  return over(rounded) < 0 ? null : rounded;
}
