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
  return blend(lights);
}

/** The colour of lights together, each a black body of its temperature; null without light. */
function blend(
  lights: readonly { readonly kelvin: number; readonly amount: number }[],
): CorrelatedTemperature | null {
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
 * How far what is open of bounced light may move the mixture, mired to either side; 0 where all lights are of one colour.
 * Each light may give more or less by the error of its bounced part. A mixture of black bodies is warmer than a
 * temperature if the lights warmer than it outweigh the others, so the warmest that can be has every light above some
 * temperature at its most and every other at its least, and the coldest the other way round: the bound is the farthest
 * of these few, and is reached.
 */
export function mixtureError(scene: Scene, { shares }: Reading, kelvin: number): number {
  const lights = shares
    .flatMap((share) => {
      const source = scene.sources.find((row) => lampName(row) === share.name);
      const most = amountOf(share, "both") + share.error;
      return source === undefined || !(most > 0)
        ? []
        : [
            {
              kelvin: source.colour,
              least: Math.max(0, share.direct + Math.max(0, share.bounced - share.error)),
              most,
            },
          ];
    })
    .sort((a, b) => a.kelvin - b.kelvin);
  // Where a mixture has no temperature it still lies between its lights.
  const farthest = Math.max(0, ...lights.map((light) => Math.abs(miredShift(kelvin, light.kelvin))));
  const shifts = lights.flatMap((_, split) =>
    [true, false].map((warm) => {
      const mixed = blend(
        lights.map((light, i) => ({
          kelvin: light.kelvin,
          amount: i <= split === warm ? light.most : light.least,
        })),
      );
      return mixed === null ? farthest : Math.abs(miredShift(kelvin, mixed.kelvin));
    }),
  );
  return Math.max(0, ...shifts);
}
