import { floorTo } from "../say/number.js";
import { sayCentimetres } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { lowerWords } from "./lamp-through-ceiling.rule.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The lamp fits, but close under the ceiling. */
export const lampNearCeiling: Rule = {
  code: "lamp-near-ceiling",
  thresholds: ["ceiling_clearance", "ceiling_clearance_hot"],
  safety: false,
  page: {
    when: "The top of a lamp's head is less than `ceiling_clearance` (25 cm) below the ceiling, or less than `ceiling_clearance_hot` (50 cm) with a hot modelling lamp.",
    means:
      "The ceiling above the lamp becomes a bright patch that fills the shadows from above, and a hot lamp heats it.",
    todo: "Lower the lamp, keep light off the ceiling with a flag or a dish, or use a cool modelling lamp. Where the maker asks for more space, that figure counts.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { room } = scene;
    if (room === null) return [];
    return scene.sources.flatMap((source): RuleFinding[] => {
      const free = room.height - source.centre[2] - source.headHeight / 2;
      const name = source.hotModellingLamp ? "ceiling_clearance_hot" : "ceiling_clearance";
      const needed = threshold(recipe, name);
      if (free < -1e-9 || free >= needed - 1e-9) return [];
      const hot = source.hotModellingLamp ? " and heats it" : "";
      return [
        {
          severity: "check",
          message: `The head of ${source.name} ends ${sayCentimetres(floorTo(free, 0.01))} under the ceiling, less than ${sayCentimetres(needed)}: it lights a hot patch there${hot}.`,
          remedy: lowerWords(plan, scene, source, room.height),
          about: source.name,
        },
      ];
    });
  },
};
