import type { Vec3 } from "../../core/vector.js";
import { rotateAbout } from "../../math/rotation.js";
import { add, distance, scale, subtract } from "../../math/vector.js";
import type { LightModel } from "../../model/types.js";
import type { Scene, Source } from "../../scene/types.js";
import type { Spread } from "../../units/quantity.js";
import { atHeight, atPower, moveTo, withSource } from "../change/move-source.js";
import { directionTo } from "../geometry/directions.js";
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
  /** The scene with the input off by that much to one side. */
  readonly moved: Scene;
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
    const moved = withSource(scene, index, changed);
    inputs.push({
      what: `${source.name} ${what}`,
      by: inWords(size, unit),
      size,
      unit,
      moved,
    });
  };
  const zero: Vec3 = source.aim;
  const height = light?.height ?? light?.bottom_edge;
  const rise = spread(height?.plusMinus, height?.value ?? 0, "m", tolerance(recipe, "height"));
  if (light?.elevation === undefined) push("height", rise, "m", atHeight(source, source.centre[2] + rise));
  else {
    const turn = spread(light.elevation.plusMinus, light.elevation.value, "deg", tolerance(recipe, "angle"));
    push("elevation", turn, "deg", lifted(source, zero, turn));
  }
  const tape = light?.distance ?? light?.floor_distance;
  const stretch = spread(tape?.length.plusMinus, tape?.length.value ?? 0, "m", tolerance(recipe, "tape"));
  push("distance", stretch, "m", stretched(source, zero, stretch, light?.elevation === undefined));
  const side = light?.bearing?.angle;
  const turn = spread(side?.plusMinus, side?.value ?? 0, "deg", tolerance(recipe, "angle"));
  push("bearing", turn, "deg", turned(source, zero, turn));
  if (source.energy > 0) push("output", source.uncertainty, "stop", atPower(source, source.uncertainty));
  return inputs;
}

/** A lamp on a tape that is `by` metres longer; level where its height is measured by itself. */
function stretched(source: Source, zero: Vec3, by: number, level: boolean): Source {
  const sight = subtract(source.centre, zero);
  const way = directionTo([0, 0, 0], level ? [sight[0], sight[1], 0] : sight);
  if (way === null) return source;
  if (!level) return moveTo(source, add(source.centre, scale(way, by)));
  // A longer slant at the same height is a longer way along the floor by the slant over the level.
  const flat = Math.sqrt(sight[0] * sight[0] + sight[1] * sight[1]);
  return moveTo(source, add(source.centre, scale(way, (by * distance(source.centre, zero)) / flat)));
}

/** A lamp turned about the vertical through a point by degrees. */
function turned(source: Source, zero: Vec3, degrees: number): Source {
  const angle = (degrees * Math.PI) / 180;
  return moveTo(source, add(zero, rotateAbout(subtract(source.centre, zero), [0, 0, 1], angle)));
}

/** A lamp raised about a point by degrees of elevation, at the same distance. */
function lifted(source: Source, zero: Vec3, degrees: number): Source {
  const sight = subtract(source.centre, zero);
  const flat = Math.sqrt(sight[0] * sight[0] + sight[1] * sight[1]);
  if (flat < 1e-9) return source;
  const axis: Vec3 = [sight[1] / flat, -sight[0] / flat, 0];
  return moveTo(source, add(zero, rotateAbout(sight, axis, (degrees * Math.PI) / 180)));
}

/** Every measured input of the lamps of a plan, each with the scene in which it alone is off. */
export function measuredInputs(plan: Plan): readonly MeasuredInput[] {
  return plan.scene.sources.flatMap((source, index) => {
    const light = plan.recipe.lights.find((row) => row.name === source.name);
    return inputsOfLamp(plan, index, source, light);
  });
}
