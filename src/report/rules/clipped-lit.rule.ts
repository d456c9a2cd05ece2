import { brightestOf } from "../light/highlights.js";
import { sayPercent, sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

/** Something light in the picture is lit beyond white. */
export const clippedLit: Rule = {
  code: "clipped-lit",
  thresholds: ["clip"],
  safety: false,
  page: {
    when: "The camera says an aperture and an ISO value, and the skin of a face in the picture, or a station of set or floor in the picture, comes nearer to pure white than `clip` (0.1 stop): its reflectance times its light over the light that the aperture is right for. A background that `intent` wishes at or over a reading is meant to, and is left out.",
    means: "Paper, a dress or a forehead has no texture left there.",
    todo: "Close the aperture or turn the lights down by what it says, feather the light off it, or take something darker.",
    source:
      "An incident meter puts a surface that throws all light back at pure white; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const margin = threshold(plan.recipe, "clip");
    const worst = brightestOf(plan);
    if (typeof worst === "string") return [];
    const over = margin - worst.headroom;
    if (!(over > 1e-9)) return [];
    return [
      {
        severity: "check",
        message: `${worst.what} (${sayPercent(worst.reflectance)}) is ${sayStops(over)} too bright to keep its texture.`,
        remedy: `Close the aperture or turn the lights down by ${sayStops(over)}, or feather them off it.`,
        about: worst.what,
      },
    ];
  },
};
