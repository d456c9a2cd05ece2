import type { Source } from "../../scene/types.js";
import { standIntrusion } from "../geometry/intrusion.js";
import { lightsOf, type Plan } from "../plan.js";
import { personWords } from "../say/bodies.js";
import { sayLength } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Lengths of a boom's arm that are tried, m. */
const STEP = 0.1;
const LONGEST = 3;

/** The shortest arm, in steps of 10 cm, by which column and arm stand free; null where none does. */
function boomFor({ scene }: Plan, source: Source): number | null {
  const { stand } = source;
  if (stand === null || stand.boom !== null) return null;
  for (let i = 3; i * STEP <= LONGEST; i++) {
    const boom = Math.round(i * STEP * 10) / 10;
    if (standIntrusion(scene, { ...source, stand: { ...stand, boom } }) === null) return boom;
  }
  return null;
}

/** A lamp's stand or boom goes through a person or a piece of the set. */
export const standInside: Rule = {
  code: "stand-inside",
  thresholds: [],
  safety: false,
  page: {
    when: "The recipe names a stand, and its column, or the arm of its boom, goes through a person or a piece of the set. The column is a tube of 3 cm upright under the lamp and ends 15 cm below its head; a boom leads level and straight back from the light. Feet are not looked at, nor what lies on the floor, nor the cloth that the lamp shines through.",
    means: "It cannot be built like that, and the stand's shade is that of a tube inside.",
    todo: "Hang the lamp from a boom, or move the lamp or what is in its way.",
    source: "None is needed.",
  },
  check: (plan) =>
    lightsOf(plan.scene).flatMap((source): RuleFinding[] => {
      const found = standIntrusion(plan.scene, source);
      if (found === null) return [];
      const boom = boomFor(plan, source);
      const who = found.of === "piece" ? found.name : personWords(plan.scene, found.name);
      return [
        {
          severity: "stop",
          message:
            source.stand?.boom === null
              ? `The stand of ${source.name} goes through ${who}.`
              : `The stand or the boom of ${source.name} goes through ${who}.`,
          remedy:
            boom === null
              ? `Move ${source.name}, or ${who}.`
              : `Hang ${source.name} from a boom of ${sayLength(boom)}, with which its column stands free behind it, or move one of the two.`,
          about: source.name,
        },
      ];
    }),
};
