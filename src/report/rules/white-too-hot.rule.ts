import { turnBackground } from "../change/background-lamps.js";
import { whiteWish } from "../light/background.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { againstWords, backgroundSpread } from "./background-spread.js";
import type { Rule } from "./rule.js";

/** A white background is brighter than white needs. */
export const whiteTooHot: Rule = {
  code: "white-too-hot",
  thresholds: ["white_most", "white_wanted"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background` at or over a reading, and its brightest place in the picture is more than `white_most` (1 stop) over that reading (20 places on the first upright piece of the set behind the subject).",
    means:
      "White paper is pure white from about a third of a stop over the face. More only sends light back at the subject: edges glow, and the lens veils.",
    todo: "Turn the background lights down to about half a stop over.",
    source: "Straight arithmetic of reflectance and sRGB; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const spread = whiteWish(plan) ? backgroundSpread(plan) : null;
    const most = threshold(plan.recipe, "white_most");
    if (spread === null || spread.bright.stops <= most + 1e-9) return [];
    const wanted = threshold(plan.recipe, "white_wanted");
    const turned = turnBackground(
      plan,
      (changed) => (backgroundSpread(changed)?.bright.stops ?? Number.NaN) - wanted,
    );
    const there = turned === null ? null : backgroundSpread(turned.plan);
    return [
      {
        severity: "check",
        message: `${spread.station.name} is ${sayStops(spread.bright.stops)} over ${againstWords(plan)} ${spread.bright.where}: more than white needs, and it eats the edges of the subject.`,
        remedy:
          turned === null || there === null
            ? "Keep the key off it, or move subject and key away from it."
            : `Turn ${turned.names} ${turned.words}: it then lies between ${fixed(there.dark.stops, 1)} and ${fixed(there.bright.stops, 1)} stop over.`,
        about: spread.station.name,
      },
    ];
  },
};
