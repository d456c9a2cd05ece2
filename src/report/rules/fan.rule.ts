import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { degrees } from "../../math/rotation.js";
import type { Scene } from "../../scene/types.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, pointAt } from "../geometry/directions.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceChange, fitsRoom, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

/** The corners of upright flats, papers and panels, behind which a picture has its background. */
export function backgroundCorners(scene: Scene): readonly Vec3[] {
  return scene.polygons
    .filter((row) => ["flat", "paper", "panel"].includes(row.kind) && Math.abs(row.normal[2]) < 0.5)
    .flatMap((row) => row.vertices);
}

/** The spread in deg of the directions, seen from above, in which a lamp throws shadows over some places. */
export function fanOf(lamp: Vec3, places: readonly Vec3[], middle: Vec3): number {
  const mx = middle[0] - lamp[0];
  const my = middle[1] - lamp[1];
  let low = 0;
  let high = 0;
  for (const place of places) {
    const x = place[0] - lamp[0];
    const y = place[1] - lamp[1];
    const turn = degrees(Math.atan2(mx * y - my * x, mx * x + my * y));
    low = Math.min(low, turn);
    high = Math.max(high, turn);
  }
  return high - low;
}

/** Shadows of a light that is to pass for sun spread across the set. */
export const fan: Rule = {
  code: "fan",
  thresholds: ["fan"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the shadows that the key throws across the upright pieces of the set spread by more than `fan` (25 deg; 20 deg is wanted), seen from above.",
    means: "Shadows in sunlight are parallel. Shadows that spread from a point near by tell of a lamp.",
    todo: "Move the lamp back, or show less of the set.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const corners = backgroundCorners(plan.scene);
    if (
      sunWish(plan.recipe) === null ||
      key === null ||
      key.source.patch !== undefined ||
      corners.length === 0
    )
      return [];
    const most = threshold(plan.recipe, "fan");
    const { place } = key.subject;
    const spread = fanOf(key.source.centre, corners, place);
    if (spread <= most + 1e-9) return [];
    const bearing = bearingOf(key.face, key.source.centre) ?? 0;
    const level = alongFloor(key.face, key.source.centre);
    const at = (away: number): Vec3 => pointAt(key.face, bearing, away, key.source.centre[2]);
    const away = findRoot((d) => fanOf(at(d), corners, place) - most, level, 200, 1e-9);
    let remedy = "Show less of the set.";
    if (away !== undefined) {
      const there = ceilTo(away, 0.01);
      const moved = moveTo(key.source, at(there));
      const change = faceChange(plan, withSource(plan, key.index, moved));
      const room = fitsRoom(plan.scene, moved) ? "" : ", which this room has not";
      remedy = `Move ${key.source.name} back to ${sayLength(there)} from the face along the floor${room}${powerWords(-change)}; or show less of the set.`;
    }
    return [
      {
        severity: "note",
        message: `Shadows spread by ${sayAngle(spread)} across the set, where those of the sun are parallel.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
