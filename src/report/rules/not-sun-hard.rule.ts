import { seenLight } from "../../scene/lit/seen.js";
import { atDistance } from "../change/move-source.js";
import { greatestSide } from "../geometry/shape.js";
import { sizeFrom } from "../light/size.js";
import { keyOf } from "../plan.js";
import { ceilTo, floorTo, twoFigures } from "../say/number.js";
import { sayAngle, sayCentimetres } from "../say/quantity.js";
import { sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { fitsRoom, keyAtDistance, keyDistanceWhere, keyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

/** A light that is to pass for sun is too large from the face. */
export const notSunHard: Rule = {
  code: "not-sun-hard",
  thresholds: ["sun_angular_size"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the key looks larger than `sun_angular_size` (2.5 deg; up to 1 deg is wanted) from the face, as the cone of the same solid angle.",
    means:
      "The edges of shadows are several times as wide as under the sun of 0.53 deg, and the picture reads as a lamp.",
    todo: "Take a smaller opening (a bare bulb, a small dish) or go further away. A cloth of the same size changes nothing.",
    source:
      "The sun's size: IAU nominal radius and astronomical unit. The thresholds are common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (sunWish(plan.recipe) === null || key === null) return [];
    const { patch } = key.source;
    const size = sizeFrom(seenLight(key.source), key.face);
    const most = threshold(plan.recipe, "sun_angular_size");
    if (size === null || size.equivalent <= most + 1e-9) return [];
    if (patch !== undefined) {
      return [
        {
          severity: "check",
          message: `The patch of ${sayOwner(patch.surface)} that ${key.source.name} lights is ${sayAngle(size.equivalent)} wide from the face, ${twoFigures(size.timesSun)} times the sun: shadow edges are as much softer.`,
          remedy: `Turn ${key.source.name} to the face instead of into ${sayOwner(patch.surface)}.`,
          about: key.source.name,
        },
      ];
    }
    const far = keyDistanceWhere(plan, key, key.away, 200, ({ scene }) => {
      const source = keyOf(scene);
      return (source === null ? 0 : (sizeFrom(source, key.face)?.equivalent ?? 0)) - most;
    });
    const smaller = floorTo((greatestSide(key.source) * most) / size.equivalent, 0.005);
    const opening = `Take an opening of ${sayCentimetres(smaller)} or less at this distance`;
    let remedy = `${opening}.`;
    if (far !== null) {
      const away = ceilTo(far, 0.01);
      const moved = atDistance(key.source, key.face, away);
      remedy = fitsRoom(plan.scene, moved)
        ? `${opening}, or move it back to ${standsWords(key.face, moved)}${powerWords(plan, keyAtDistance(plan, key, away), key.source)}.`
        : `${opening}. Distance alone would need ${standsWords(key.face, moved)}, which this room has not.`;
    }
    return [
      {
        severity: "check",
        message: `${key.source.name} is ${sayAngle(size.equivalent)} wide from the face, ${twoFigures(size.timesSun)} times the sun: shadow edges are as much softer.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
