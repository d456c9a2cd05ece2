import { distance } from "../../math/vector.js";
import { inFrame } from "../geometry/frame.js";
import { firstSubject } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

/** The lens is so near that noses and hands swell. */
export const tooClose: Rule = {
  code: "too-close",
  thresholds: ["perspective_head", "perspective_full"],
  safety: false,
  page: {
    when: "The lens is nearer to the first subject's face than `perspective_head` (1.5 m), or, where the feet are in the frame too, than `perspective_full` (2.5 m).",
    means:
      "Perspective depends on distance alone. From so near, what is nearer to the lens swells: noses, hands, heads over small feet.",
    todo: "Step back and take a longer lens for the same frame.",
    source: "Common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const { camera } = scene;
    const subject = firstSubject(scene);
    if (camera === null || subject === null || !inFrame(camera, subject.face)) return [];
    const whole = inFrame(camera, subject.place);
    const least = threshold(recipe, whole ? "perspective_full" : "perspective_head");
    const away = distance(camera.at, subject.face);
    if (away >= least - 1e-9) return [];
    const lens =
      camera.focalLength === null
        ? ""
        : ` with about ${fixed(ceilTo(((camera.focalLength * least) / away) * 1000, 1), 0)} mm for the same size of the face`;
    return [
      {
        severity: "check",
        message: `The lens is ${sayLength(away)} from the face: ${whole ? "the head grows over small feet" : "noses and near hands swell"}.`,
        remedy: `Step back to ${sayLength(least)}${lens}.`,
        about: null,
      },
    ];
  },
};
