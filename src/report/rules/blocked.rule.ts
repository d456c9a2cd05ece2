import { addScaled, distance } from "../../math/vector.js";
import { directionTo } from "../geometry/directions.js";
import { hiddenBySet } from "../light/set-hides.js";
import { lightsOn } from "../plan.js";
import { sayLength, sayPercent } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { clearHeight } from "./clear-height.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A face that is aimed at is the affair of `panel-shades-key`, m. */
const AT_FACE = 0.05;

/** The aim may lie on a surface, or just under one: the place is taken so far before it, m. */
const BEFORE = 0.02;

/** A light does not reach what it is aimed at. */
export const blocked: Rule = {
  code: "blocked",
  thresholds: ["blocked"],
  safety: false,
  page: {
    when: "Pieces of the set hide more than `blocked` (50 %) of a light that is on from the point that it is aimed at. A face is left to `panel-shades-key`.",
    means: "The light is wasted on the back of a flat, and what it is meant for stays dark.",
    todo: "Move the light or the piece, or aim at what it does reach.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) =>
    lightsOn(scene).flatMap((source): RuleFinding[] => {
      const { aim } = source;
      const towards = directionTo(aim, source.centre);
      if (towards === null) return [];
      if (scene.subjects.some(({ face }) => distance(face, aim) < AT_FACE)) return [];
      const hidden = hiddenBySet(scene, source, addScaled(aim, towards, BEFORE));
      if (hidden === null || hidden.share <= threshold(recipe, "blocked") + 1e-9) return [];
      const name = ownerOf(hidden.piece.name);
      const height =
        source.cloth === undefined
          ? clearHeight(source, (raised) => hiddenBySet(scene, raised, aim)?.share ?? 0)
          : null;
      return [
        {
          severity: "check",
          message: `${name} hides ${sayPercent(hidden.share)} of ${source.name} from the point that it is aimed at.`,
          remedy:
            height === null
              ? `Move ${source.name} or ${name} to the side.`
              : `Raise ${source.name} to ${sayLength(height)}, where it clears ${name}, or move one of the two.`,
          about: source.name,
        },
      ];
    }),
};
