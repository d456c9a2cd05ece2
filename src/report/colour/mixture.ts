import { type ColouredLight, mixLights } from "../../physics/colour-mixture.js";
import { type CorrelatedTemperature, correlatedTemperature } from "../../physics/correlated-temperature.js";
import { miredShift } from "../../physics/mired.js";
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
  const lights = shares.flatMap((share) => {
    const source = scene.sources.find((row) => lampName(row) === share.name);
    const amount = amountOf(share, part);
    return source === undefined || !(amount > 0) ? [] : [{ kelvin: source.colour, amount }];
  });
  const first = lights[0];
  if (first === undefined) return null;
  // Lights of one colour stay what they are.
  if (lights.every(({ kelvin }) => kelvin === first.kelvin)) return { kelvin: first.kelvin, duv: 0 };
  const mixed = mixLights(
    lights.map(({ kelvin, amount }): ColouredLight => ({ colour: planckChromaticity(kelvin), amount })),
  );
  return mixed === undefined ? null : (correlatedTemperature(mixed) ?? null);
}

/**
 * How far what is open of bounced light may move the mixture, mired to either side: its share of all light times the
 * farthest of the lights from the mixture; 0 where all lights are of one colour.
 */
export function mixtureError(scene: Scene, { shares, exposure, error }: Reading, kelvin: number): number {
  const apart = shares.map((share) => {
    const source = scene.sources.find((row) => lampName(row) === share.name);
    return source === undefined || !(amountOf(share, "both") > 0)
      ? 0
      : Math.abs(miredShift(kelvin, source.colour));
  });
  return exposure > 0 ? (error / exposure) * Math.max(0, ...apart) : 0;
}
