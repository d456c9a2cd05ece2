import { greatestSide } from "../geometry/shape.js";
import { sizeFrom } from "../light/size.js";
import { faceWords, firstFace, lightsOn } from "../plan.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength, sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A cloth before a head does not make it larger. */
export const diffuserNoSofter: Rule = {
  code: "diffuser-no-softer",
  thresholds: ["diffuser_gain"],
  safety: false,
  page: {
    when: "A head shines through a cloth whose evenly lit patch is less than `diffuser_gain` (1.2) times as wide from the first face as the bare head, both as cones of the same solid angle.",
    means: "Softness is angular size. A cloth of the size of the head changes output and spill, and no edge.",
    todo: "Take a larger cloth and light all of it, or bring it nearer.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const face = firstFace(scene);
    if (face === null) return [];
    return lightsOn(scene).flatMap((source): RuleFinding[] => {
      const head = scene.sources.find((row) => row.spillOf === source.name);
      if (source.cloth === undefined || head === undefined) return [];
      const [cloth, bare] = [sizeFrom(source, face), sizeFrom(head, face)];
      if (cloth === null || bare === null) return [];
      const gain = threshold(recipe, "diffuser_gain");
      if (cloth.equivalent >= gain * bare.equivalent - 1e-9) return [];
      const half = (angle: number): number => Math.tan((Math.min(170, angle) * Math.PI) / 360);
      const wider = (half(2 * bare.equivalent) / half(cloth.equivalent)) * greatestSide(source);
      return [
        {
          severity: "note",
          message: `From ${faceWords(scene)} ${source.cloth.scrim} is ${sayAngle(cloth.equivalent)} wide, and the bare head is ${sayAngle(bare.equivalent)}: the cloth costs ${sayStops(source.cloth.loses)} and softens next to nothing.`,
          remedy: `For edges twice as soft as the bare head's it takes a patch of light ${sayLength(ceilTo(wider, 0.05))} wide at this place, or bring the cloth nearer.`,
          about: source.name,
        },
      ];
    });
  },
};
