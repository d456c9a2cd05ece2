import { ClipType, FillRule, PathType } from "clipper2-ts/dist/Core.js";
import { Clipper64 } from "clipper2-ts/dist/Engine.js";

/** A place in the picture, in halves of the frame from its middle: x to the right, y to the top. */
export type Place = readonly [x: number, y: number];

/** A closed line of places; a region's outer lines run counter-clockwise, its holes clockwise. */
export type Ring = readonly Place[];

/** A part of the picture. */
export type Region = readonly Ring[];

/** The whole picture. */
export const whole: Region = [
  [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ],
];

/** Steps of half a frame on which places are rounded before they are clipped: 3e-8 of it each. */
const STEPS = 33_554_432;

type Path = { x: number; y: number }[];

/** Twice the signed area of a closed line, + where it runs counter-clockwise. */
function twice(ring: Ring): number {
  let sum = 0;
  let before = ring[ring.length - 1];
  for (const place of ring) {
    if (before !== undefined) sum += before[0] * place[1] - before[1] * place[0];
    before = place;
  }
  return sum;
}

/** The area of a region; the whole picture has 4. */
export function areaOf(region: Region): number {
  return region.reduce((sum, ring) => sum + twice(ring), 0) / 2;
}

/** The area of a region as a share of the picture. */
export function shareOf(region: Region): number {
  return areaOf(region) / 4;
}

function toPath(ring: Ring): Path {
  const path: Path = [];
  for (const place of ring) path.push({ x: Math.round(place[0] * STEPS), y: Math.round(place[1] * STEPS) });
  return path;
}

function fromPath(path: Path): Ring {
  const ring: Place[] = [];
  for (const { x, y } of path) ring.push([x / STEPS, y / STEPS]);
  return ring;
}

function clip(type: ClipType, subject: Region, cut: Region): Region {
  const engine = new Clipper64();
  engine.addPaths(subject.map(toPath), PathType.Subject, false);
  if (cut.length > 0) engine.addPaths(cut.map(toPath), PathType.Clip, false);
  const found: Path[] = [];
  engine.execute(type, FillRule.NonZero, found);
  return found.map(fromPath);
}

/** A closed line turned to run counter-clockwise; nothing where it has no area. */
export function turned(ring: Ring): Region {
  const area = twice(ring);
  if (!(Math.abs(area) > 0)) return [];
  return [area > 0 ? ring : [...ring].reverse()];
}

/** All that is in one of several regions. */
export function union(...regions: readonly Region[]): Region {
  const all = regions.flat();
  return all.length === 0 ? [] : clip(ClipType.Union, all, []);
}

/** What is in the first region and not in the second. */
export function difference(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0 ? a : clip(ClipType.Difference, a, b);
}

/** What is in both regions. */
export function intersection(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0 ? [] : clip(ClipType.Intersection, a, b);
}

/** A rectangle of the picture, in halves of the frame. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** The smallest rectangle round a region; null round nothing. */
export function boxOf(region: Region): Box | null {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (const ring of region) {
    for (const place of ring) {
      left = Math.min(left, place[0]);
      right = Math.max(right, place[0]);
      bottom = Math.min(bottom, place[1]);
      top = Math.max(top, place[1]);
    }
  }
  return region.some((ring) => ring.length > 0) ? { left, right, bottom, top } : null;
}

/** A rectangle as a region. */
export function regionOf({ left, right, bottom, top }: Box): Region {
  return right > left && top > bottom
    ? [
        [
          [left, bottom],
          [right, bottom],
          [right, top],
          [left, top],
        ],
      ]
    : [];
}

/** Whether a place lies in a region, holes left out, by the parity of its crossings to the right. */
export function isWithin(region: Region, place: Place): boolean {
  const x = place[0];
  const y = place[1];
  let inside = false;
  for (const ring of region) {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i] as Place;
      const b = ring[i + 1 < ring.length ? i + 1 : 0] as Place;
      if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
    }
  }
  return inside;
}
