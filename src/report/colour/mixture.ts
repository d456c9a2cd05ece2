import { type ColouredLight, mixLights } from "../../physics/colour-mixture.js";
import { type CorrelatedTemperature, correlatedTemperature } from "../../physics/correlated-temperature.js";
import { planckChromaticity } from "../../physics/planck.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene } from "../../scene/types.js";
import type { Reading, Share } from "../light/reading.js";

/** Which part of a reading is looked at. */
export type Part = "direct" | "bounced" | "both";

function amountOf({ direct, bounced }: Share, part: Part): number {
  return part === "direct" ? direct : part === "bounced" ? bounced : direct + bounced;
}

/**
 * The colour of the light of a reading: the lights mixed by what each gives, each taken as a black body of its colour
 * temperature behind its gels; surfaces are taken as grey. Null without light, and where a mixture is too far from the
 * black bodies to have a temperature.
 */
export function mixtureOf(
  scene: Scene,
  { shares }: Reading,
  part: Part = "both",
): CorrelatedTemperature | null {
  const lights = shares.flatMap((share): ColouredLight[] => {
    const source = scene.sources.find((row) => lampName(row) === share.name);
    const amount = amountOf(share, part);
    return source === undefined || !(amount > 0)
      ? []
      : [{ colour: planckChromaticity(source.colour), amount }];
  });
  const mixed = mixLights(lights);
  return mixed === undefined ? null : (correlatedTemperature(mixed) ?? null);
}
