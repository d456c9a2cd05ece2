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

const toPath = (ring: Ring): Path =>
  ring.map(([x, y]) => ({ x: Math.round(x * STEPS), y: Math.round(y * STEPS) }));

function clip(type: ClipType, subject: Region, cut: Region): Region {
  const engine = new Clipper64();
  engine.addPaths(subject.map(toPath), PathType.Subject, false);
  if (cut.length > 0) engine.addPaths(cut.map(toPath), PathType.Clip, false);
  const found: Path[] = [];
  engine.execute(type, FillRule.NonZero, found);
  return found.map((path) => path.map(({ x, y }): Place => [x / STEPS, y / STEPS]));
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
  let box: Box | null = null;
  for (const ring of region) {
    for (const [x, y] of ring) {
      box =
        box === null
          ? { left: x, right: x, bottom: y, top: y }
          : {
              left: Math.min(box.left, x),
              right: Math.max(box.right, x),
              bottom: Math.min(box.bottom, y),
              top: Math.max(box.top, y),
            };
    }
  }
  return box;
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
export function isWithin(region: Region, [x, y]: Place): boolean {
  let inside = false;
  for (const ring of region) {
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[i + 1 < ring.length ? i + 1 : 0] ?? [ax, ay];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    });
  }
  return inside;
}
