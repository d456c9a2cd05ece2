import { exp2 } from "../../core/exp2.js";
import { turnBackground } from "../change/background-lamps.js";
import { surfaceUnder } from "../geometry/background-points.js";
import { whiteWish } from "../light/background.js";
import { tone } from "../light/tone.js";
import { fixed } from "../say/number.js";
import { sayStops } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { againstWords, backgroundSpread } from "./background-spread.js";
import type { Rule } from "./rule.js";

/** A white background comes out grey somewhere. */
export const whiteTooDim: Rule = {
  code: "white-too-dim",
  thresholds: ["white_least"],
  safety: false,
  page: {
    when: "`intent` wishes for a `background` at or over a reading, and its darkest place in the picture is more than `white_least` (0 stop) under that reading (20 places on the first upright piece of the set behind the subject).",
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
    const turned = turnBackground(
      plan,
      (changed) => (backgroundSpread(changed)?.dark.stops ?? Number.NaN) + least,
    );
    const there = turned === null ? null : backgroundSpread(turned.plan);
    return [
      {
        severity: "check",
        message: `${station.name} is ${sayStops(-dark.stops)} under ${againstWords(plan)} ${dark.where}: grey${grey}, not white.`,
        remedy:
          turned === null || there === null
            ? "Light it, bring it nearer, or mask it afterwards."
            : `Turn ${turned.names} ${turned.words}: it then lies between ${fixed(there.dark.stops, 1)} and ${fixed(there.bright.stops, 1)} stop over.`,
        about: station.name,
      },
    ];
  },
};
