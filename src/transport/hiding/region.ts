import { boundsOf, linesThrough, makeRoom, type Scratch } from "./edge-lines.js";
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

/** Where a polygon of a region begins. */
export const startOf = ({ ends }: Region, which: number): number =>
  which === 0 ? 0 : (ends[which - 1] as number);

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
  for (let i = 0; i < polygon.length; i++) region.data[at + i] = polygon[i] as number;
  close(region, polygon.length);
}

/** Adds all polygons of a region to another. */
export function copyOf(from: Region, to: Region): void {
  let start = 0;
  for (let i = 0; i < from.count; i++) {
    const end = from.ends[i] as number;
    append(to, from.data, start, end);
    start = end;
  }
}

/** Adds a polygon that is a stretch of some numbers. */
export function append(region: Region, source: Float64Array, from: number, to: number): void {
  const at = reserve(region, to - from);
  const { data } = region;
  for (let i = from; i < to; i++) data[at + i - from] = source[i] as number;
  region.ends[region.count] = at + to - from;
  region.count++;
}

/**
 * Takes the convex polygon of index `which` of `holes` out of every polygon of `from` and puts what is left, convex
 * pieces again, into `to`. False, with nothing done, where the hole misses all of them. `scratch` is written over.
 */
export function takeOut(from: Region, holes: Region, which: number, to: Region, scratch: Scratch): boolean {
  const first = startOf(holes, which);
  const last = holes.ends[which] as number;
  const size = used(from);
  makeRoom(scratch, size, last - first);
  boundsOf(from.data, 0, size, scratch.box, 0);
  const numbers = linesThrough(holes.data, first, last, scratch.box, 0, scratch.lines);
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
