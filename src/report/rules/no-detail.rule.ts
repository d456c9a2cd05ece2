import { boardWords, withBoardBeside } from "../change/board-beside.js";
import { litToShadowStops } from "../light/contrast.js";
import { faceName, firstSubject, stationOf } from "../plan.js";
import { sayContrast, sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** The shaded side of a face is too dark for any detail. */
export const noDetail: Rule = {
  code: "no-detail",
  thresholds: ["no_detail"],
  safety: false,
  page: {
    when: "Lit and shaded cheek of the first subject are more than `no_detail` (5 stops) apart, all light counted, and `intent` has no `lit_to_shadow` that says so.",
    means: "The shaded side of the face is black in the picture: eye and cheek are lost in it.",
    todo: "Bring a white board to the shaded side, or a weak light; or wish for the contrast if it is meant.",
    source: "Common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const key = keyLight(plan);
    const subject = firstSubject(scene);
    const shaded = subject === null ? null : stationOf(scene, subject, "shaded_cheek");
    if (key === null || shaded === null || recipe.intent?.lit_to_shadow !== undefined) return [];
    const { stops } = litToShadowStops(plan, faceName(scene));
    if (stops === null || stops <= threshold(recipe, "no_detail") + 1e-9) return [];
    const brought = withBoardBeside(plan, shaded);
    const there = brought === null ? null : litToShadowStops(brought, faceName(scene)).stops;
    return [
      {
        severity: "note",
        message: `The shaded cheek is ${sayStops(stops)} under the lit one: no detail is left in it.`,
        remedy:
          there === null
            ? "Add a weak light from the camera, or wish for the contrast if it is meant."
            : `${boardWords} makes it ${sayContrast(there)}; or wish for the contrast if it is meant.`,
        about: key.source.name,
      },
    ];
  },
};
