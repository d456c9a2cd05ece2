import { flashFNumber } from "../../physics/exposure.js";
import { exposureValueOfIlluminance } from "../../physics/exposure-value.js";
import { stopsBetween } from "../../physics/stops.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { type Lit, lightsOf } from "../plan.js";
import { closeFocus } from "./close-focus.js";

/** Luminous exposure of one light at a meter, lx s; a cloth and the head behind it are one light. */
export interface Share {
  readonly name: string;
  /** Straight from the light, past what hides part of it. */
  readonly direct: number;
  /** By way of surfaces. */
  readonly bounced: number;
  /** How far `bounced` may be off. */
  readonly error: number;
}

/** What a meter gets, lx s. */
export interface Reading {
  /** The lights together, direct and bounced. */
  readonly exposure: number;
  /** How far `exposure` may be off: the errors of the shares, at worst. */
  readonly error: number;
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
  let total = 0;
  for (const value of [...values].sort(ascending)) total += value;
  return total;
}

const ascending = (a: number, b: number): number => a - b;

/**
 * What one light gives a meter at its present setting; nothing for a light that is not there.
 *
 * @param ask - `glance` for bounced light by fewer paths, with the greater error that it states.
 */
export function shareOf(
  { scene, light }: Lit,
  name: string,
  meter: Meter,
  ask: "reach" | "glance" = "reach",
): Share {
  const directs: number[] = [];
  const bounces: number[] = [];
  const errors: number[] = [];
  for (const source of scene.sources) {
    const { energy } = source;
    if (lampName(source) !== name || !(energy > 0)) continue;
    const { direct, bounced, error } = light[ask](source, meter);
    directs.push(energy * direct);
    bounces.push(energy * bounced);
    errors.push(energy * error);
  }
  return { name, direct: sumOf(directs), bounced: sumOf(bounces), error: sumOf(errors) };
}

/** What comes straight from one light to a meter at its present setting, lx s. */
export function directFrom({ scene, light }: Lit, name: string, meter: Meter): number {
  const directs: number[] = [];
  for (const source of scene.sources)
    if (lampName(source) === name && source.energy > 0)
      directs.push(source.energy * light.direct(source, meter));
  return sumOf(directs);
}

/** Less than this, lx s, is no light but what is left of rounding: f/0.00005 at ISO 100. */
const LEAST = 1e-9;

/** The reading of a meter from all lights, or only from those that are named: direct and bounced light. */
export function readingAt(lit: Lit, meter: Meter, lights: readonly string[] = []): Reading {
  const shares: Share[] = [];
  for (const { name } of lightsOf(lit.scene))
    if (lights.length === 0 || lights.includes(name)) shares.push(shareOf(lit, name, meter));
  return readingOf(lit.scene, meter, shares);
}

/** The reading that shares make together. */
export function readingOf(scene: Scene, meter: Meter, shares: readonly Share[]): Reading {
  const exposure = sumOf(shares.map((share) => share.direct + share.bounced));
  return {
    exposure: exposure < LEAST ? 0 : exposure,
    error: sumOf(shares.map((share) => share.error)),
    constant: constantOf(scene, meter.receptor),
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

/** How far a reading may be off, stops; 0 without light. */
export function errorOf({ exposure, error }: Reading): number {
  return exposure > 0 ? Math.log2(1 + error / exposure) : 0;
}

/** Stops by which meter readings differ, + where the first is brighter; null where one has no light. */
export function stopsOver(a: Reading, b: Reading): number | null {
  return stopsBetween(a.exposure / a.constant, b.exposure / b.constant) ?? null;
}
