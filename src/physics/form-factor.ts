import type { Vec3 } from "../core/vector.js";
import { areaVector, clipByPlane, cornerMean } from "../math/polygon.js";
import { distance, dot, length, scale } from "../math/vector.js";
import { edgeIntegral } from "./edge-integral.js";
import { formFactorByPoints } from "./form-factor-points.js";

/** Centre distance over the sum of the half sizes beyond which few points give full accuracy, and how many do. */
const POINTS_BY_DISTANCE = [
  { beyond: 8, points: 4 },
  { beyond: 4, points: 6 },
  { beyond: 2, points: 10 },
] as const;

/**
 * Form factor (view factor) of two flat convex polygons with nothing between them: the share of the light leaving the
 * front of `from` that reaches the front of `to`. The front is the side on which the corners run counter-clockwise.
 * Each polygon is first cut by the other's plane, because only what lies in front of it takes part.
 *
 * Near polygons by the contour integral (Sparrow, J. Heat Transfer 85 (1963) 81), far ones, where that would lose
 * digits, by Lambert's formula averaged over Gauss points. The error is below 1e-10, also for pairs that share
 * an edge or a corner, or that nearly do (measured down to a gap of 1e-5 of their size).
 *
 * @param from - Corners of the polygon that sends, in metres (or any one unit).
 * @param to - Corners of the polygon that receives.
 * @returns 0 to 1; 0 when either has no area or they don't face each other.
 */
export function formFactor(from: readonly Vec3[], to: readonly Vec3[]): number {
  const facing = cutToFace(from, to);
  if (facing === undefined) return 0;
  const whole = length(areaVector(from));
  const apart = distance(facing.fromCentre, facing.toCentre);
  const size = radius(facing.from, facing.fromCentre) + radius(facing.to, facing.toCentre);
  for (const { beyond, points } of POINTS_BY_DISTANCE) {
    if (apart > beyond * size) {
      const share = length(areaVector(facing.from)) / whole;
      return share * formFactorByPoints(facing.from, facing.to, points);
    }
  }
  return Math.max(0, contourIntegral(facing.from, facing.to, Math.max(apart, size))) / whole;
}

/**
 * Form factor by the contour integral alone, at any distance. Loses digits with the square of the distance over the
 * size; `formFactor` chooses for itself.
 *
 * @param from - Corners of the convex polygon that sends.
 * @param to - Corners of the convex polygon that receives.
 * @returns 0 to 1.
 */
export function formFactorByContour(from: readonly Vec3[], to: readonly Vec3[]): number {
  const facing = cutToFace(from, to);
  if (facing === undefined) return 0;
  const apart = distance(facing.fromCentre, facing.toCentre);
  const size = radius(facing.from, facing.fromCentre) + radius(facing.to, facing.toCentre);
  const sum = contourIntegral(facing.from, facing.to, Math.max(apart, size));
  return Math.max(0, sum) / length(areaVector(from));
}

interface FacingPair {
  readonly from: readonly Vec3[];
  readonly to: readonly Vec3[];
  readonly fromCentre: Vec3;
  readonly toCentre: Vec3;
}

/** The parts of two polygons that lie in front of each other, or undefined when nothing is left of one. */
function cutToFace(from: readonly Vec3[], to: readonly Vec3[]): FacingPair | undefined {
  const fromPlane = frontPlane(from);
  const toPlane = frontPlane(to);
  if (fromPlane === undefined || toPlane === undefined) return undefined;
  const fromPart = clipByPlane(from, toPlane.normal, toPlane.offset);
  const toPart = clipByPlane(to, fromPlane.normal, fromPlane.offset);
  const fromCentre = cornerMean(fromPart);
  const toCentre = cornerMean(toPart);
  if (fromCentre === undefined || toCentre === undefined) return undefined;
  return { from: fromPart, to: toPart, fromCentre, toCentre };
}

function frontPlane(
  corners: readonly Vec3[],
): { readonly normal: Vec3; readonly offset: number } | undefined {
  const area = areaVector(corners);
  const size = length(area);
  const centre = cornerMean(corners);
  if (!(size > 0) || centre === undefined) return undefined;
  const normal = scale(area, 1 / size);
  return { normal, offset: dot(normal, centre) };
}

function radius(corners: readonly Vec3[], centre: Vec3): number {
  let greatest = 0;
  for (const corner of corners) greatest = Math.max(greatest, distance(corner, centre));
  return greatest;
}

/** Area of `from` times its form factor, in the square of the corners' unit. */
function contourIntegral(from: readonly Vec3[], to: readonly Vec3[], unit: number): number {
  const ones = from.map((corner) => scale(corner, 1 / unit));
  const others = to.map((corner) => scale(corner, 1 / unit));
  let sum = 0;
  for (let i = 0; i < ones.length; i += 1) {
    for (let j = 0; j < others.length; j += 1) {
      sum += edgeIntegral(
        ones[i]!,
        ones[(i + 1) % ones.length]!,
        others[j]!,
        others[(j + 1) % others.length]!,
      );
    }
  }
  return (sum * unit * unit) / (2 * Math.PI);
}
