import { boundsOf, linesThrough, makeRoom, type Scratch } from "./edge-lines.js";
import { append, copyOf, type Region, startOf, takeOut } from "./region.js";

/** Buffers for what holes take of a light, written over by every reading. */
export interface HiddenWork {
  /** What is hidden, in convex pieces that do not overlap. */
  readonly hidden: Region;
  /** The part of one hole that no hole before it has taken. */
  part: Region;
  next: Region;
  /** Least and greatest coordinates of the light and of each hole. */
  boxes: Float64Array;
  readonly scratch: Scratch;
}

/** Numbers of a box. */
const BOX = 4;

/**
 * Gathers what holes take of a convex light, in `work.hidden`. True where one of them alone takes all of it.
 *
 * @param light - A region of one polygon.
 */
export function hideBy(light: Region, holes: Region, work: HiddenWork): boolean {
  const { hidden, scratch } = work;
  hidden.count = 0;
  if (BOX * (holes.count + 1) > work.boxes.length) work.boxes = new Float64Array(2 * BOX * (holes.count + 1));
  const { boxes } = work;
  boundsOf(light.data, 0, light.ends[0] as number, boxes, 0);
  for (let i = 0; i < holes.count; i++) {
    const box = BOX * (i + 1);
    boundsOf(holes.data, startOf(holes, i), holes.ends[i] as number, boxes, box);
    if (isApart(boxes, 0, box)) continue;
    let first = 0;
    while (first < i && isApart(boxes, box, BOX * (first + 1))) first++;
    if (first < i) work.part.count = 0;
    const common = addCommon(light, holes, i, boxes, box, first < i ? work.part : hidden, scratch);
    if (common === "all") return true;
    if (common === "nothing" || first === i) continue;
    for (let k = first; k < i && work.part.count > 0; k++) {
      if (isApart(boxes, box, BOX * (k + 1)) || !takeOut(work.part, holes, k, work.next, scratch)) continue;
      const spare = work.part;
      work.part = work.next;
      work.next = spare;
    }
    copyOf(work.part, hidden);
  }
  return false;
}

/** True for two boxes with nothing in common. */
function isApart(boxes: Float64Array, a: number, b: number): boolean {
  return (
    (boxes[a] as number) >= (boxes[b + 2] as number) ||
    (boxes[b] as number) >= (boxes[a + 2] as number) ||
    (boxes[a + 1] as number) >= (boxes[b + 3] as number) ||
    (boxes[b + 1] as number) >= (boxes[a + 3] as number)
  );
}

/**
 * Adds what a convex light and a hole have in common: all of the light, a part of it or nothing. The one of which fewer
 * edges come near the other cuts the other.
 */
function addCommon(
  light: Region,
  holes: Region,
  which: number,
  boxes: Float64Array,
  box: number,
  to: Region,
  scratch: Scratch,
): "all" | "part" | "nothing" {
  const size = light.ends[0] as number;
  const start = startOf(holes, which);
  const end = holes.ends[which] as number;
  makeRoom(scratch, size, end - start);
  const { lines, otherLines } = scratch;
  const ofHole = linesThrough(holes.data, start, end, boxes, 0, lines);
  if (ofHole === 0) return "all";
  const ofLight = ofHole < 0 ? -1 : linesThrough(light.data, 0, size, boxes, box, otherLines);
  if (ofLight < 0) return "nothing";
  const left =
    ofHole <= ofLight
      ? cut(light.data, 0, size, lines, ofHole, scratch)
      : cut(holes.data, start, end, otherLines, ofLight, scratch);
  if (left === 0) return "nothing";
  if (left > 0) {
    append(to, scratch.inside, 0, left);
    return "part";
  }
  if (ofHole <= ofLight) return "all";
  append(to, holes.data, start, end);
  return "part";
}

/**
 * Leaves the part of a convex polygon before all lines in `scratch.inside` and gives its size: 0 where nothing is left,
 * -1 where no line takes anything away.
 */
function cut(
  p: Float64Array,
  start: number,
  end: number,
  lines: Float64Array,
  numbers: number,
  scratch: Scratch,
): number {
  let from = p;
  let first = start;
  let last = end;
  for (let line = 0; line < numbers; line += 3) {
    const left = before(from, first, last, lines, line, scratch.next);
    if (left < 0) continue;
    if (left < 6) return 0;
    from = scratch.next;
    scratch.next = scratch.inside;
    scratch.inside = from;
    first = 0;
    last = left;
  }
  return from === p ? -1 : last;
}

/** Puts the part of a polygon before a line into `below` and gives its size; -1 where nothing of it lies beyond. */
function before(
  p: Float64Array,
  start: number,
  end: number,
  lines: Float64Array,
  line: number,
  below: Float64Array,
): number {
  const a = lines[line] as number;
  const b = lines[line + 1] as number;
  const c = lines[line + 2] as number;
  let n = 0;
  let beyond = false;
  let pu = p[end - 2] as number;
  let pv = p[end - 1] as number;
  let pd = a * pu + b * pv - c;
  for (let i = start; i < end; i += 2) {
    const u = p[i] as number;
    const v = p[i + 1] as number;
    const d = a * u + b * v - c;
    if ((pd < 0 && d > 0) || (pd > 0 && d < 0)) {
      const t = pd / (pd - d);
      below[n++] = pu + t * (u - pu);
      below[n++] = pv + t * (v - pv);
    }
    if (d <= 0) {
      below[n++] = u;
      below[n++] = v;
    } else beyond = true;
    pu = u;
    pv = v;
    pd = d;
  }
  return beyond ? n : -1;
}
