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
