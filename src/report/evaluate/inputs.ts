import type { LightModel } from "../../model/types.js";
import type { PlacementOffset } from "../../scene/lamp/place.js";
import type { Source } from "../../scene/types.js";
import type { Spread } from "../../units/quantity.js";
import { misplaced } from "../change/misplaced.js";
import { atPower, withSource } from "../change/move-source.js";
import type { Plan } from "../plan.js";
import { tolerance } from "../settings.js";

/** A measured input of a set-up that may be a little off. */
export interface MeasuredInput {
  /** `key height`, `key output`. */
  readonly what: string;
  /** How far it may be off, in words: `3 cm`, `2 deg`, `0.3 stop`. */
  readonly by: string;
  readonly size: number;
  readonly unit: "m" | "deg" | "stop";
  /** The plan with the input off by that much to one side. */
  readonly moved: Plan;
}

function spread(given: Spread | undefined, whole: number, unit: "m" | "deg", standard: number): number {
  if (given === undefined) return standard;
  if (given.unit === "%") return given.value * Math.abs(whole);
  return given.unit === unit ? given.value : standard;
}

function inWords(size: number, unit: "m" | "deg" | "stop"): string {
  const amount = unit === "m" ? size * 100 : size;
  return `${Number(amount.toPrecision(2))} ${unit === "m" ? "cm" : unit}`;
}

/** The measured inputs of one lamp: where it stands, by its tapes and angles, and what it gives. */
function inputsOfLamp(
  plan: Plan,
  index: number,
  source: Source,
  light: LightModel | undefined,
): MeasuredInput[] {
  const { scene, recipe } = plan;
  const inputs: MeasuredInput[] = [];
  const push = (what: string, size: number, unit: MeasuredInput["unit"], changed: Source): void => {
    if (!(size > 0)) return;
    const moved = withSource(plan, index, changed);
    inputs.push({
      what: `${source.name} ${what}`,
      by: inWords(size, unit),
      size,
      unit,
      moved,
    });
  };
  const off = (by: PlacementOffset): Source => misplaced(scene, source, light, by);
  const height = light?.height ?? light?.bottom_edge;
  const rise = spread(height?.plusMinus, height?.value ?? 0, "m", tolerance(recipe, "height"));
  if (light?.elevation === undefined) push("height", rise, "m", off({ height: rise }));
  else {
    const turn = spread(light.elevation.plusMinus, light.elevation.value, "deg", tolerance(recipe, "angle"));
    push("elevation", turn, "deg", off({ elevation: turn }));
  }
  const tape = light?.distance ?? light?.floor_distance;
  const stretch = spread(tape?.length.plusMinus, tape?.length.value ?? 0, "m", tolerance(recipe, "tape"));
  push("distance", stretch, "m", off({ tape: stretch }));
  const side = light?.bearing?.angle;
  const turn = spread(side?.plusMinus, side?.value ?? 0, "deg", tolerance(recipe, "angle"));
  push("bearing", turn, "deg", off({ bearing: turn }));
  if (source.energy > 0) push("output", source.uncertainty, "stop", atPower(source, source.uncertainty));
  return inputs;
}

/** Every measured input of the lamps of a plan, each with the plan in which it alone is off. */
export function measuredInputs(plan: Plan): readonly MeasuredInput[] {
  return plan.scene.sources.flatMap((source, index) => {
    if (source.spillOf !== undefined) return [];
    const light = plan.recipe.lights.find((row) => row.name === source.name);
    return inputsOfLamp(plan, index, source, light);
  });
}
