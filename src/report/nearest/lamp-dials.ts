import { belowFull } from "../../model/make/lamps.js";
import { left, right, tape, writeName } from "../../model/make/points.js";
import type { LightModel } from "../../model/types.js";
import type { ClaimModel } from "../../model/values.js";
import type { PlacementOffset } from "../../scene/lamp/place.js";
import type { Source } from "../../scene/types.js";
import { deg, m, plusMinus, stops } from "../../units/make.js";
import type { Stops } from "../../units/quantity.js";
import { hasSpread } from "../../units/spread.js";
import { misplaced } from "../change/misplaced.js";
import { atPower, withSource } from "../change/move-source.js";
import { rebuiltWith, withLight } from "../change/rebuild.js";
import { dialSpread } from "../evaluate/inputs.js";
import type { Plan } from "../plan.js";
import { settingWords } from "../rules/power-words.js";
import { fixed } from "../say/number.js";
import { asMeasured, byDifference, byRatio, type Dial, nearSteps } from "./dial.js";

/** Stops below full that are taken as the end of a dial whose lowest setting is not known (common practice, no source). */
const LOWEST = 8;

/** What counts as an ordinary change (common practice, no source): 1 stop, a fifth of a distance, 30 cm, 10 deg. */
const ordinary = { power: 1, distance: Math.log2(1.2), height: 0.3, angle: 10 } as const;

/** What may be changed of the lamps of a set-up: power, and the readings by which each is placed. */
export function lampDials(plan: Plan, claims: readonly ClaimModel[]): readonly Dial[] {
  return plan.scene.sources.flatMap((source, index): Dial[] => {
    const light = plan.recipe.lights.find((row) => row.name === source.name);
    if (source.spillOf !== undefined || light === undefined || !(source.energy > 0)) return [];
    return [
      ...powerDial(plan, claims, index, source, light),
      ...placeDials(plan, claims, index, source, light),
    ];
  });
}

function powerDial(
  plan: Plan,
  claims: readonly ClaimModel[],
  index: number,
  source: Source,
  light: LightModel,
): Dial[] {
  const { below } = source;
  if (below === null) return [];
  const setting = (value: number): Stops =>
    hasSpread(light.power) ? plusMinus(stops(value), stops(dialSpread(plan.recipe, light))) : stops(value);
  return [
    {
      path: `${writeName(source.name)}.power`,
      now: below,
      low: 0,
      high: source.lowest ?? Math.max(LOWEST, below),
      unit: "stop",
      ...byDifference(ordinary.power),
      near: nearSteps(0.1, 0.01),
      turned: (value) => ({ plan: withSource(plan, index, atPower(source, below - value)), claims }),
      rebuilt: (value) => ({
        plan: rebuiltWith(
          plan,
          withLight(plan.recipe, source.name, (row) => ({ ...row, power: belowFull(setting(value)) })),
        ),
        claims,
      }),
      say: (value) =>
        Math.abs(value * 10 - Math.round(value * 10)) < 1e-6
          ? settingWords(value)
          : `${fixed(value, 2)} stop below full`,
    },
  ];
}

/** The readings by which a lamp is placed; none for one placed by coordinates. */
function placeDials(
  plan: Plan,
  claims: readonly ClaimModel[],
  index: number,
  source: Source,
  light: LightModel,
): Dial[] {
  const name = writeName(source.name);
  const dials: Dial[] = [];
  const add = (
    property: string,
    dial: Pick<Dial, "now" | "low" | "high" | "unit" | "place" | "valueAt" | "near" | "say">,
    off: (by: number) => PlacementOffset,
    change: (value: number) => Partial<LightModel>,
  ): void => {
    dials.push({
      ...dial,
      path: `${name}.${property}`,
      turned: (value) => ({
        plan: withSource(plan, index, misplaced(plan.scene, source, light, off(value - dial.now))),
        claims,
      }),
      rebuilt: (value) => ({
        plan: rebuiltWith(
          plan,
          withLight(plan.recipe, source.name, (row) => ({ ...row, ...change(value) }) as LightModel),
        ),
        claims,
      }),
    });
  };
  const metres = { unit: "m", near: nearSteps(0.01, 0.001), say: sayMetres } as const;
  const degrees = { unit: "deg", near: nearSteps(1, 0.1), say: sayDegrees } as const;
  for (const property of ["distance", "floor_distance"] as const) {
    const given = light[property];
    if (given === undefined) continue;
    const { value } = given.length;
    const range = { now: value, low: 0.3, high: 12 };
    add(
      property,
      { ...range, ...metres, ...byRatio(ordinary.distance) },
      (by) => ({ tape: by }),
      (to) => ({ [property]: tape(asMeasured(m(to), given.length), given.from) }),
    );
  }
  for (const property of ["height", "bottom_edge"] as const) {
    const given = light[property];
    if (given === undefined) continue;
    const range = { now: given.value, low: property === "height" ? 0.2 : 0, high: 6 };
    add(
      property,
      { ...range, ...metres, ...byDifference(ordinary.height) },
      (by) => ({ height: by }),
      (to) => ({ [property]: asMeasured(m(to), given) }),
    );
  }
  const { elevation } = light;
  if (elevation !== undefined) {
    const range = { now: elevation.value, low: -30, high: 85 };
    add(
      "elevation",
      { ...range, ...degrees, ...byDifference(ordinary.angle) },
      (by) => ({ elevation: by }),
      (to) => ({ elevation: asMeasured(deg(to), elevation) }),
    );
  }
  if (light.bearing !== undefined && light.position === undefined) {
    const { side, angle } = light.bearing;
    const range = { now: angle.value, low: 0, high: 180 };
    add(
      "bearing",
      {
        ...range,
        ...degrees,
        ...byDifference(ordinary.angle),
        say: (to) => `${side}(${sayDegrees(to)})`,
      },
      (by) => ({ bearing: by }),
      (to) => ({ bearing: (side === "left" ? left : right)(asMeasured(deg(to), angle)) }),
    );
  }
  return dials;
}

/** Metres to the centimetre, or finer where the value is. */
function sayMetres(value: number): string {
  const whole = Math.abs(value * 100 - Math.round(value * 100)) < 1e-6;
  return `${fixed(value, whole ? 2 : 3)} m`;
}

function sayDegrees(value: number): string {
  return `${fixed(value, Math.abs(value - Math.round(value)) < 1e-6 ? 0 : 1)} deg`;
}
