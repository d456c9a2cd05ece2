import { discTowards } from "../../scene/held-meter.js";
import type { Station } from "../../scene/types.js";
import { evaluate } from "../evaluate/expression.js";
import { backgroundPoints } from "../geometry/background-points.js";
import { backgroundStation } from "../light/background.js";
import { type Extreme, extremesAmong } from "../light/extremes.js";
import { readingAt, stopsOver } from "../light/reading.js";
import type { Plan } from "../plan.js";
import { faceWords, firstFace, lightsOn } from "../plan.js";
import { fixed } from "../say/number.js";
import { keyLight } from "./key-light.js";

/** The brightest and the darkest place of the background in the picture, in stops over what it is held against. */
export interface BackgroundSpread {
  readonly station: Station;
  readonly bright: { readonly stops: number; readonly where: string };
  readonly dark: { readonly stops: number; readonly where: string };
}

/** Whether the recipe means the background to be looked at: it wishes for one, or has a light for it. */
export function minded({ recipe, scene }: Plan): boolean {
  return (
    recipe.intent?.background !== undefined || lightsOn(scene).some((source) => source.role === "background")
  );
}

/** What a wished background is held against, in words. */
export function againstWords({ recipe, scene }: Plan): string {
  const of = recipe.intent?.background?.of;
  if (of?.kind !== "reading") return "the wished level";
  return of.station === "face" ? faceWords(scene) : of.station;
}

/**
 * The spread over the background in the picture; null where there is none or it gets no light.
 *
 * @param most - Stops of spread that are of no interest: null as well where it is surely no greater.
 */
export function backgroundSpread(plan: Plan, most = 0): BackgroundSpread | null {
  const { scene, recipe } = plan;
  const station = minded(plan) ? backgroundStation(scene) : null;
  if (station === null) return null;
  const wish = recipe.intent?.background;
  const key = keyLight(plan);
  const face = firstFace(scene);
  const towardsCamera =
    face === null ? null : discTowards(scene.stations, face, scene.camera?.at ?? [0, -3, 1.5]);
  const against =
    wish !== undefined
      ? evaluate({ plan, alarms: null }, wish.of).reading
      : key !== null
        ? readingAt(plan, key.station)
        : towardsCamera === null
          ? null
          : readingAt(plan, towardsCamera);
  if (against === null) return null;
  const places = backgroundPoints(scene, station);
  const found = extremesAmong(
    plan,
    places.map(({ meter }) => meter),
    most,
  );
  if (found === null) return null;
  const level = ({ index, reading }: Extreme): BackgroundSpread["bright"] | null => {
    const stops = stopsOver(reading, against);
    return stops === null ? null : { stops, where: places[index]?.where ?? "" };
  };
  const [bright, dark] = [level(found.bright), level(found.dark)];
  return bright === null || dark === null ? null : { station, bright, dark };
}

/** `it then lies between 0.1 and 0.4 stop over`, `... between 1.2 stop under and 0.4 stop over`. */
export function spreadWords(plan: Plan): string {
  const spread = backgroundSpread(plan);
  if (spread === null) return "it then gets no light";
  const [dark, bright] = [Number(fixed(spread.dark.stops, 1)), Number(fixed(spread.bright.stops, 1))];
  const [least, most] = [fixed(Math.abs(dark), 1), fixed(Math.abs(bright), 1)];
  if (dark >= 0) return `it then lies between ${least} and ${most} stop over`;
  return bright < 0
    ? `it then lies between ${least} and ${most} stop under`
    : `it then lies between ${least} stop under and ${most} stop over`;
}
