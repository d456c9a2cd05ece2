import { actingTime, motionOf } from "../frame/timing.js";
import { keyOf, lightsOn } from "../plan.js";
import { fixed, twoFigures } from "../say/number.js";
import { sayLength, sayTime } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";
import { whose } from "./set-top-words.js";

/** What moves smears. */
export const motionBlur: Rule = {
  code: "motion-blur",
  thresholds: ["motion"],
  safety: false,
  page: {
    when: "A subject `moves`, and in the time for which the key acts its movement across the picture is longer than `motion` (2) pixels, or without a count of pixels than the circle of confusion. A flash acts for its `lasts` (t0.1), steady light for the shutter time; a flash without `lasts` is not judged.",
    means: "Hands, hair or hems are smeared.",
    todo: "A shorter flash, a faster shutter with steady light, or a calmer pose.",
    source:
      "Speed x time x magnification; t0.1: ISO 2827:1988 (edition from memory). Speeds by word and the threshold are common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const { camera } = scene;
    const key = keyOf(scene);
    if (camera === null || key === null || !lightsOn(scene).includes(key)) return [];
    const time = actingTime(scene, key);
    if (time === null) return [];
    return scene.subjects.flatMap((subject): readonly RuleFinding[] => {
      const motion = motionOf(scene, subject, time);
      if (motion === null) return [];
      const most = threshold(recipe, "motion");
      const over = motion.pixels === null ? motion.blur / camera.circleOfConfusion : motion.pixels / most;
      if (!(over > 1 + 1e-9)) return [];
      const size =
        motion.pixels === null
          ? `${twoFigures(motion.blur * 1000)} mm on the sensor`
          : `${fixed(motion.pixels, 1)} pixels`;
      // Rounded to the shorter side, so that the time that is named is short enough.
      const shorter = Math.ceil(over / time - 1e-6);
      const what = key.kind === "flash" ? "a flash that lasts" : "a shutter of";
      return [
        {
          severity: "check",
          message: `In ${sayTime(time)} ${whose(subject)} moves ${sayLength(motion.path)} (${twoFigures(subject.speed)} m/s): ${size}.`,
          remedy: `It takes ${what} 1/${fixed(shorter, 0)} s or less, or a calmer pose.`,
          about: subject.name === "" ? null : subject.name,
        },
      ];
    });
  },
};
