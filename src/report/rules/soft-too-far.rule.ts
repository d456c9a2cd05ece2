import { atDistance } from "../change/move-source.js";
import { diagonalOf } from "../geometry/shape.js";
import { sizeFrom } from "../light/size.js";
import { floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyAtDistance, keyLight, standsWords } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";
import { softWish } from "./wishes.js";

/** A box that is wished soft stands too far away. */
export const softTooFar: Rule = {
  code: "soft-too-far",
  thresholds: ["soft_distance"],
  safety: false,
  page: {
    when: "`intent` wishes for soft edges, and the key is further from the face than `soft_distance` (2) times the diagonal of its opening.",
    means: "Softness is angular size. From far away a large box is a small light.",
    todo: "Come nearer: about as far as the box is large is common. Or take a larger opening.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (!softWish(plan.recipe) || key === null || key.source.patch !== undefined) return [];
    const most = threshold(plan.recipe, "soft_distance") * diagonalOf(key.source);
    if (key.away <= most + 1e-9) return [];
    const size = sizeFrom(key.source, key.face);
    const away = floorTo(most, 0.01);
    if (size === null || !(away > 0.05)) return [];
    const moved = atDistance(key.source, key.face, away);
    const there = sizeFrom(moved, key.face);
    const angle = there === null ? "" : ` for ${sayAngle(there.equivalent)}`;
    return [
      {
        severity: "note",
        message: `${key.source.name} at ${sayLength(key.away)} is ${sayAngle(size.equivalent)} wide: beyond ${sayLength(most)} it works as a hard light.`,
        remedy: `Come to ${standsWords(key.face, moved)}${angle}${powerWords(plan, keyAtDistance(plan, key, away), key.source)}.`,
        about: key.source.name,
      },
    ];
  },
};
