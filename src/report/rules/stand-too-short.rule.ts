import { lampName } from "../../scene/lit/seen.js";
import { atHeight } from "../change/move-source.js";
import { elevationOf } from "../geometry/directions.js";
import { firstFace } from "../plan.js";
import { ceilTo, floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The stand does not reach the height of the lamp. */
export const standTooShort: Rule = {
  code: "stand-too-short",
  thresholds: ["stand_margin"],
  safety: false,
  page: {
    when: "A lamp without a boom is higher than `highest` of its stand less `stand_margin` (5 cm).",
    means: "The stand ends before the lamp is where the recipe wants it; fully drawn out it also sways most.",
    todo: "Take a taller stand or a boom, or lower the lamp and accept the lower light. Do not stand it on furniture.",
    source: "Geometry; the margin is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const margin = threshold(recipe, "stand_margin");
    const face = firstFace(scene);
    return scene.sources.flatMap((source): RuleFinding[] => {
      const highest = source.stand?.highest ?? null;
      if (highest === null || source.stand?.boom !== null) return [];
      if (!(source.centre[2] > highest - margin + 1e-9)) return [];
      const lower = floorTo(highest - margin, 0.01);
      // Where the light is another place than this head, its own elevation says nothing.
      const elsewhere = face === null || source.patch !== undefined || source.spillOf !== undefined;
      const after = elsewhere ? null : elevationOf(face, atHeight(source, lower).centre);
      const before = elsewhere ? null : elevationOf(face, source.centre);
      const angle =
        after === null || before === null
          ? ""
          : `, where it stands at ${sayAngle(after)} to the face instead of ${sayAngle(before)}`;
      return [
        {
          severity: "stop",
          message: `The stand of ${lampName(source)} reaches ${sayLength(highest)}; the lamp is to be at ${sayLength(source.centre[2])}, with ${sayLength(margin)} in reserve.`,
          remedy: `Take a stand of at least ${sayLength(ceilTo(source.centre[2] + margin, 0.01))}, or lower the lamp to ${sayLength(lower)}${angle}.`,
          about: lampName(source),
        },
      ];
    });
  },
};
