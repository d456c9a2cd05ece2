import type { Vec3 } from "../core/vector.js";
import { gaussLegendre, type QuadratureRule } from "../math/quadrature.js";
import { dot, frameAround, subtract } from "../math/vector.js";
import { arcWithin, beyond, type GridSum, straight } from "./grid-pieces.js";
import type { DiscSource, PolygonSource } from "./source-shape.js";

/** A flat opening behind a grid, made ready for many readings. */
export interface GridOpening {
  readonly origin: Vec3;
  readonly normal: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Radius of a disc about the origin, m; 0 for a polygon. */
  readonly radius: number;
  /** Corners of a polygon in its plane, x and y in a row, counter-clockwise as seen from its front, m. */
  readonly corners: Float64Array;
  /** Tangent of the angle off the axis at which the grid ends. */
  readonly reach: number;
  readonly short: QuadratureRule;
  readonly long: QuadratureRule;
  /** Room to work in: corners above a horizon, and angles of a circle. */
  readonly cut: Float64Array;
  readonly angles: Float64Array;
}

/** Least height above the plane that is reckoned with, m: a receptor in the opening itself. */
const LEAST = 1e-9;

/**
 * Prepares a flat source behind a grid.
 *
 * @param cutoff - full angle at which the grid gives nothing, in radians, above 0 and below pi
 */
export function gridOpening(source: DiscSource | PolygonSource, cutoff: number): GridOpening {
  const [u, v] = frameAround(source.normal);
  const origin = source.kind === "disc" ? source.centre : (source.corners[0] ?? [0, 0, 0]);
  const corners = source.kind === "disc" ? [] : source.corners.map((corner) => subtract(corner, origin));
  const flat = Float64Array.from(corners.flatMap((corner) => [dot(corner, u), dot(corner, v)]));
  return {
    origin,
    normal: source.normal,
    u,
    v,
    radius: source.kind === "disc" ? source.radius : 0,
    corners: counterClockwise(flat),
    reach: Math.tan(cutoff / 2),
    short: gaussLegendre(6),
    long: gaussLegendre(14),
    cut: new Float64Array(2 * flat.length + 4),
    angles: new Float64Array(16),
  };
}

function counterClockwise(corners: Float64Array): Float64Array {
  const count = corners.length / 2;
  let twice = 0;
  for (let i = 0; i < count; i++) {
    const j = i + 1 < count ? i + 1 : 0;
    twice +=
      (corners[2 * i] as number) * (corners[2 * j + 1] as number) -
      (corners[2 * j] as number) * (corners[2 * i + 1] as number);
  }
  if (twice >= 0) return corners;
  return corners.map((_, k) => corners[2 * (count - 1 - (k >> 1)) + (k & 1)] as number);
}

/**
 * What a receptor gets from a flat opening behind a grid, in sr per unit of the luminance on the axis. Along the rays
 * from the foot of its perpendicular the light is summed in closed form, along the outline of the part of the opening
 * that shines on it (inside the grid's cone, above the horizon of a flat receptor) by Gauss points. For openings of 0.1
 * to 2 m, grids of 2 to 170 deg and distances of 0.3 to 8 m within 0.001 % of the reading on the axis at the same
 * distance, measured against four times the points.
 *
 * @param dome - true for the response (1 + cos) / 2, false for a flat receptor
 */
export function gridReading(
  opening: GridOpening,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  dome: boolean,
): number {
  const { origin, normal, u, v } = opening;
  const gx = px - origin[0];
  const gy = py - origin[1];
  const gz = pz - origin[2];
  const above = gx * normal[0] + gy * normal[1] + gz * normal[2];
  if (!(above > 0)) return 0;
  const height = Math.max(above, LEAST);
  const level = -(mx * normal[0] + my * normal[1] + mz * normal[2]);
  const tiltX = mx * u[0] + my * u[1] + mz * u[2];
  const tiltY = mx * v[0] + my * v[1] + mz * v[2];
  const share = dome ? 0.5 : 1;
  const sum: GridSum = {
    reach: opening.reach,
    short: opening.short,
    long: opening.long,
    level: share * level,
    tiltX: share * tiltX,
    tiltY: share * tiltY,
    even: dome ? 0.5 : 0,
    value: 0,
    swept: 0,
    within: false,
  };
  // Where the origin of the opening's plane lies as seen from the foot, in heights.
  const x = -(gx * u[0] + gy * u[1] + gz * u[2]) / height;
  const y = -(gx * v[0] + gy * v[1] + gz * v[2]) / height;
  if (opening.radius > 0) disc(opening, sum, x, y, opening.radius / height, !dome);
  else polygon(opening, sum, x, y, height, !dome);
  // Nothing within the reach: the opening fills the cone or misses it.
  if (!sum.within && Math.abs(sum.swept) < 1) return 0;
  return Math.max(0, sum.value);
}

/** The outline of a polygon, cut by the horizon. */
function polygon(
  opening: GridOpening,
  sum: GridSum,
  x: number,
  y: number,
  height: number,
  horizon: boolean,
): void {
  const { corners, cut } = opening;
  const { level, tiltX, tiltY } = sum;
  const count = corners.length / 2;
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const j = i + 1 < count ? i + 1 : 0;
    const x1 = x + (corners[2 * i] as number) / height;
    const y1 = y + (corners[2 * i + 1] as number) / height;
    const x2 = x + (corners[2 * j] as number) / height;
    const y2 = y + (corners[2 * j + 1] as number) / height;
    const a = horizon ? level + tiltX * x1 + tiltY * y1 : 1;
    const b = horizon ? level + tiltX * x2 + tiltY * y2 : 1;
    if (a >= 0) {
      cut[kept++] = x1;
      cut[kept++] = y1;
    }
    if (a >= 0 !== b >= 0) {
      const t = a / (a - b);
      cut[kept++] = x1 + t * (x2 - x1);
      cut[kept++] = y1 + t * (y2 - y1);
    }
  }
  for (let k = 0; k < kept; k += 2) {
    const n = k + 2 < kept ? k + 2 : 0;
    straight(sum, cut[k] as number, cut[k + 1] as number, cut[n] as number, cut[n + 1] as number);
  }
}

/** The outline of a disc: arcs between the places where the reach and the horizon cut it, and the horizon's chord. */
function disc(
  opening: GridOpening,
  sum: GridSum,
  cx: number,
  cy: number,
  radius: number,
  horizon: boolean,
): void {
  const { angles } = opening;
  const { reach, level, tiltX, tiltY } = sum;
  const away = Math.sqrt(cx * cx + cy * cy);
  // Angles are counted from the rim's nearest point to the foot: no part of the rim then sweeps half a turn.
  const start = Math.atan2(-cy, -cx);
  let count = 0;
  for (let k = 0; k <= 8; k++) angles[count++] = (k * Math.PI) / 4;
  const c = (radius * radius + away * away - reach * reach) / (2 * radius * away);
  if (Math.abs(c) < 1) {
    const meet = Math.acos(c);
    angles[count++] = meet;
    angles[count++] = 2 * Math.PI - meet;
  }
  const tilt = Math.sqrt(tiltX * tiltX + tiltY * tiltY);
  const deep = (level + tiltX * cx + tiltY * cy) / tilt;
  if (horizon && tilt > 0 && Math.abs(deep) < radius) {
    const up = Math.atan2(tiltY, tiltX) - start;
    const open = Math.acos(-deep / radius);
    angles[count++] = inTurn(up - open);
    angles[count++] = inTurn(up + open);
    // The horizon's chord, with the open side to its left.
    const half = Math.sqrt((radius - deep) * (radius + deep));
    const mx = cx - (deep * tiltX) / tilt;
    const my = cy - (deep * tiltY) / tilt;
    const wx = (half * tiltY) / tilt;
    const wy = (-half * tiltX) / tilt;
    straight(sum, mx - wx, my - wy, mx + wx, my + wy);
  }
  sortFirst(angles, count);
  for (let k = 1; k < count; k++) {
    const from = start + (angles[k - 1] as number);
    const to = start + (angles[k] as number);
    if (!(to > from)) continue;
    const mx = cx + radius * Math.cos((from + to) / 2);
    const my = cy + radius * Math.sin((from + to) / 2);
    if (horizon && level + tiltX * mx + tiltY * my < 0) continue;
    if (mx * mx + my * my < reach * reach) arcWithin(sum, cx, cy, radius, from, to);
    else {
      beyond(
        sum,
        cx + radius * Math.cos(from),
        cy + radius * Math.sin(from),
        cx + radius * Math.cos(to),
        cy + radius * Math.sin(to),
      );
    }
  }
}

/** An angle brought to 0 to 2 pi. */
function inTurn(angle: number): number {
  const rest = angle % (2 * Math.PI);
  return rest < 0 ? rest + 2 * Math.PI : rest;
}

/** Puts the first numbers of a row in order, without making another row. */
function sortFirst(row: Float64Array, count: number): void {
  for (let i = 1; i < count; i++) {
    const value = row[i] as number;
    let k = i;
    for (; k > 0 && (row[k - 1] as number) > value; k--) row[k] = row[k - 1] as number;
    row[k] = value;
  }
}
