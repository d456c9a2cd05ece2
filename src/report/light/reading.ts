import type { Vec3 } from "../../core/vector.js";
import { flashFNumber } from "../../physics/exposure.js";
import { exposureValueOfIlluminance } from "../../physics/exposure-value.js";
import { stopsBetween } from "../../physics/stops.js";
import type { Scene, Source } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import { closeFocus } from "./close-focus.js";

/** Where a meter is held, where it looks, and what receives the light. */
export interface Held {
  readonly at: Vec3;
  /** Unit vector. */
  readonly facing: Vec3;
  readonly receptor: "disc" | "dome";
}

/** Luminous exposure of one lamp at a meter. */
export interface Share {
  readonly name: string;
  /** lx s */
  readonly direct: number;
}

/** What a meter gets. Direct light only. */
export interface Reading {
  /** lx s, the lights together. */
  readonly exposure: number;
  /** The meter's constant C for its receptor. */
  readonly constant: number;
  readonly shares: readonly Share[];
}

/** The meter's constant for a receptor. */
export function constantOf(scene: Scene, receptor: "disc" | "dome"): number {
  return receptor === "disc" ? scene.meter.flat : scene.meter.dome;
}

/** Sum in an order that does not depend on the order of the lights: the least first. */
export function sumOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b).reduce((total, value) => total + value, 0);
}

/** What one lamp gives a meter, in lx s. */
export function exposureFrom(source: Source, held: Held): number {
  return source.energy > 0
    ? source.energy * directPerLumenSecond(source, held.at, held.facing, held.receptor)
    : 0;
}

/** The reading of a meter from all lights, or only from those that are named. */
export function readingAt(scene: Scene, held: Held, lights: readonly string[] = []): Reading {
  const shares = scene.sources
    .filter((source) => lights.length === 0 || lights.includes(source.name))
    .map((source) => ({
      name: source.name,
      direct: exposureFrom(source, held),
    }));
  return {
    exposure: sumOf(shares.map((share) => share.direct)),
    constant: constantOf(scene, held.receptor),
    shares,
  };
}

/** A luminous exposure as f-number at the camera's ISO; null without light or without an ISO value. */
export function fNumberOf(scene: Scene, exposure: number, constant: number): number | null {
  const iso = scene.camera?.iso ?? null;
  if (iso === null || !(exposure > 0)) return null;
  return flashFNumber(exposure, iso, constant);
}

/**
 * Stops of a reading over (+) or under (-) the set aperture, what the lens loses by focusing near taken off; null
 * without light, aperture or ISO value.
 */
export function stopsFromAperture(scene: Scene, exposure: number, constant: number): number | null {
  const aperture = scene.camera?.aperture ?? null;
  const fNumber = fNumberOf(scene, exposure, constant);
  if (aperture === null || fNumber === null) return null;
  return 2 * Math.log2(fNumber / aperture) - (closeFocus(scene)?.loss ?? 0);
}

/** Exposure value at ISO 100 of a luminous exposure spread over the shutter time; null without light or shutter. */
export function ev100Of(scene: Scene, exposure: number, constant: number): number | null {
  const shutter = scene.camera?.shutter ?? null;
  if (shutter === null || !(exposure > 0)) return null;
  return exposureValueOfIlluminance(exposure / shutter, constant);
}

/** Stops by which meter readings differ, + where the first is brighter; null where one has no light. */
export function stopsOver(a: Reading, b: Reading): number | null {
  return stopsBetween(a.exposure / a.constant, b.exposure / b.constant) ?? null;
}
