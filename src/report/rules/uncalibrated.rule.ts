import { axialExposurePerEnergy } from "../../physics/calibration.js";
import { flashFNumber } from "../../physics/exposure.js";
import { sourceBeam, sourceShape } from "../../scene/lamp/optics.js";
import { lightsOn } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayFNumber } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Where the meter is to be held for the one reading, m. */
const AT = 2;

/** An output is known by a data sheet only. */
export const uncalibrated: Rule = {
  code: "uncalibrated",
  thresholds: ["uncalibrated"],
  safety: false,
  page: {
    when: "The output of a light that is on may be off by `uncalibrated` (0.9 stop) or more: it is known by watt-seconds and an efficacy.",
    means: "Every reading of this light is a guess within a stop to either side.",
    todo: "Take one reading on its axis with a flat receptor, in a large or dark place, and write it as `calibration: metered(f/..., at: ..., ISO ...)`.",
    source: "Common practice, no source: data sheets predict to about a stop, one reading to about 0.3 stop.",
  },
  check: ({ scene, recipe }) =>
    lightsOn(scene).flatMap((source): RuleFinding[] => {
      if (source.uncertainty < threshold(recipe, "uncalibrated") - 1e-9) return [];
      const perEnergy = axialExposurePerEnergy(sourceShape(source), AT, sourceBeam(source));
      const expected =
        perEnergy === undefined || !(source.fullEnergy > 0)
          ? ""
          : `; it should say about ${sayFNumber(flashFNumber(perEnergy * source.fullEnergy, 100, scene.meter.flat))} at ISO 100`;
      return [
        {
          severity: "note",
          message: `The output of ${source.name} is known to ${fixed(source.uncertainty, 1)} stop only (${source.known}).`,
          remedy: `Meter it once, at full power on its axis from ${AT} m, with a flat receptor and no walls near${expected}.`,
          about: source.name,
        },
      ];
    }),
};
