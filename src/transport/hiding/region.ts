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

/** Two buffers for the polygon that is being cut. */
export interface Scratch {
  inside: Float64Array;
  next: Float64Array;
}

/** Buffers for polygons of up to 60 corners. */
export function emptyScratch(): Scratch {
  return { inside: new Float64Array(128), next: new Float64Array(128) };
}

/**
 * Takes the convex polygon of index `which` of `holes` out of every polygon of `from` and puts what is left, convex
 * pieces again, into `to`. `scratch` is written over.
 */
export function takeOut(from: Region, holes: Region, which: number, to: Region, scratch: Scratch): void {
  to.count = 0;
  const hole = holes.data;
  const first = which === 0 ? 0 : (holes.ends[which - 1] as number);
  const last = holes.ends[which] as number;
  let u0 = Number.POSITIVE_INFINITY;
  let v0 = Number.POSITIVE_INFINITY;
  let u1 = Number.NEGATIVE_INFINITY;
  let v1 = Number.NEGATIVE_INFINITY;
  for (let i = first; i < last; i += 2) {
    const u = hole[i] as number;
    const v = hole[i + 1] as number;
    if (u < u0) u0 = u;
    if (u > u1) u1 = u;
    if (v < v0) v0 = v;
    if (v > v1) v1 = v;
  }
  let start = 0;
  for (let piece = 0; piece < from.count; piece++) {
    const end = from.ends[piece] as number;
    if (beside(from.data, start, end, u0, v0, u1, v1)) append(to, from.data, start, end);
    else cutOut(from.data, start, end, hole, first, last, to, scratch);
    start = end;
  }
}

function beside(
  p: Float64Array,
  start: number,
  end: number,
  u0: number,
  v0: number,
  u1: number,
  v1: number,
): boolean {
  let left = true;
  let right = true;
  let low = true;
  let high = true;
  for (let i = start; i < end; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    if (u > u0) left = false;
    if (u < u1) right = false;
    if (v > v0) low = false;
    if (v < v1) high = false;
  }
  return left || right || low || high;
}

function cutOut(
  data: Float64Array,
  start: number,
  end: number,
  hole: Float64Array,
  first: number,
  last: number,
  to: Region,
  scratch: Scratch,
): void {
  const mark = to.count;
  let size = end - start;
  if (2 * (size + 2 * (last - first)) > scratch.inside.length) {
    scratch.inside = new Float64Array(4 * (size + 2 * (last - first)));
    scratch.next = new Float64Array(4 * (size + 2 * (last - first)));
  }
  let inside = scratch.inside;
  let next = scratch.next;
  for (let i = 0; i < size; i++) inside[i] = data[start + i] as number;
  for (let i = first; i < last; i += 2) {
    const j = i + 2 === last ? first : i + 2;
    const u = hole[i] as number;
    const v = hole[i + 1] as number;
    // Out of the hole's edge; what lies beyond its line stays.
    const a = (hole[j + 1] as number) - v;
    const b = u - (hole[j] as number);
    const c = a * u + b * v;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < size; k += 2) {
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
    size = split(inside, size, a, b, c, next, to);
    const kept = next;
    next = inside;
    inside = kept;
    if (size < 6) return;
  }
}

/** Puts the part beyond the line into the region and the part before it into `below`; gives the size of the latter. */
function split(
  p: Float64Array,
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
  let pu = p[size - 2] as number;
  let pv = p[size - 1] as number;
  let pd = a * pu + b * pv - c;
  for (let i = 0; i < size; i += 2) {
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
