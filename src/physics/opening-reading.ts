import type { Vec3 } from "../core/vector.js";
import { dot } from "../math/vector.js";
import type { BeamOpening } from "./beam-opening.js";
import { arcWithin, beyond, type OpeningSum, straight } from "./opening-pieces.js";

/** Least height above the plane that is reckoned with, m: a receptor in the opening itself. */
const LEAST = 1e-9;

/**
 * What a receptor gets from a flat opening with a beam, in sr per unit of the luminance on the axis. Along the rays
 * from the foot of its perpendicular the light is summed in closed form, along the outline of the part of the opening
 * that shines on it (inside the cone of a grid, above the horizon of a flat receptor) by Gauss points. For openings of
 * 0.1 to 2 m and distances of 0.3 to 8 m within 0.001 % of the reading on the axis at the same distance, for grids of 2
 * to 170 deg and for powers of the cosine from 0.1 to 200, measured against four times the points.
 *
 * @param dome - true for the response (1 + cos) / 2, false for a flat receptor
 * @param keep - counts only the part of the opening on this side of a plane through the receptor (a vector out of the
 * plane) in place of the part above the receptor's horizon; the opening must not reach below the horizon
 */
export function openingReading(
  opening: BeamOpening,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  dome: boolean,
  keep?: Vec3,
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
  const sum: OpeningSum = {
    reach: opening.reach,
    power: opening.power,
    short: opening.short,
    long: opening.long,
    level: share * level,
    tiltX: share * tiltX,
    tiltY: share * tiltY,
    even: dome ? 0.5 : 0,
    cutLevel: keep === undefined ? level : -dot(keep, normal),
    cutX: keep === undefined ? tiltX : dot(keep, u),
    cutY: keep === undefined ? tiltY : dot(keep, v),
    value: 0,
    swept: 0,
    within: false,
  };
  const cut = !dome || keep !== undefined;
  // Where the origin of the opening's plane lies as seen from the foot, in heights.
  const x = -(gx * u[0] + gy * u[1] + gz * u[2]) / height;
  const y = -(gx * v[0] + gy * v[1] + gz * v[2]) / height;
  if (opening.radius > 0) disc(opening, sum, x, y, opening.radius / height, cut);
  else polygon(opening, sum, x, y, height, cut);
  // Nothing within the reach: the opening fills the cone or misses it.
  if (!sum.within && Math.abs(sum.swept) < 1) return 0;
  return Math.max(0, sum.value);
}

/** The outline of a polygon, cut by the horizon or the plane in its place. */
function polygon(
  opening: BeamOpening,
  sum: OpeningSum,
  x: number,
  y: number,
  height: number,
  horizon: boolean,
): void {
  const { corners, cut } = opening;
  const { cutLevel, cutX, cutY } = sum;
  const count = corners.length / 2;
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const j = i + 1 < count ? i + 1 : 0;
    const x1 = x + (corners[2 * i] as number) / height;
    const y1 = y + (corners[2 * i + 1] as number) / height;
    const x2 = x + (corners[2 * j] as number) / height;
    const y2 = y + (corners[2 * j + 1] as number) / height;
    const a = horizon ? cutLevel + cutX * x1 + cutY * y1 : 1;
    const b = horizon ? cutLevel + cutX * x2 + cutY * y2 : 1;
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
  opening: BeamOpening,
  sum: OpeningSum,
  cx: number,
  cy: number,
  radius: number,
  horizon: boolean,
): void {
  const { angles } = opening;
  const { reach, cutLevel, cutX, cutY } = sum;
  const away = Math.sqrt(cx * cx + cy * cy);
  // Angles are counted from the rim's nearest point to the foot: no part of the rim then sweeps half a turn.
  const start = Math.atan2(-cy, -cx);
  let count = 0;
  const parts = sum.power > 0 ? 2 : 8;
  for (let k = 0; k <= parts; k++) angles[count++] = (k * 2 * Math.PI) / parts;
  const c = (radius * radius + away * away - reach * reach) / (2 * radius * away);
  if (Math.abs(c) < 1) {
    const meet = Math.acos(c);
    angles[count++] = meet;
    angles[count++] = 2 * Math.PI - meet;
  }
  const tilt = Math.sqrt(cutX * cutX + cutY * cutY);
  const deep = (cutLevel + cutX * cx + cutY * cy) / tilt;
  if (horizon && tilt > 0 && Math.abs(deep) < radius) {
    const up = Math.atan2(cutY, cutX) - start;
    const open = Math.acos(-deep / radius);
    angles[count++] = inTurn(up - open);
    angles[count++] = inTurn(up + open);
    // The horizon's chord, with the open side to its left.
    const half = Math.sqrt((radius - deep) * (radius + deep));
    const mx = cx - (deep * cutX) / tilt;
    const my = cy - (deep * cutY) / tilt;
    const wx = (half * cutY) / tilt;
    const wy = (-half * cutX) / tilt;
    straight(sum, mx - wx, my - wy, mx + wx, my + wy);
  }
  sortFirst(angles, count);
  for (let k = 1; k < count; k++) {
    const from = start + (angles[k - 1] as number);
    const to = start + (angles[k] as number);
    if (!(to > from)) continue;
    const mx = cx + radius * Math.cos((from + to) / 2);
    const my = cy + radius * Math.sin((from + to) / 2);
    if (horizon && cutLevel + cutX * mx + cutY * my < 0) continue;
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
