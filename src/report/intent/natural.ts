import type { NaturalLightValue, OvercastValue } from "../../model/values.js";
import { incidentFNumber } from "../../physics/exposure.js";
import { overcastOnPlane } from "../../physics/overcast-sky.js";
import { overcastThroughWindow } from "../../physics/overcast-window.js";
import { overcastSkyIlluminance } from "../../physics/sky-illuminance.js";
import { elementToCentredRectangle } from "../../physics/view-factor-element.js";
import type { Scene } from "../../scene/types.js";
import type { Plan } from "../plan.js";
import { sayFNumber } from "../say/quantity.js";
import type { ReportNatural } from "../schema/intent.js";
import { SKY_COLOUR, sunLightOf } from "./sun-light.js";
import { type SunPlace, sunPlace } from "./sun-place.js";
import { windowFallOff, windowSize } from "./window-light.js";

/** Reflectance of the ground under an overcast sky: grass, soil, paving (common practice, no source). */
export const GROUND = 0.2;

/** What clean double glazing lets through (common practice, no source). */
export const GLASS = 0.8;

/** How far behind a subject the loss of light is looked at, m. */
export const BEHIND = 1;

const empty = {
  elevation: null,
  azimuth: null,
  angular_size: null,
  shadow_depth: null,
  colour: null,
  mixed_colour: null,
  level_illuminance: null,
  illuminance: null,
  output: null,
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
  if (sun !== null) return sunLight(scene, wish, sun);
  if (wish.kind === "window") return windowLight(scene, wish);
  return wish.kind === "overcast" ? overcastLight(scene, wish) : null;
}

function sunLight(scene: Scene, { written }: NaturalLightValue, sun: SunPlace): ReportNatural {
  const light = sunLightOf(sun);
  return {
    ...empty,
    planes: [],
    kind: "sunlight",
    text: written,
    elevation: sun.elevation,
    azimuth: sun.azimuth,
    angular_size: sun.size,
    shadow_depth: light === null ? null : Math.log2(light.level / light.sky),
    colour: light?.straight ?? null,
    mixed_colour: light?.mixed ?? null,
    level_illuminance: light?.level ?? null,
    ...readAt(scene, light?.total ?? null),
    basis: [
      sun.azimuth === null
        ? "The elevation is the recipe's; brightness at the sun's mean distance."
        : "Place of the sun by a planetary theory, lifted by the refraction of a standard atmosphere.",
      "Light of sun and clear sky by IES RP-21 (the sky's formula from memory), through the air mass of Kasten and Young: averages of one climate, good to about half a stop; below 5 deg the haze of the day decides, by a stop and more.",
      `Colour of the sun by elevation: common practice, no source, good to about 25 mired above 20 deg and 100 at the horizon; a clear sky is taken as ${SKY_COLOUR} K. Warmth is judged by the two together.`,
    ],
  };
}

/** Light on a plane with the f-number that a disc reads there at the camera's shutter and ISO, where they are known. */
function readAt(
  { camera, meter }: Scene,
  illuminance: number | null,
): Pick<ReportNatural, "illuminance" | "f_number" | "shown"> {
  if (illuminance === null || camera === null || camera.shutter === null || camera.iso === null)
    return { illuminance, f_number: null, shown: null };
  const f_number = incidentFNumber(illuminance, camera.iso, camera.shutter, meter.flat);
  return { illuminance, f_number, shown: sayFNumber(f_number) };
}

/** How bright an overcast sky is: what open level ground gets, lx; null where that is not known, or by night. */
interface SkyBrightness {
  readonly level: number | null;
  readonly elevation: number | null;
  readonly azimuth: number | null;
  readonly basis: string;
}

function brightnessOf(sky: OvercastValue | undefined): SkyBrightness {
  const unknown = { level: null, elevation: null, azimuth: null } as const;
  if (sky === undefined)
    return {
      ...unknown,
      basis:
        "How bright the sky before it is is not known, so no f-number is given; `sky: overcast(elevation: 30 deg)` in its brackets says it.",
    };
  if (sky.metered !== undefined)
    return { ...unknown, level: sky.metered.value, basis: "How bright the day is was metered." };
  const sun = sky.sun === undefined ? null : sunPlace(sky.sun);
  if (sun === null) {
    const way = "`overcast(elevation: 30 deg)` or `overcast(metered: 9000 lx)`";
    return {
      ...unknown,
      basis: `How bright the day is depends on sun and cloud, so no f-number is given; ${way} says it.`,
    };
  }
  const { elevation, azimuth } = sun;
  const level = overcastSkyIlluminance((elevation * Math.PI) / 180);
  return {
    level: level > 0 ? level : null,
    elevation,
    azimuth,
    basis:
      level > 0
        ? "How bright the day is by the sun's elevation behind the clouds: IES RP-21 (from memory), a mean of many skies; a single one gives half of it or twice, a stop either way."
        : "The sun is below the horizon, and what light is left then is not worked out.",
  };
}

function overcastLight(scene: Scene, sky: OvercastValue): ReportNatural {
  const upright = overcastOnPlane(Math.PI / 2, GROUND);
  const { level, elevation, azimuth, basis } = brightnessOf(sky);
  const stops = Math.log2(upright);
  return {
    ...empty,
    kind: "overcast",
    text: sky.written,
    elevation,
    azimuth,
    angular_size: 180,
    planes: [
      { plane: "top", stops: 0 },
      { plane: "front", stops },
      { plane: "side", stops },
    ],
    level_illuminance: level,
    ...readAt(scene, level === null ? null : level * upright),
    basis: [
      "CIE standard overcast sky, three times as bright overhead as at the horizon (ISO 15469, from memory), over ground of 20 %.",
      basis,
    ],
  };
}

function windowLight(scene: Scene, wish: Extract<NaturalLightValue, { kind: "window" }>): ReportNatural {
  const { level, elevation, azimuth, basis } = brightnessOf(wish.sky);
  const [width, height, distance] = [wish.size.width.value, wish.size.height.value, wish.distance.value];
  const share = GLASS * overcastThroughWindow({ width, height, distance, ground: GROUND });
  const each = share / elementToCentredRectangle(width, height, distance);
  const size = "A rectangle of the same brightness all over, straight opposite the face.";
  const light =
    "The light at the face: sky above its height as the CIE standard overcast sky has it (ISO 15469, from memory), ground of 20 % below, nothing that stands before the window, double glazing that lets 80 % through, and nothing that the room throws back.";
  return {
    ...empty,
    planes: [],
    kind: "window",
    text: wish.written,
    elevation,
    azimuth,
    angular_size: windowSize(wish),
    fall_off: windowFallOff(wish, BEHIND),
    level_illuminance: level,
    output: level === null ? null : level * each * width * height,
    ...readAt(scene, level === null ? null : level * share),
    basis: level === null ? [size, basis] : [size, light, basis],
  };
}
