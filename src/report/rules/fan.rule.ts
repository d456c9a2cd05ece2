import type { Source } from "../../scene/types.js";
import { sayAngle } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { backgroundCorners, fanOf } from "../thrown/fan.js";
import { carriedBack } from "./carry-back.js";
import { keyLight } from "./key-light.js";
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
    const spreadOf = ({ centre }: Source): number => fanOf(centre, corners, place);
    const spread = spreadOf(key.source);
    if (spread <= most + 1e-9) return [];
    const back = carriedBack(plan, key, (source) => spreadOf(source) - most);
    const remedy =
      back === null
        ? "Show less of the set: room and stand let the lamp no further back."
        : back.enough
          ? `${back.words}: then they spread by ${sayAngle(spreadOf(back.there))}. Or show less of the set.`
          : `Show less of the set: ${back.words} they still spread by ${sayAngle(spreadOf(back.there))}.`;
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
