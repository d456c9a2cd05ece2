/** Buffers for the polygon that is being cut, the lines that cut it, and a box. */
export interface Scratch {
  inside: Float64Array;
  next: Float64Array;
  lines: Float64Array;
  otherLines: Float64Array;
  readonly box: Float64Array;
}

/** Buffers for polygons of up to 60 corners. */
export function emptyScratch(): Scratch {
  return {
    inside: new Float64Array(128),
    next: new Float64Array(128),
    lines: new Float64Array(96),
    otherLines: new Float64Array(96),
    box: new Float64Array(4),
  };
}

/** Least and greatest coordinates of a stretch of corners: u, v, u, v. */
export function boundsOf(
  p: Float64Array,
  start: number,
  end: number,
  bounds: Float64Array,
  at: number,
): void {
  let u0 = Number.POSITIVE_INFINITY;
  let v0 = Number.POSITIVE_INFINITY;
  let u1 = Number.NEGATIVE_INFINITY;
  let v1 = Number.NEGATIVE_INFINITY;
  for (let i = start; i < end; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    if (u < u0) u0 = u;
    if (u > u1) u1 = u;
    if (v < v0) v0 = v;
    if (v > v1) v1 = v;
  }
  bounds[at] = u0;
  bounds[at + 1] = v0;
  bounds[at + 2] = u1;
  bounds[at + 3] = v1;
}

/**
 * The lines of a convex polygon's edges that go through a box, as a u + b v = c with the polygon below, three numbers
 * each. Gives how many numbers, or -1 where one of the edges has the whole box beyond it, so that the polygon misses it.
 */
export function linesThrough(
  p: Float64Array,
  start: number,
  end: number,
  box: Float64Array,
  at: number,
  lines: Float64Array,
): number {
  const u0 = box[at] as number;
  const v0 = box[at + 1] as number;
  const u1 = box[at + 2] as number;
  const v1 = box[at + 3] as number;
  let count = 0;
  let u = p[end - 2] as number;
  let v = p[end - 1] as number;
  for (let i = start; i < end; i += 2) {
    const nextU = p[i] as number;
    const nextV = p[i + 1] as number;
    const a = nextV - v;
    const b = u - nextU;
    const c = a * u + b * v;
    u = nextU;
    v = nextV;
    const most = (a > 0 ? a * u1 : a * u0) + (b > 0 ? b * v1 : b * v0);
    if (most <= c) continue;
    const least = (a > 0 ? a * u0 : a * u1) + (b > 0 ? b * v0 : b * v1);
    if (least >= c) return -1;
    lines[count++] = a;
    lines[count++] = b;
    lines[count++] = c;
  }
  return count;
}

/** Makes room for cutting a polygon of so many numbers by the edges of another of so many. */
export function makeRoom(scratch: Scratch, size: number, other: number): void {
  const numbers = size + other;
  if (4 * numbers > scratch.inside.length) {
    scratch.inside = new Float64Array(8 * numbers);
    scratch.next = new Float64Array(8 * numbers);
  }
  if (2 * numbers > scratch.lines.length) {
    scratch.lines = new Float64Array(4 * numbers);
    scratch.otherLines = new Float64Array(4 * numbers);
  }
}
