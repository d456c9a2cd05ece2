import type { QuadratureRule } from "../math/quadrature.js";
import { evenPart, levelPart, tiltedPart } from "./grid-radial.js";
import { powerEven, powerLevel, powerTilted } from "./power-radial.js";

/**
 * The sum over the outline of the lit part of an opening: each piece of the outline adds what the rays between the
 * foot and it give (Green's theorem in polar coordinates), with its sign. Lengths in heights of the receptor.
 */
export interface OpeningSum {
  readonly reach: number;
  /** Power of the cosine of the intensity; 0 behind a grid. */
  readonly power: number;
  /** Rules for short and for long pieces. */
  readonly short: QuadratureRule;
  readonly long: QuadratureRule;
  /** The response of the receptor to a ray at (x, y): (level + tiltX x + tiltY y) / distance, plus `even`. */
  level: number;
  tiltX: number;
  tiltY: number;
  even: number;
  /** Only the part of the opening where cutLevel + cutX x + cutY y is not below 0 counts. */
  readonly cutLevel: number;
  readonly cutX: number;
  readonly cutY: number;
  value: number;
  /** Angle swept by pieces beyond the reach, and whether any lies within it. */
  swept: number;
  within: boolean;
}

/** What the rays to a place give, over its distance from the foot squared. */
function perSquare(sum: OpeningSum, x: number, y: number): number {
  const r = Math.sqrt(x * x + y * y);
  const n = sum.power;
  if (n > 0) {
    let g = sum.level * powerLevel(r, n);
    if (sum.tiltX !== 0 || sum.tiltY !== 0) g += (sum.tiltX * x + sum.tiltY * y) * powerTilted(r, n);
    return sum.even === 0 ? g : g + sum.even * powerEven(r, n);
  }
  let g = sum.level * levelPart(r, sum.reach) + (sum.tiltX * x + sum.tiltY * y) * tiltedPart(r, sum.reach);
  if (sum.even !== 0) g += sum.even * evenPart(r, sum.reach);
  return g;
}

/** A piece of the outline beyond the reach, which sweeps less than half a turn: the rays end at the reach. */
export function beyond(sum: OpeningSum, x1: number, y1: number, x2: number, y2: number): void {
  const turn = Math.atan2(x1 * y2 - x2 * y1, x1 * x2 + y1 * y2);
  const { reach } = sum;
  const first = Math.sqrt(x1 * x1 + y1 * y1);
  const last = Math.sqrt(x2 * x2 + y2 * y2);
  if (!(first > 0) || !(last > 0)) return;
  const square = reach * reach;
  let even = sum.level * levelPart(reach, reach);
  if (sum.even !== 0) even += sum.even * evenPart(reach, reach);
  const sideways = sum.tiltX * (y2 / last - y1 / first) - sum.tiltY * (x2 / last - x1 / first);
  sum.value += square * (even * turn + reach * tiltedPart(reach, reach) * sideways);
  sum.swept += turn;
}

/** A straight piece of the outline. */
export function straight(sum: OpeningSum, x1: number, y1: number, x2: number, y2: number): void {
  const length = Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1));
  if (!(length > 0)) return;
  const dx = (x2 - x1) / length;
  const dy = (y2 - y1) / length;
  // The line runs along (dx, dy); the foot lies `off` to its left, or to its right where that is negative.
  const off = x1 * dy - y1 * dx;
  const from = x1 * dx + y1 * dy;
  const to = from + length;
  const chord = (sum.reach - off) * (sum.reach + off);
  const half = chord > 0 ? Math.sqrt(chord) : 0;
  const px = x1 - from * dx;
  const py = y1 - from * dy;
  if (sum.power > 0) {
    sum.within = true;
    graded(sum, from, to, nearness(sum, off), (t, weight) => {
      sum.value += weight * off * perSquare(sum, px + t * dx, py + t * dy);
    });
    return;
  }
  const low = Math.min(to, Math.max(from, -half));
  const high = Math.max(from, Math.min(to, half));
  if (!(half > 0) || !(high > low)) {
    beyond(sum, x1, y1, x2, y2);
    return;
  }
  if (low > from) beyond(sum, x1, y1, px + low * dx, py + low * dy);
  if (to > high) beyond(sum, px + high * dx, py + high * dy, x2, y2);
  sum.within = true;
  // The foot's nearest point parts the piece: the luminance has a kink there for a line that all but meets the foot.
  const middle = Math.min(high, Math.max(low, 0));
  for (let part = 0; part < 2; part++) {
    const a = part === 0 ? low : middle;
    const b = part === 0 ? middle : high;
    if (!(b > a)) continue;
    const rule = b - a < 0.5 ? sum.short : sum.long;
    for (let i = 0; i < rule.points.length; i++) {
      const t = (a + b + (b - a) * (rule.points[i] as number)) / 2;
      const weight = ((rule.weights[i] as number) * (b - a)) / 2;
      sum.value += weight * off * perSquare(sum, px + t * dx, py + t * dy);
    }
  }
}

/** A piece of a circle about (cx, cy), counter-clockwise between two angles, within the reach. */
export function arcWithin(
  sum: OpeningSum,
  cx: number,
  cy: number,
  radius: number,
  from: number,
  to: number,
): void {
  sum.within = true;
  if (sum.power > 0) {
    arcOfPower(sum, cx, cy, radius, from, to);
    return;
  }
  const rule = radius * (to - from) < 0.5 ? sum.short : sum.long;
  for (let i = 0; i < rule.points.length; i++) {
    const turn = (from + to + (to - from) * (rule.points[i] as number)) / 2;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    const weight = ((rule.weights[i] as number) * (to - from)) / 2;
    const sweep = radius * (radius + cx * c + cy * s);
    sum.value += weight * sweep * perSquare(sum, cx + radius * c, cy + radius * s);
  }
}

/** A piece of a circle where the intensity goes with a power of the cosine. */
function arcOfPower(sum: OpeningSum, cx: number, cy: number, radius: number, from: number, to: number): void {
  const away = Math.sqrt(cx * cx + cy * cy);
  // Angles are counted from the rim's nearest point to the foot, once round.
  const start = Math.atan2(-cy, -cx);
  const nearest = (from + to) / 2 - start > Math.PI ? start + 2 * Math.PI : start;
  const narrow = Math.min(4, nearness(sum, Math.abs(radius - away)) / Math.sqrt(radius * away));
  graded(sum, from - nearest, to - nearest, narrow, (angle, weight) => {
    const c = Math.cos(nearest + angle);
    const s = Math.sin(nearest + angle);
    const sweep = radius * (radius + cx * c + cy * s);
    sum.value += weight * sweep * perSquare(sum, cx + radius * c, cy + radius * s);
  });
}

/** The length over which the light of a ray changes near the foot: its distance, or the width of the beam. */
function nearness(sum: OpeningSum, off: number): number {
  return Math.sqrt(off * off + Math.min(1, 2 / (sum.power + 1)));
}

/** Gauss points in v with t = scale sinh v, which draws them towards t = 0, in stretches of v of 2.5 at most. */
function graded(
  sum: OpeningSum,
  from: number,
  to: number,
  scale: number,
  add: (t: number, weight: number) => void,
): void {
  const low = Math.asinh(from / scale);
  const high = Math.asinh(to / scale);
  const count = Math.max(1, Math.ceil((high - low) / 2.5));
  const step = (high - low) / count;
  const rule = step < 0.5 ? sum.short : sum.long;
  for (let part = 0; part < count; part++) {
    for (let i = 0; i < rule.points.length; i++) {
      const v = low + step * (part + (1 + (rule.points[i] as number)) / 2);
      const e = Math.exp(v);
      const reach = (scale * (e - 1 / e)) / 2;
      add(reach, ((rule.weights[i] as number) * step * scale * (e + 1 / e)) / 4);
    }
  }
}
