import { mixLights } from "../../physics/colour-mixture.js";
import { correlatedTemperature } from "../../physics/correlated-temperature.js";
import { miredShift } from "../../physics/mired.js";
import { planckChromaticity } from "../../physics/planck.js";
import { clearSkyIlluminance } from "../../physics/sky-illuminance.js";
import { sunColour } from "../../physics/sun-colour.js";
import { curvedAirSun, EXTINCTION_CLEAR } from "../../physics/sun-illuminance.js";
import type { SunPlace } from "./sun-place.js";

/** A day on which the sun has its mean brightness, by the formula that is used: its cosine is 0. */
export const MEAN_DAY = 2 + 365 / 4;

/** The white balance at which sunlight is looked at: daylight of ISO 7589 (D55), K. */
const DAYLIGHT = 5500;

/**
 * Colour of the light of a clear sky, K. What a global spectrum has over a direct one in ASTM G-173 (5232 K direct, 5505 K
 * global) is light of about this colour; photographers' tables say 9000 K and more (common practice, no source).
 */
export const SKY_COLOUR = 9000;

/** A clear sun and its sky, as light; lx and K. */
export interface SunLight {
  /** Straight from the sun, on a plane square to it. */
  readonly square: number;
  /** Of the sky on open level ground. */
  readonly sky: number;
  /** Sun and sky on open level ground. */
  readonly level: number;
  /** Sun and sky on a plane turned to the sun, which sees (1 + sin a) / 2 of an even sky. */
  readonly total: number;
  /** Straight from the sun. */
  readonly straight: number;
  /** Sun and sky together on that plane. */
  readonly mixed: number;
}

/** The light of a clear sun where it stands; null below the horizon. */
export function sunLightOf({ elevation, day }: Pick<SunPlace, "elevation" | "day">): SunLight | null {
  const altitude = (elevation * Math.PI) / 180;
  const sine = Math.sin(altitude);
  const straight = sunColour(elevation);
  if (sine <= 0 || straight === undefined) return null;
  const square = curvedAirSun(day ?? MEAN_DAY, altitude, EXTINCTION_CLEAR);
  const sky = clearSkyIlluminance(altitude);
  const seen = (sky * (1 + sine)) / 2;
  const mixture = mixLights([
    { colour: planckChromaticity(straight), amount: square },
    { colour: planckChromaticity(SKY_COLOUR), amount: seen },
  ]);
  const mixed = mixture === undefined ? undefined : correlatedTemperature(mixture)?.kelvin;
  return {
    square,
    sky,
    level: square * sine + sky,
    total: square + seen,
    straight,
    mixed: mixed ?? straight,
  };
}

/** How warm sun and sky together come out on a face that looks at them at daylight balance, mired; null by night. */
export function sunWarmth(sun: SunPlace): number | null {
  const light = sunLightOf(sun);
  return light === null ? null : miredShift(DAYLIGHT, light.mixed);
}
