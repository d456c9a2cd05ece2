import type { Vec3 } from "../../src/core/vector.js";
import type { Source } from "../../src/scene/types.js";
import { randomDirection } from "./random.js";

/** A point of a lit opening, and the unit vector out of its surface there. */
interface Spot {
  readonly at: Vec3;
  readonly out: Vec3;
}

const from = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const times = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** A point of the emitting surface, every part of its area alike. */
export function spotOf(source: Source, random: () => number): Spot {
  const { shape, centre, axis, across, along } = source;
  switch (shape.kind) {
    case "disc": {
      const r = shape.radius * Math.sqrt(random());
      const turn = 2 * Math.PI * random();
      return { at: from(from(centre, across, r * Math.cos(turn)), along, r * Math.sin(turn)), out: axis };
    }
    case "rectangle": {
      const a = (random() - 0.5) * shape.width;
      const b = (random() - 0.5) * shape.height;
      return { at: from(from(centre, across, a), along, b), out: axis };
    }
    case "sphere": {
      const out = randomDirection(random);
      return { at: from(centre, out, shape.radius), out };
    }
    case "capsule": {
      const { radius } = shape;
      const straight = shape.length - 2 * radius;
      // Side 2 pi r l, ends 4 pi r^2.
      if (random() * (straight + 2 * radius) < straight) {
        const turn = 2 * Math.PI * random();
        const out = from(from([0, 0, 0], across, Math.cos(turn)), axis, Math.sin(turn));
        return { at: from(from(centre, along, (random() - 0.5) * straight), out, radius), out };
      }
      const out = randomDirection(random);
      const end = times(out, along) >= 0 ? straight / 2 : -straight / 2;
      return { at: from(from(centre, along, end), out, radius), out };
    }
    default:
      return shape satisfies never;
  }
}

/** Luminance at an angle off the lamp's axis as a share of that on it, written from the definitions in the guide. */
export function beamShare(source: Source, cosine: number): number {
  const { beam } = source;
  if (beam.kind === "lambertian") return 1;
  if (beam.kind === "cosine-power") return cosine ** (beam.exponent - 1);
  if (beam.kind === "table") throw new Error("a measured beam is not sampled here");
  return Math.max(0, 1 - Math.tan(Math.acos(Math.min(1, cosine))) / Math.tan(beam.cutoff / 2));
}

/** Flux of a unit of luminance on the axis, per area, by the midpoint rule over the half sphere. */
export function beamSpread(source: Source): number {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const theta = ((i + 0.5) / steps) * (Math.PI / 2);
    sum += beamShare(source, Math.cos(theta)) * Math.cos(theta) * Math.sin(theta);
  }
  return (2 * Math.PI * sum * (Math.PI / 2)) / steps;
}

/** A reading by random points of the source, per lumen-second, with its standard error. */
export function sampledReading(
  source: Source,
  at: Vec3,
  facing: Vec3,
  receptor: "disc" | "dome",
  count: number,
  random: () => number,
): { readonly value: number; readonly error: number } {
  const scale = 1 / beamSpread(source);
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    const spot = spotOf(source, random);
    const to: Vec3 = [spot.at[0] - at[0], spot.at[1] - at[1], spot.at[2] - at[2]];
    const d2 = times(to, to);
    const d = Math.sqrt(d2);
    const away = -times(to, spot.out) / d;
    const cosine = times(to, facing) / d;
    const response = receptor === "disc" ? Math.max(0, cosine) : (1 + cosine) / 2;
    const value = away > 0 ? (scale * beamShare(source, away) * away * response) / d2 : 0;
    sum += value;
    squares += value * value;
  }
  const mean = sum / count;
  return { value: mean, error: Math.sqrt(Math.max(0, squares / count - mean * mean) / count) };
}
