import type { FlatPolygon } from "./flat.js";

/**
 * A set of convex polygons in one buffer, so that taking holes out of a light allocates nothing. Polygon i lies from
 * `ends[i - 1]` (0 for the first) to `ends[i]`, as u0, v0, u1, v1 ... counter-clockwise.
 */
export interface Region {
  data: Float64Array;
  ends: Int32Array;
  count: number;
}

/** An empty region with some room; it grows when it must. */
export function emptyRegion(): Region {
  return { data: new Float64Array(1024), ends: new Int32Array(64), count: 0 };
}

const used = (region: Region): number => (region.count === 0 ? 0 : (region.ends[region.count - 1] as number));

/** Makes room for one more polygon of so many numbers; gives the place of its first. */
export function reserve(region: Region, numbers: number): number {
  const at = used(region);
  const need = at + numbers;
  if (need > region.data.length) {
    const data = new Float64Array(2 * need);
    data.set(region.data);
    region.data = data;
  }
  if (region.count + 1 > region.ends.length) {
    const ends = new Int32Array(2 * region.ends.length);
    ends.set(region.ends);
    region.ends = ends;
  }
  return at;
}

/** Ends a polygon of so many numbers that has been written at the reserved place, counter-clockwise if need be. */
export function close(region: Region, numbers: number): void {
  const at = used(region);
  const { data } = region;
  const end = at + numbers;
  let area = 0;
  for (let i = at; i < end; i += 2) {
    const j = i + 2 === end ? at : i + 2;
    area += (data[i] as number) * (data[j + 1] as number) - (data[j] as number) * (data[i + 1] as number);
  }
  if (area < 0) {
    for (let i = at, j = end - 2; i < j; i += 2, j -= 2) {
      const u = data[i] as number;
      const v = data[i + 1] as number;
      data[i] = data[j] as number;
      data[i + 1] = data[j + 1] as number;
      data[j] = u;
      data[j + 1] = v;
    }
  }
  region.ends[region.count] = end;
  region.count++;
}

/** Adds a polygon, unless it has no area to speak of. */
export function addPolygon(region: Region, polygon: FlatPolygon): void {
  if (polygon.length < 6) return;
  const at = reserve(region, polygon.length);
  region.data.set(polygon, at);
  close(region, polygon.length);
}

/** Makes a region hold one polygon. */
export function startRegion(region: Region, polygon: FlatPolygon): void {
  region.count = 0;
  reserve(region, polygon.length);
  region.data.set(polygon);
  region.ends[0] = polygon.length;
  region.count = 1;
}

function append(region: Region, source: Float64Array, from: number, to: number): void {
  const at = reserve(region, to - from);
  const { data } = region;
  for (let i = from; i < to; i++) data[at + i - from] = source[i] as number;
  region.ends[region.count] = at + to - from;
  region.count++;
}

/** Buffers for the polygon that is being cut, the lines that cut it, and a box. */
export interface Scratch {
  inside: Float64Array;
  next: Float64Array;
  lines: Float64Array;
  readonly box: Float64Array;
}

/** Buffers for polygons of up to 60 corners. */
export function emptyScratch(): Scratch {
  return {
    inside: new Float64Array(128),
    next: new Float64Array(128),
    lines: new Float64Array(96),
    box: new Float64Array(4),
  };
}

/** Least and greatest coordinates of a stretch of corners: u, v, u, v. */
function boundsOf(p: Float64Array, start: number, end: number, bounds: Float64Array): void {
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
  bounds[0] = u0;
  bounds[1] = v0;
  bounds[2] = u1;
  bounds[3] = v1;
}

/**
 * The lines of a hole's edges that go through a box, as a u + b v = c with the hole below. Gives their number, or -1
 * where one of the edges has the whole box beyond it, so that the hole misses it.
 */
function linesThrough(
  hole: Float64Array,
  first: number,
  last: number,
  box: Float64Array,
  lines: Float64Array,
): number {
  const u0 = box[0] as number;
  const v0 = box[1] as number;
  const u1 = box[2] as number;
  const v1 = box[3] as number;
  let count = 0;
  for (let i = first; i < last; i += 2) {
    const j = i + 2 === last ? first : i + 2;
    const u = hole[i] as number;
    const v = hole[i + 1] as number;
    const a = (hole[j + 1] as number) - v;
    const b = u - (hole[j] as number);
    const c = a * u + b * v;
    const most = Math.max(a * u0, a * u1) + Math.max(b * v0, b * v1);
    if (most <= c) continue;
    const least = Math.min(a * u0, a * u1) + Math.min(b * v0, b * v1);
    if (least >= c) return -1;
    lines[count++] = a;
    lines[count++] = b;
    lines[count++] = c;
  }
  return count;
}

/**
 * Takes the convex polygon of index `which` of `holes` out of every polygon of `from` and puts what is left, convex
 * pieces again, into `to`. False, with nothing done, where the hole misses all of them. `scratch` is written over.
 */
export function takeOut(from: Region, holes: Region, which: number, to: Region, scratch: Scratch): boolean {
  const first = which === 0 ? 0 : (holes.ends[which - 1] as number);
  const last = holes.ends[which] as number;
  if (3 * (last - first) > scratch.lines.length) scratch.lines = new Float64Array(6 * (last - first));
  boundsOf(from.data, 0, used(from), scratch.box);
  const numbers = linesThrough(holes.data, first, last, scratch.box, scratch.lines);
  if (numbers < 0) return false;
  to.count = 0;
  let start = 0;
  for (let piece = 0; piece < from.count; piece++) {
    const end = from.ends[piece] as number;
    cutOut(from.data, start, end, numbers, to, scratch);
    start = end;
  }
  return true;
}

/** Cuts one polygon by the lines of a hole one after another: what lies beyond a line stays, the last rest goes. */
function cutOut(
  data: Float64Array,
  start: number,
  end: number,
  numbers: number,
  to: Region,
  scratch: Scratch,
): void {
  const { lines } = scratch;
  const mark = to.count;
  let size = end - start;
  if (2 * (size + numbers) > scratch.inside.length) {
    scratch.inside = new Float64Array(4 * (size + numbers));
    scratch.next = new Float64Array(4 * (size + numbers));
  }
  let inside = data;
  let from = start;
  let below = scratch.inside;
  let spare = scratch.next;
  for (let i = 0; i < numbers; i += 3) {
    const a = lines[i] as number;
    const b = lines[i + 1] as number;
    const c = lines[i + 2] as number;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let k = from; k < from + size; k += 2) {
      const d = a * (inside[k] as number) + b * (inside[k + 1] as number) - c;
      if (d < least) least = d;
      if (d > most) most = d;
    }
    if (most <= 0) continue;
    if (least >= 0) {
      // All of it lies beyond this edge: the hole does not touch it, and no cut of it was needed.
      to.count = mark;
      append(to, data, start, end);
      return;
    }
    size = split(inside, from, size, a, b, c, below, to);
    if (size < 6) return;
    inside = below;
    from = 0;
    below = spare;
    spare = inside;
  }
}

/** Puts the part beyond the line into the region and the part before it into `below`; gives the size of the latter. */
function split(
  p: Float64Array,
  from: number,
  size: number,
  a: number,
  b: number,
  c: number,
  below: Float64Array,
  to: Region,
): number {
  const at = reserve(to, size + 4);
  const above = to.data;
  let m = at;
  let n = 0;
  let pu = p[from + size - 2] as number;
  let pv = p[from + size - 1] as number;
  let pd = a * pu + b * pv - c;
  for (let i = from; i < from + size; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    const d = a * u + b * v - c;
    if ((pd < 0 && d > 0) || (pd > 0 && d < 0)) {
      const t = pd / (pd - d);
      const x = pu + t * (u - pu);
      const y = pv + t * (v - pv);
      below[n++] = x;
      below[n++] = y;
      above[m++] = x;
      above[m++] = y;
    }
    if (d <= 0) {
      below[n++] = u;
      below[n++] = v;
    }
    if (d >= 0) {
      above[m++] = u;
      above[m++] = v;
    }
    pu = u;
    pv = v;
    pd = d;
  }
  if (m - at >= 6) {
    to.ends[to.count] = m;
    to.count++;
  }
  return n;
}
