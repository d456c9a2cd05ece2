import type { Vec3 } from "../core/vector.js";
import { cross, dot, length, subtract } from "../math/vector.js";
import type { SourceShape } from "./source-shape.js";

/**
 * The sun's angular diameter that sizes are compared with, in degrees. 2 asin(R / au) with the nominal solar radius
 * 695,700 km and the astronomical unit 149,597,870.7 km (IAU 2015 resolution B3, IAU 2012 resolution B2) is 0.5329;
 * it swings by 1.7 % over the year.
 */
export const SUN_ANGULAR_DIAMETER_DEG = 0.533;

/** Full angles in radians under which a point sees a source. */
export interface AngularWidths {
  /** The least width: of the two mid-lines of a rectangle, the two diameters of a disc, the girth of a capsule. */
  readonly least: number;
  /** The greatest width, taken in the same way. */
  readonly greatest: number;
  /** The wider diagonal of a polygon; undefined for round shapes. */
  readonly diagonal?: number;
}

/** Full angle (radians) of the cone that has a solid angle (sr, 0 to 4 pi): 4 asin(sqrt(omega / 4 pi)). */
export function equivalentCone(solidAngle: number): number {
  const share = Math.min(1, Math.max(0, solidAngle / (4 * Math.PI)));
  return 4 * Math.asin(Math.sqrt(share));
}

/** Solid angle (sr) of a cone with a full angle in radians, 0 to 2 pi. */
export function coneSolidAngle(fullAngle: number): number {
  const s = Math.sin(fullAngle / 4);
  return 4 * Math.PI * s * s;
}

/** How many suns wide a full angle in degrees is. */
export function timesSun(degrees: number): number {
  return degrees / SUN_ANGULAR_DIAMETER_DEG;
}

/** Full angle (radians) of a sphere from outside it: 2 asin(R / d); undefined inside. */
export function sphereWidth(radius: number, distance: number): number | undefined {
  return distance > radius ? 2 * Math.asin(radius / distance) : undefined;
}

/** Full angle (radians) of a length that is seen square on at its middle: 2 atan(size / 2 d). */
export function widthSquareOn(size: number, distance: number): number {
  return 2 * Math.atan2(size / 2, distance);
}

/**
 * Full angle (radians) of a length whose middle is at a distance and whose square-on direction is turned away from
 * the line of sight by `turn` radians (0 is square on).
 */
export function widthTurned(size: number, distance: number, turn: number): number {
  return Math.atan2(size * distance * Math.cos(turn), distance * distance - (size * size) / 4);
}

/** Full angle (radians) between two points as seen from a third. */
export function angleBetweenPoints(a: Vec3, b: Vec3, eye: Vec3): number {
  const x = subtract(a, eye);
  const y = subtract(b, eye);
  return Math.atan2(length(cross(x, y)), dot(x, y));
}

/**
 * The widths of a source as seen from a point, exact at any distance and tilt. Undefined from behind a flat source
 * and from inside a body. The mid-lines of a polygon with other than four corners are not defined; its widest pair
 * of corners stands for both.
 */
export function angularWidths(source: SourceShape, eye: Vec3): AngularWidths | undefined {
  switch (source.kind) {
    case "sphere": {
      const width = sphereWidth(source.radius, length(subtract(source.centre, eye)));
      return width === undefined ? undefined : { least: width, greatest: width };
    }
    case "disc":
      return discWidths(source.centre, source.normal, source.radius, eye);
    case "polygon":
      return polygonWidths(source.corners, source.normal, eye);
    case "capsule":
      return capsuleWidths(source.from, source.to, source.radius, eye);
    default:
      return source satisfies never;
  }
}

/** The two diameters of a disc, the one that is tilted away and the one across it. */
function discWidths(centre: Vec3, normal: Vec3, radius: number, eye: Vec3): AngularWidths | undefined {
  const q = subtract(eye, centre);
  const h = dot(q, normal);
  if (!(h > 0)) return undefined;
  const d2 = dot(q, q);
  const tilted = Math.atan2(2 * radius * h, d2 - radius * radius);
  const across = 2 * Math.atan2(radius, Math.sqrt(d2));
  // Closer than the radius the tilted diameter is the wider one.
  return { least: Math.min(tilted, across), greatest: Math.max(tilted, across) };
}

function polygonWidths(corners: readonly Vec3[], normal: Vec3, eye: Vec3): AngularWidths | undefined {
  const first = corners[0];
  if (first === undefined || !(dot(subtract(eye, first), normal) > 0)) return undefined;
  const [a, b, c, d] = corners;
  if (corners.length === 4 && a && b && c && d) {
    const one = angleBetweenPoints(middle(a, b), middle(c, d), eye);
    const other = angleBetweenPoints(middle(b, c), middle(d, a), eye);
    return {
      least: Math.min(one, other),
      greatest: Math.max(one, other),
      diagonal: Math.max(angleBetweenPoints(a, c, eye), angleBetweenPoints(b, d, eye)),
    };
  }
  let widest = 0;
  for (const p of corners) {
    for (const q of corners) widest = Math.max(widest, angleBetweenPoints(p, q, eye));
  }
  return { least: widest, greatest: widest, diagonal: widest };
}

function middle(a: Vec3, b: Vec3): Vec3 {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

/** The girth of a capsule, 2 asin(R / distance from its axis), and its length between the outermost sight lines. */
function capsuleWidths(from: Vec3, to: Vec3, radius: number, eye: Vec3): AngularWidths | undefined {
  const axis = subtract(to, from);
  const size = length(axis);
  const a = subtract(from, eye);
  const z1 = size > 0 ? dot(a, axis) / size : 0;
  const z2 = z1 + size;
  const rho = Math.sqrt(Math.max(0, dot(a, a) - z1 * z1));
  const nearest = z1 > 0 ? Math.hypot(rho, z1) : z2 < 0 ? Math.hypot(rho, z2) : rho;
  const girth = sphereWidth(radius, nearest);
  if (girth === undefined) return undefined;
  const end = (z: number): readonly [place: number, half: number] => [
    Math.atan2(z, rho),
    Math.asin(Math.min(1, radius / Math.hypot(rho, z))),
  ];
  const [p1, h1] = end(z1);
  const [p2, h2] = end(z2);
  const along = Math.max(p1 + h1, p2 + h2) - Math.min(p1 - h1, p2 - h2);
  return { least: girth, greatest: Math.max(girth, along) };
}
