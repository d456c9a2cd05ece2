import { backgroundLamps, turnLamps } from "../change/turn-lamps.js";
import { whiteWish } from "../light/background.js";
import type { Plan } from "../plan.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner, startWithOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { againstWords, backgroundSpread, spreadWords } from "./background-spread.js";
import type { Rule } from "./rule.js";
import { turnRemedy } from "./turn-words.js";

/** A white background is brighter than white needs. */
export const whiteTooHot: Rule = {
  code: "white-too-hot",
  thresholds: ["white_most", "white_wanted"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background` at or over a reading, and its brightest place in the picture is more than `white_most` (1 stop) over that reading (20 places on the first upright piece of the set behind the subject, else the wall that belongs to the set).",
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
    const quantity = (changed: Plan): number =>
      (backgroundSpread(changed)?.bright.stops ?? Number.NaN) - wanted;
    const way = turnLamps(plan, backgroundLamps(plan), quantity);
    return [
      {
        severity: "check",
        message: `${startWithOwner(spread.station.name)} is ${sayStops(spread.bright.stops)} over ${againstWords(plan)} ${spread.bright.where}: more than white needs, and it eats the edges of the subject.`,
        remedy:
          way === null
            ? "Keep the key off it, or move subject and key away from it."
            : turnRemedy(plan, way, {
                at: spread.station.at,
                name: `the middle of ${sayOwner(ownerOf(spread.station.name))}`,
                quantity,
                outcome: spreadWords,
              }),
        about: ownerOf(spread.station.name),
      },
    ];
  },
};
