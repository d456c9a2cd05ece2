import { findRoot } from "../../math/roots.js";
import { distance } from "../../math/vector.js";
import { moveTo, withSource } from "../change/move-source.js";
import { alongFloor, bearingOf, elevationOf, pointAt } from "../geometry/directions.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceChange, fitsRoom, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

/** A near lamp that is to pass for sun stands steeper for the feet than for the face. */
export const elevationChangesDownBody: Rule = {
  code: "elevation-changes-down-body",
  thresholds: ["elevation_spread"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the elevation of the key at the face and at the feet differs by more than `elevation_spread` (15 deg).",
    means:
      "The real sun stands equally high for every part of a body; shadows of hands and hem give a near lamp away.",
    todo: "Move the lamp back, or crop the picture higher.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (sunWish(plan.recipe) === null || key === null || key.source.patch !== undefined) return [];
    const { place } = key.subject;
    const most = threshold(plan.recipe, "elevation_spread");
    const feet = elevationOf(place, key.source.centre);
    const spread = Math.abs(feet - key.elevation);
    if (spread <= most + 1e-9) return [];
    const bearing = bearingOf(key.face, key.source.centre);
    const height = key.source.centre[2];
    const level = alongFloor(key.face, key.source.centre);
    const at = (away: number) => pointAt(key.face, bearing ?? 0, away, height);
    const away =
      bearing === null
        ? undefined
        : findRoot(
            (d) => Math.abs(elevationOf(place, at(d)) - elevationOf(key.face, at(d))) - most,
            level,
            Math.max(100, 10 * level),
            1e-9,
          );
    let remedy = "Move the lamp back, or crop the picture higher.";
    if (away !== undefined) {
      const there = ceilTo(away, 0.01);
      const moved = moveTo(key.source, at(there));
      const change = faceChange(plan, withSource(plan, key.index, moved));
      const room = fitsRoom(plan.scene, moved) ? "" : ", which this room has not";
      remedy = `Move ${key.source.name} back to ${sayLength(there)} from the face along the floor${room}, at the same height: then it is ${sayAngle(elevationOf(key.face, moved.centre))} and ${sayAngle(elevationOf(place, moved.centre))}${powerWords(-change)} (slant ${sayLength(distance(key.face, moved.centre))}). Or crop the picture higher.`;
    }
    return [
      {
        severity: "note",
        message: `This sun stands at ${sayAngle(key.elevation)} for the face and ${sayAngle(feet)} for the feet: a near lamp shows.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
