import type { QuadratureRule } from "./quadrature.js";

/** The side of a line where `a x + b y <= c`. */
export interface HalfPlane {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** The inside of a circle. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** A convex region of a plane: everything inside all its circles and on the right side of all its lines. Bounded. */
export interface PlaneRegion {
  readonly lines: readonly HalfPlane[];
  readonly circles: readonly Circle[];
}

/** A point with the area it stands for. */
export interface AreaPoint {
  readonly x: number;
  readonly y: number;
  readonly area: number;
}

/** The stretch in y that a region has at an x; empty where high <= low. */
function stretch(region: PlaneRegion, x: number): readonly [low: number, high: number] {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (const { a, b, c } of region.lines) {
    if (b > 0) high = Math.min(high, (c - a * x) / b);
    else if (b < 0) low = Math.max(low, (c - a * x) / b);
    else if (a * x > c) return [0, 0];
  }
  for (const circle of region.circles) {
    const square = (circle.r - (x - circle.x)) * (circle.r + (x - circle.x));
    if (square <= 0) return [0, 0];
    const half = Math.sqrt(square);
    low = Math.max(low, circle.y - half);
    high = Math.min(high, circle.y + half);
  }
  return [low, high];
}

/** Every x where the outline of a region may change from one line or circle to another, in order. */
function breaks(region: PlaneRegion): readonly number[] {
  const found: number[] = [];
  const { lines, circles } = region;
  for (const circle of circles) found.push(circle.x - circle.r, circle.x + circle.r);
  lines.forEach((one, i) => {
    if (one.b === 0 && one.a !== 0) found.push(one.c / one.a);
    for (const other of lines.slice(i + 1)) {
      const turn = one.a * other.b - other.a * one.b;
      if (turn !== 0) found.push((one.c * other.b - other.c * one.b) / turn);
    }
    for (const circle of circles) found.push(...lineMeetsCircle(one, circle));
  });
  circles.forEach((one, i) => {
    // Two circles meet on the line on which both equations hold.
    for (const other of circles.slice(i + 1)) {
      const a = 2 * (other.x - one.x);
      const b = 2 * (other.y - one.y);
      const c =
        one.r * one.r -
        other.r * other.r +
        other.x * other.x -
        one.x * one.x +
        other.y * other.y -
        one.y * one.y;
      if (a !== 0 || b !== 0) found.push(...lineMeetsCircle({ a, b, c }, one));
    }
  });
  return found.filter(Number.isFinite).sort((p, q) => p - q);
}

function lineMeetsCircle(line: HalfPlane, circle: Circle): readonly number[] {
  const size2 = line.a * line.a + line.b * line.b;
  const off = line.c - line.a * circle.x - line.b * circle.y;
  const square = circle.r * circle.r * size2 - off * off;
  if (!(size2 > 0) || !(square >= 0)) return [];
  const foot = circle.x + (line.a * off) / size2;
  const reach = (Math.abs(line.b) * Math.sqrt(square)) / size2;
  return [foot - reach, foot + reach];
}

/**
 * Points over a region for sums of smooth functions: strips between the corners of the outline, a rule across and a
 * rule along each, with the places across drawn to the ends by a cosine so that the round ends of circles do no harm.
 */
export function areaPoints(region: PlaneRegion, rule: QuadratureRule): readonly AreaPoint[] {
  const out: AreaPoint[] = [];
  const ends = breaks(region);
  for (let k = 1; k < ends.length; k++) {
    const from = ends[k - 1] as number;
    const to = ends[k] as number;
    const [first, last] = stretch(region, (from + to) / 2);
    if (!(to > from) || !(last > first)) continue;
    for (let i = 0; i < rule.points.length; i++) {
      const turn = (Math.PI / 2) * (1 + (rule.points[i] ?? 0));
      const x = from + ((to - from) * (1 - Math.cos(turn))) / 2;
      const across = (((rule.weights[i] ?? 0) * Math.PI) / 4) * (to - from) * Math.sin(turn);
      const [low, high] = stretch(region, x);
      const half = (high - low) / 2;
      if (!(half > 0)) continue;
      for (let j = 0; j < rule.points.length; j++) {
        out.push({
          x,
          y: low + half * (1 + (rule.points[j] ?? 0)),
          area: across * half * (rule.weights[j] ?? 0),
        });
      }
    }
  }
  return out;
}
