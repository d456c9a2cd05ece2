import { exp2 } from "../../core/exp2.js";
import { backgroundLamps, turnLamps } from "../change/turn-lamps.js";
import { surfaceUnder } from "../geometry/background-points.js";
import { whiteWish } from "../light/background.js";
import { tone } from "../light/tone.js";
import type { Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { ownerOf, sayOwner, startWithOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { againstWords, backgroundSpread, spreadWords } from "./background-spread.js";
import type { Rule } from "./rule.js";
import { turnRemedy } from "./turn-words.js";

/** A white background comes out grey somewhere. */
export const whiteTooDim: Rule = {
  code: "white-too-dim",
  thresholds: ["white_least"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background` at or over a reading, and its darkest place in the picture is more than `white_least` (0 stop) under that reading (20 places on the first upright piece of the set behind the subject, else the wall that belongs to the set).",
    means:
      "Paper as bright as the face is just white with its texture; darker paper is grey. Its tone is that of its reflectance, by the sRGB curve alone.",
    todo: "Turn the background lights up, make them more even, or mask the patch afterwards.",
    source: "IEC 61966-2-1 for the curve (from memory); the threshold is common practice, no source.",
  },
  check: (plan) => {
    const spread = whiteWish(plan) ? backgroundSpread(plan) : null;
    const least = threshold(plan.recipe, "white_least");
    // A tenth is what a meter shows.
    if (spread === null || spread.dark.stops >= -least - 0.05) return [];
    const { station, dark } = spread;
    const paper = surfaceUnder(plan.scene, station);
    const grey =
      paper === null ? "" : ` (tone ${fixed(tone(paper.frontReflectance * exp2(dark.stops)), 0)} of 255)`;
    const quantity = (changed: Plan): number => (backgroundSpread(changed)?.dark.stops ?? Number.NaN) + least;
    const way = turnLamps(plan, backgroundLamps(plan), quantity);
    return [
      {
        severity: "check",
        message: `${startWithOwner(station.name)} is ${sayStops(-dark.stops)} under ${againstWords(plan)} ${dark.where}: grey${grey}, not white.`,
        remedy:
          way === null
            ? "Light it, bring it nearer, or mask it afterwards."
            : turnRemedy(plan, way, {
                at: station.at,
                name: `the middle of ${sayOwner(ownerOf(station.name))}`,
                quantity,
                outcome: spreadWords,
              }),
        about: ownerOf(station.name),
      },
    ];
  },
};
