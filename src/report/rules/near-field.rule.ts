import { add, distance, subtract } from "../../math/vector.js";
import { seenLight } from "../../scene/lit/seen.js";
import { greatestSide } from "../geometry/shape.js";
import { fallOffInTheOpen } from "../light/fall-off.js";
import { firstFace, lightsOn } from "../plan.js";
import { startWithLight } from "../say/light.js";
import { fixed } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The light is so near that the inverse-square rule misleads. */
export const nearField: Rule = {
  code: "near-field",
  thresholds: ["near_field"],
  safety: false,
  page: {
    when: "The face is nearer to a light than `near_field` (1.5) times the greatest measure of its opening, of the lit patch where it shines into a surface, and to twice the distance it loses less than 2.0 stop there.",
    means:
      "The rule that twice the distance costs 2 stops does not hold: so near, light falls off less. The readings of this report are by the area formula and are right.",
    todo: "Do not carry a reading to another distance by the rule; ask for it in the recipe, or meter again.",
    source:
      "A uniform disc falls off as 1 / (R2 + d2): ANSI/IES LS-1, 9.1.1 (five times rule). The threshold is common practice.",
  },
  check: ({ scene, recipe }) => {
    const face = firstFace(scene);
    if (face === null) return [];
    return lightsOn(scene).flatMap((lamp): RuleFinding[] => {
      const source = seenLight(lamp);
      const size = greatestSide(source);
      const away = distance(face, source.centre);
      if (!(away < threshold(recipe, "near_field") * size - 1e-9)) return [];
      const behind = add(face, subtract(face, source.centre));
      const loss = fallOffInTheOpen(source, face, behind);
      if (loss === null || fixed(loss, 1) === "2.0") return [];
      return [
        {
          severity: "note",
          message: `${startWithLight(lamp)} is ${sayLength(away)} from the face and ${sayLength(size)} large: the inverse-square rule does not hold there.`,
          remedy: `From here to twice the distance it loses ${fixed(loss, 1)} stop, not 2.0; meter, or compute with the size.`,
          about: source.name,
        },
      ];
    });
  },
};
