import { exp2 } from "../../core/exp2.js";
import type { LightModel } from "../../model/types.js";
import type { PlacementOffset } from "../../scene/lamp/place.js";
import type { Source } from "../../scene/types.js";
import type { Spread } from "../../units/quantity.js";
import { misplaced } from "../change/misplaced.js";
import { withSource } from "../change/move-source.js";
import { type HeldMeters, nearPlan } from "../change/near-plan.js";
import { rebuiltWith } from "../change/rebuild.js";
import type { Plan } from "../plan.js";
import { tolerance } from "../settings.js";
import { surfaceInputs } from "./surface-inputs.js";
import { tapesOf } from "./tapes.js";

/** A measured input of a set-up that may be a little off. */
export interface MeasuredInput {
  /** `key height`, `key output`. */
  readonly what: string;
  /** How far it may be off, in words: `3 cm`, `2 deg`, `0.3 stop`. */
  readonly by: string;
  readonly size: number;
  /** `1` for a reflectance. */
  readonly unit: "m" | "deg" | "stop" | "1";
  /** The plan with the input off by that much to one side. */
  readonly moved: Plan;
  /** The same to the other side. */
  readonly back: Plan;
  /** The plan with the input off by any amount, + as in `moved`. */
  readonly at: (by: number) => Plan;
  /** The same with all light worked out anew. */
  readonly exact: (by: number) => Plan;
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

/** A lamp that gives so many stops more than its setting says; the setting itself stays as it is. */
function giving(source: Source, stops: number): Source {
  return { ...source, energy: source.energy * exp2(stops) };
}

/** The measured inputs of one lamp: where it stands, by its tapes and angles, and what it gives. */
function inputsOfLamp(
  plan: Plan,
  index: number,
  source: Source,
  light: LightModel | undefined,
  held: HeldMeters,
): MeasuredInput[] {
  const { scene, recipe } = plan;
  const inputs: MeasuredInput[] = [];
  const push = (
    what: string,
    size: number,
    unit: "m" | "deg" | "stop",
    changed: (by: number) => Source,
  ): void => {
    if (!(size > 0)) return;
    const exact = (by: number): Plan => withSource(plan, index, changed(by));
    inputs.push(inputOf(plan, held, `${source.name} ${what}`, size, unit, exact));
  };
  const off = (by: PlacementOffset): Source => misplaced(scene, source, light, by);
  const height = light?.height ?? light?.bottom_edge;
  const rise = spread(height?.plusMinus, height?.value ?? 0, "m", tolerance(recipe, "height"));
  if (light?.elevation === undefined) push("height", rise, "m", (height) => off({ height }));
  else {
    const turn = spread(light.elevation.plusMinus, light.elevation.value, "deg", tolerance(recipe, "angle"));
    push("elevation", turn, "deg", (elevation) => off({ elevation }));
  }
  const tape = light?.distance ?? light?.floor_distance;
  const stretch = spread(tape?.length.plusMinus, tape?.length.value ?? 0, "m", tolerance(recipe, "tape"));
  push("distance", stretch, "m", (tape) => off({ tape }));
  const side = light?.bearing?.angle;
  const turn = spread(side?.plusMinus, side?.value ?? 0, "deg", tolerance(recipe, "angle"));
  push("bearing", turn, "deg", (bearing) => off({ bearing }));
  if (source.energy > 0) {
    push("output", source.uncertainty, "stop", (by) => giving(source, by));
    if ((source.below ?? 0) > 0) push("dial", tolerance(recipe, "dial"), "stop", (by) => giving(source, by));
  }
  return inputs;
}

/**
 * Every measured input of a plan, each with the plans in which it alone is off: place, size and output of the lamps,
 * people, camera, pieces of the set and points, and the reflectances of surfaces.
 */
export function measuredInputs(plan: Plan): readonly MeasuredInput[] {
  const held: HeldMeters = [];
  return [...lampInputs(plan, held), ...tapeInputs(plan, held), ...surfaceInputs(plan)];
}

/** The other measured numbers of a recipe: heights of people, the place of the camera, openings, pieces and points. */
function tapeInputs(plan: Plan, held: HeldMeters): readonly MeasuredInput[] {
  return tapesOf(plan.recipe).map(({ what, size, unit, off }) =>
    inputOf(plan, held, what, size, unit, (by) => rebuiltWith(plan, off(by))),
  );
}

/** An input with the plans in which it is off, each with the bounced light of the plan itself. */
function inputOf(
  plan: Plan,
  held: HeldMeters,
  what: string,
  size: number,
  unit: Exclude<MeasuredInput["unit"], "1">,
  exact: (by: number) => Plan,
): MeasuredInput {
  const at = (by: number): Plan => nearPlan(plan, exact(by), held);
  return { what, by: inWords(size, unit), size, unit, moved: at(size), back: at(-size), at, exact };
}

/** The measured inputs of the lamps. */
export function lampInputs(plan: Plan, held: HeldMeters = []): readonly MeasuredInput[] {
  return plan.scene.sources.flatMap((source, index) => {
    if (source.spillOf !== undefined) return [];
    const light = plan.recipe.lights.find((row) => row.name === source.name);
    return inputsOfLamp(plan, index, source, light, held);
  });
}
