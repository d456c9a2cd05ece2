import { flashesOn } from "../frame/timing.js";
import { list, twoFigures } from "../say/number.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

/** Flashes follow each other so fast that they may set off a seizure. */
export const flashRate: Rule = {
  code: "flash-rate",
  thresholds: ["flash_rate"],
  safety: true,
  page: {
    when: "The camera has an `interval`, a flash is on, and frames follow each other at more than `flash_rate` (3 flashes in a second).",
    means:
      "Fast flashing can set off a seizure in people who are sensitive to it, many of whom do not know it.",
    todo: "Slow the burst down, and ask everybody in the room before it; steady light does the same without flashing.",
    source:
      "W3C, Web Content Accessibility Guidelines 2.1, success criterion 2.3.1 (from memory): no more than three flashes in any one second.",
  },
  check: ({ scene, recipe }) => {
    const interval = scene.camera?.interval ?? null;
    const flashes = flashesOn(scene);
    const most = threshold(recipe, "flash_rate");
    if (interval === null || flashes.length === 0 || !(1 / interval > most + 1e-9)) return [];
    const slower = Math.ceil((1000 / most) * (1 - 1e-9)) / 1000;
    const names = flashes.map(({ name }) => name);
    return [
      {
        severity: "stop",
        message: `${list(names)} ${names.length === 1 ? "flashes" : "flash"} ${twoFigures(1 / interval)} times in a second: more than ${twoFigures(most)} can set off a seizure.`,
        remedy: `Leave ${slower} s between frames: that is ${twoFigures(1 / slower)} in a second. Ask everybody in the room first.`,
        about: null,
      },
    ];
  },
};
