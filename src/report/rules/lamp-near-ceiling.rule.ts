import { lampName } from "../../scene/lit/seen.js";
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
    when: "The top of a lamp's head is less than `ceiling_clearance` (25 cm) below the ceiling, or less than `ceiling_clearance_hot` (50 cm) with a hot modelling lamp. A cool head that shines into the ceiling may come as near as it likes.",
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
      // A patch on the ceiling is what a head that shines into it is there for.
      const meant = source.patch?.surface === "ceiling";
      if (meant && !source.hotModellingLamp) return [];
      if (free < -1e-9 || free >= needed - 1e-9) return [];
      const heats = source.hotModellingLamp ? "heats the ceiling" : "lights a hot patch there";
      const does = source.hotModellingLamp && !meant ? "lights a hot patch there and heats it" : heats;
      return [
        {
          severity: "check",
          message: `The head of ${lampName(source)} ends ${sayCentimetres(floorTo(free, 0.01))} under the ceiling, less than ${sayCentimetres(needed)}: it ${does}.`,
          remedy: lowerWords(plan, scene, source, room.height),
          about: lampName(source),
        },
      ];
    });
  },
};
