/**
 * Convex polygons in a plane, as flat lists of coordinates u0, v0, u1, v1 ... counter-clockwise.
 * They are the outlines of lights and of what hides them on a plane at unit distance from the eye.
 */
export type FlatPolygon = readonly number[];

/** Twice the signed area; positive counter-clockwise. */
export function doubleArea(p: FlatPolygon): number {
  let sum = 0;
  const n = p.length;
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    sum += (p[i] as number) * (p[j + 1] as number) - (p[j] as number) * (p[i + 1] as number);
  }
  return sum;
}

/** The same corners counter-clockwise. */
export function counterClockwise(p: readonly number[]): FlatPolygon {
  if (doubleArea(p) >= 0) return p;
  const turned: number[] = [];
  for (let i = p.length - 2; i >= 0; i -= 2) turned.push(p[i] as number, p[i + 1] as number);
  return turned;
}

/** Cuts a convex polygon by the line a u + b v = c into the part below and the part above; an empty part is null. */
function cut(
  p: FlatPolygon,
  a: number,
  b: number,
  c: number,
): readonly [FlatPolygon | null, FlatPolygon | null] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < p.length; i += 2) {
    const d = a * (p[i] as number) + b * (p[i + 1] as number) - c;
    if (d < least) least = d;
    if (d > most) most = d;
  }
  if (most <= 0) return [p, null];
  if (least >= 0) return [null, p];
  const below: number[] = [];
  const above: number[] = [];
  let pu = p[p.length - 2] as number;
  let pv = p[p.length - 1] as number;
  let pd = a * pu + b * pv - c;
  for (let i = 0; i < p.length; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    const d = a * u + b * v - c;
    if ((pd < 0 && d > 0) || (pd > 0 && d < 0)) {
      const t = pd / (pd - d);
      const x = pu + t * (u - pu);
      const y = pv + t * (v - pv);
      below.push(x, y);
      above.push(x, y);
    }
    if (d <= 0) below.push(u, v);
    if (d >= 0) above.push(u, v);
    pu = u;
    pv = v;
    pd = d;
  }
  return [below.length >= 6 ? below : null, above.length >= 6 ? above : null];
}

/** Least and greatest coordinates: u, v, u, v. */
function box(p: FlatPolygon): readonly [number, number, number, number] {
  let u0 = Number.POSITIVE_INFINITY;
  let v0 = Number.POSITIVE_INFINITY;
  let u1 = Number.NEGATIVE_INFINITY;
  let v1 = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < p.length; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    if (u < u0) u0 = u;
    if (u > u1) u1 = u;
    if (v < v0) v0 = v;
    if (v > v1) v1 = v;
  }
  return [u0, v0, u1, v1];
}

/** True when all of a polygon lies on one side of a box. */
function beside(p: FlatPolygon, [u0, v0, u1, v1]: readonly [number, number, number, number]): boolean {
  const [a, b, c, d] = box(p);
  return a >= u1 || c <= u0 || b >= v1 || d <= v0;
}

/** True when an edge of `hole` has all of `p` on its far side, so that they do not overlap. */
function apart(p: FlatPolygon, hole: FlatPolygon): boolean {
  const n = hole.length;
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    const u = hole[i] as number;
    const v = hole[i + 1] as number;
    const a = (hole[j + 1] as number) - v;
    const b = u - (hole[j] as number);
    const c = a * u + b * v;
    let out = true;
    for (let k = 0; k < p.length && out; k += 2) out = a * (p[k] as number) + b * (p[k + 1] as number) >= c;
    if (out) return true;
  }
  return false;
}

/** What is left of convex pieces when a convex hole is taken out of them: convex pieces again. */
export function subtract(pieces: readonly FlatPolygon[], hole: FlatPolygon): readonly FlatPolygon[] {
  const left: FlatPolygon[] = [];
  const n = hole.length;
  const bounds = box(hole);
  for (const piece of pieces) {
    if (beside(piece, bounds) || apart(piece, hole)) {
      left.push(piece);
      continue;
    }
    let inside: FlatPolygon | null = piece;
    for (let i = 0; i < n && inside !== null; i += 2) {
      const j = i + 2 === n ? 0 : i + 2;
      const u = hole[i] as number;
      const v = hole[i + 1] as number;
      // Outward normal of the hole's edge; what lies above the edge's line stays.
      const a = (hole[j + 1] as number) - v;
      const b = u - (hole[j] as number);
      const [below, above]: readonly [FlatPolygon | null, FlatPolygon | null] = cut(
        inside,
        a,
        b,
        a * u + b * v,
      );
      if (above !== null) left.push(above);
      inside = below;
    }
  }
  return left;
}

/** The convex hull of some points, counter-clockwise (Andrew's monotone chain). */
export function convexHull(points: readonly number[]): FlatPolygon {
  const order: number[] = [];
  for (let i = 0; i < points.length; i += 2) order.push(i);
  order.sort(
    (i, j) =>
      (points[i] as number) - (points[j] as number) || (points[i + 1] as number) - (points[j + 1] as number),
  );
  const chain = (sequence: readonly number[]): number[] => {
    const kept: number[] = [];
    for (const i of sequence) {
      const u = points[i] as number;
      const v = points[i + 1] as number;
      while (kept.length >= 4) {
        const n = kept.length;
        const turn =
          ((kept[n - 2] as number) - (kept[n - 4] as number)) * (v - (kept[n - 3] as number)) -
          ((kept[n - 1] as number) - (kept[n - 3] as number)) * (u - (kept[n - 4] as number));
        if (turn > 0) break;
        kept.length = n - 2;
      }
      kept.push(u, v);
    }
    kept.length -= 2;
    return kept;
  };
  if (order.length < 3) return points;
  return [...chain(order), ...chain([...order].reverse())];
}
