import { miredShift } from "../../physics/mired.js";
import { discTowards } from "../../scene/held-meter.js";
import { lightPlace } from "../../scene/lit/seen.js";
import { readingAt } from "../light/reading.js";
import { lightsOn } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayKelvin } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** A light that gives the face less than this share of what the key gives does not colour it. */
const SHARE = 1 / 8;

/** Lights of different colours meet on the face. */
export const colourMix: Rule = {
  code: "colour-mix",
  thresholds: ["colour_mix"],
  safety: false,
  page: {
    when: "A light gives the first face at least an eighth of what the key gives it (3 stops under), each on a disc turned to it, and its colour behind its gels differs from the key's by more than `colour_mix` (30 mired). Lights with the role rim, hair, background or practical are taken to be meant so.",
    means: "Two colours on one face; one white balance cannot serve both.",
    todo: "Put a gel on one of the two, or switch one off.",
    source:
      "Mired as the reciprocal of colour temperature: CIE; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (key === null) return [];
    const most = threshold(plan.recipe, "colour_mix");
    const base = readingAt(plan, key.station, [key.source.name]).exposure;
    return lightsOn(plan.scene).flatMap((source): RuleFinding[] => {
      if (
        source.name === key.source.name ||
        ["rim", "hair", "background", "practical"].includes(source.role ?? "")
      ) {
        return [];
      }
      const meter = discTowards(plan.scene.stations, key.face, lightPlace(source));
      if (meter === null) return [];
      const own = readingAt(plan, meter, [source.name]).exposure;
      const shift = miredShift(source.colour, key.source.colour);
      if (own < base * SHARE || Math.abs(shift) <= most + 1e-9) return [];
      const tint = shift > 0 ? "warm" : "cool";
      return [
        {
          severity: "check",
          message: `${key.source.name} at ${sayKelvin(key.source.colour)} and ${source.name} at ${sayKelvin(source.colour)} meet on the face, ${fixed(Math.abs(shift), 0)} mired apart.`,
          remedy: `Put a ${tint} gel of ${fixed(Math.abs(shift), 0)} mired on ${source.name}, which makes it ${sayKelvin(1e6 / (1e6 / source.colour + Number(fixed(shift, 0))))}; or switch one off.`,
          about: source.name,
        },
      ];
    });
  },
};
