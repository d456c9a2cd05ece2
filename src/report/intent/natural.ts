import type { NaturalLightValue } from "../../model/values.js";
import { incidentFNumber } from "../../physics/exposure.js";
import { overcastOnPlane } from "../../physics/overcast-sky.js";
import { clearSkyIlluminance } from "../../physics/sky-illuminance.js";
import { sunColour } from "../../physics/sun-colour.js";
import { directHorizontalSun, directNormalSun, EXTINCTION_CLEAR } from "../../physics/sun-illuminance.js";
import type { Scene } from "../../scene/types.js";
import type { Plan } from "../plan.js";
import { sayFNumber } from "../say/quantity.js";
import type { ReportNatural } from "../schema/intent.js";
import { type SunPlace, sunPlace } from "./sun-place.js";
import { windowFallOff, windowSize } from "./window-light.js";

/** A day on which the sun has its mean brightness, by the formula that is used: its cosine is 0. */
export const MEAN_DAY = 2 + 365 / 4;

/** Reflectance of the ground under an overcast sky: grass, soil, paving (common practice, no source). */
export const GROUND = 0.2;

/** How far behind a subject the loss of light is looked at, m. */
export const BEHIND = 1;

const empty = {
  elevation: null,
  azimuth: null,
  angular_size: null,
  shadow_depth: null,
  colour: null,
  illuminance: null,
  f_number: null,
  shown: null,
  fall_off: null,
  planes: [],
} as const;

/** The natural light that the recipe wishes to pass for, in numbers; null without such a wish. */
export function naturalLight({ recipe, scene }: Plan): ReportNatural | null {
  const wish = recipe.intent?.pass_for;
  if (wish === undefined) return null;
  const sun = sunPlace(wish);
  if (sun !== null) return sunlight(scene, wish, sun);
  return wish.kind === "window" ? windowLight(wish) : overcastSky(wish);
}

function sunlight(scene: Scene, { written }: NaturalLightValue, sun: SunPlace): ReportNatural {
  const altitude = (sun.elevation * Math.PI) / 180;
  const day = sun.day ?? MEAN_DAY;
  const level = directHorizontalSun(day, altitude, EXTINCTION_CLEAR);
  const sky = clearSkyIlluminance(altitude);
  const square = directNormalSun(day, altitude, EXTINCTION_CLEAR);
  // An even sky: a plane turned to the sun sees (1 + sin a) / 2 of it.
  const total = square + (sky * (1 + Math.sin(altitude))) / 2;
  const up = square > 0;
  const fNumber = up ? readAt(scene, total) : null;
  return {
    ...empty,
    planes: [],
    kind: "sunlight",
    text: written,
    elevation: sun.elevation,
    azimuth: sun.azimuth,
    angular_size: sun.size,
    shadow_depth: up ? Math.log2((level + sky) / sky) : null,
    colour: sunColour(sun.elevation) ?? null,
    illuminance: up ? total : null,
    f_number: fNumber,
    shown: fNumber === null ? null : sayFNumber(fNumber),
    basis: [
      sun.azimuth === null
        ? "The elevation is the recipe's; brightness at the sun's mean distance."
        : "Place of the sun by a planetary theory, lifted by the refraction of a standard atmosphere.",
      "Light of sun and clear sky by IES RP-21 (the sky's formula from memory): averages of one climate, good to about half a stop above 5 deg, and up to a stop too dark below.",
      "Colour of the sun by elevation: common practice, no source, good to about 25 mired above 20 deg and 100 at the horizon.",
    ],
  };
}

/** The f-number that a disc reads in steady light at the camera's shutter and ISO; null where one is not known. */
function readAt({ camera, meter }: Scene, illuminance: number): number | null {
  if (camera === null || camera.shutter === null || camera.iso === null) return null;
  return incidentFNumber(illuminance, camera.iso, camera.shutter, meter.flat);
}

function overcastSky({ written }: NaturalLightValue): ReportNatural {
  const upright = Math.log2(overcastOnPlane(Math.PI / 2, GROUND));
  return {
    ...empty,
    kind: "overcast",
    text: written,
    angular_size: 180,
    planes: [
      { plane: "top", stops: 0 },
      { plane: "front", stops: upright },
      { plane: "side", stops: upright },
    ],
    basis: [
      "CIE standard overcast sky, three times as bright overhead as at the horizon (ISO 15469, from memory), over ground of 20 %.",
      "How bright the day is depends on sun and cloud, so no f-number is given.",
    ],
  };
}

function windowLight(wish: Extract<NaturalLightValue, { kind: "window" }>): ReportNatural {
  return {
    ...empty,
    planes: [],
    kind: "window",
    text: wish.written,
    angular_size: windowSize(wish),
    fall_off: windowFallOff(wish, BEHIND),
    basis: [
      "A rectangle of the same brightness all over, straight opposite the face.",
      "How bright the sky before it is is not known, so no f-number is given.",
    ],
  };
}
