import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, pointAt } from "../geometry/directions.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { backgroundCorners, fanOf } from "../thrown/fan.js";
import { faceChange, fitsRoom, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

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
