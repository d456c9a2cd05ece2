import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import type { Scene, Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { hiddenBySet } from "../light/set-hides.js";
import { ceilTo } from "../say/number.js";

/** The highest that is tried, m. */
const HIGHEST = 6;
/** The share of the light that may still be hidden. */
const TRIFLE = 0.01;

/** The least height, to a centimetre, at which a lamp clears whatever stands before a place; null up to 6 m. */
export function clearHeight(scene: Scene, source: Source, at: Vec3): number | null {
  const over = (height: number): number =>
    (hiddenBySet(scene, atHeight(source, height), at)?.share ?? 0) > TRIFLE ? -1 : 1;
  if (over(HIGHEST) < 0) return null;
  const height = findRoot(over, source.centre[2], HIGHEST, 1e-4);
  if (height === undefined) return null;
  const rounded = ceilTo(height + 0.001, 0.01);
  return over(rounded) < 0 ? null : rounded;
}
