import { atDistance } from "../change/move-source.js";
import { greatestSide } from "../geometry/shape.js";
import { sizeFrom } from "../light/size.js";
import { keyOf } from "../plan.js";
import { ceilTo, floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceChange, keyAtDistance, keyDistanceWhere, keyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { overcastWish } from "./wishes.js";

/** A light that is to pass for an overcast sky is too small. */
export const notOvercast: Rule = {
  code: "not-overcast",
  thresholds: ["overcast_size"],
  safety: false,
  page: {
    when: "`intent` wishes for an overcast sky, and the key is less than `overcast_size` (60 deg) wide from the face.",
    means: "The sky is half of everything that is seen. A smaller light reads as a window.",
    todo: "Come nearer, take a larger cloth, or light the ceiling.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (!overcastWish(plan.recipe) || key === null) return [];
    const least = threshold(plan.recipe, "overcast_size");
    const size = sizeFrom(key.source, key.face)?.equivalent ?? 0;
    if (!(size > 0) || size >= least - 1e-9) return [];
    const near = keyDistanceWhere(plan, key, 0.2, key.away, ({ scene }) => {
      const source = keyOf(scene);
      return (source === null ? 0 : (sizeFrom(source, key.face)?.equivalent ?? 0)) - least;
    });
    // The same measure seen under the wanted angle: the tangent of half of it, for a like shape.
    const half = (angle: number): number => Math.tan((Math.min(170, angle) * Math.PI) / 360);
    const larger = ceilTo((greatestSide(key.source) * half(least)) / half(size), 0.05);
    let remedy = `Take an opening of about ${sayLength(larger)}, or light the ceiling.`;
    if (near !== null) {
      const away = floorTo(near, 0.01);
      const moved = atDistance(key.source, key.face, away);
      const change = faceChange(plan, keyAtDistance(plan, key, away));
      remedy = `Come to ${standsWords(key.face, moved)}${powerWords(-change)}; or take an opening of about ${sayLength(larger)} where it is, or light the ceiling.`;
    }
    return [
      {
        severity: "check",
        message: `${key.source.name} is ${sayAngle(size)} wide from the face: that is a window, not a sky.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
