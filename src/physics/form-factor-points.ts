import type { Vec3 } from "../core/vector.js";
import { lambertVector } from "../math/lambert-polygon.js";
import { areaVector } from "../math/polygon.js";
import { gaussLegendre, type QuadratureRule } from "../math/quadrature.js";
import { cross, dot, length, scale, subtract } from "../math/vector.js";

/**
 * Form factor of two flat convex polygons that lie wholly in front of each other, as the mean over the first of
 * Lambert's exact point-to-polygon factor, taken at Gauss points.
 *
 * @param from - Corners of the polygon that sends, counter-clockwise seen from its front.
 * @param to - Corners of the polygon that receives, counter-clockwise seen from its front.
 * @param points - Gauss points along each side, 1 to 128; about 6 are enough for four digits at a distance of the size.
 * @returns 0 to 1; 0 when `from` has no area.
 */
export function formFactorByPoints(from: readonly Vec3[], to: readonly Vec3[], points: number): number {
  const area = areaVector(from);
  const size = length(area);
  if (!(size > 0)) return 0;
  const normal = scale(area, 1 / size);
  const rule = gaussLegendre(points);
  let sum = 0;
  for (const piece of fourCornered(from)) sum += pieceSum(piece, normal, to, rule);
  return Math.max(0, sum) / (Math.PI * size);
}

type Piece = readonly [Vec3, Vec3, Vec3, Vec3];

/** A convex polygon cut into pieces of four corners; the last one may be a triangle with one corner twice. */
function fourCornered(corners: readonly Vec3[]): readonly Piece[] {
  const pieces: Piece[] = [];
  for (let i = 1; i + 1 < corners.length; i += 2) {
    pieces.push([corners[0]!, corners[i]!, corners[i + 1]!, corners[Math.min(i + 2, corners.length - 1)]!]);
  }
  return pieces;
}

/** The integral over a piece of n . V, where V points from the receiver's front away: Lambert's factor times pi. */
function pieceSum(piece: Piece, normal: Vec3, to: readonly Vec3[], rule: QuadratureRule): number {
  const [a, b, c, d] = piece;
  let sum = 0;
  for (let i = 0; i < rule.points.length; i += 1) {
    const s = (1 + rule.points[i]!) / 2;
    for (let j = 0; j < rule.points.length; j += 1) {
      const t = (1 + rule.points[j]!) / 2;
      const point = blend(a, b, c, d, s, t);
      const along = subtract(blendEdge(b, c, t), blendEdge(a, d, t));
      const across = subtract(blendEdge(d, c, s), blendEdge(a, b, s));
      const weight = rule.weights[i]! * rule.weights[j]! * length(cross(along, across));
      sum -= weight * dot(normal, lambertVector(to, point));
    }
  }
  return sum / 4;
}

function blendEdge(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

function blend(a: Vec3, b: Vec3, c: Vec3, d: Vec3, s: number, t: number): Vec3 {
  return blendEdge(blendEdge(a, b, s), blendEdge(d, c, s), t);
}
