import type { FaceAngles } from "./angles.js";

/** The patterns of light on a face that have a name. */
export type PatternName = "flat" | "butterfly" | "loop" | "rembrandt" | "split" | "rim";

/** Where the key stands for a pattern, deg from the nose line to either side and above it. */
interface PatternRow {
  readonly name: PatternName;
  readonly azimuth: readonly [least: number, most: number];
  readonly elevation: readonly [least: number, most: number];
}

/** The trade's usual ranges (common practice, no source); flat and the heights of rim are this table's own. */
export const patterns: readonly PatternRow[] = [
  { name: "flat", azimuth: [0, 15], elevation: [-10, 20] },
  { name: "butterfly", azimuth: [0, 10], elevation: [25, 45] },
  { name: "loop", azimuth: [25, 45], elevation: [20, 40] },
  { name: "rembrandt", azimuth: [45, 60], elevation: [35, 45] },
  { name: "split", azimuth: [80, 100], elevation: [0, 20] },
  { name: "rim", azimuth: [120, 160], elevation: [-10, 60] },
];

/** How far a light stands from a pattern. */
export interface PatternGap {
  readonly name: PatternName;
  /** What its azimuth (+ further from the nose line) and its elevation (+ up) have to change by, deg; 0 inside. */
  readonly azimuth: number;
  readonly elevation: number;
  /** Both together, deg: the root of the sum of squares. */
  readonly off: number;
}

/** What the arithmetic of angles leaves open, deg: a light at the end of a range stands in it. */
const HAIR = 1e-6;

/** By what a value has to change to lie in a range. */
function toRange(value: number, [least, most]: readonly [number, number]): number {
  return value < least - HAIR ? least - value : value > most + HAIR ? most - value : 0;
}

/** How far a light stands from every pattern, the nearest first; one in the order of the table where two are as near. */
export function patternGaps({ azimuth, elevation }: FaceAngles): readonly PatternGap[] {
  return patterns
    .map((row): PatternGap => {
      const side = toRange(Math.abs(azimuth), row.azimuth);
      const up = toRange(elevation, row.elevation);
      return { name: row.name, azimuth: side, elevation: up, off: Math.sqrt(side * side + up * up) };
    })
    .sort((a, b) => a.off - b.off);
}

/** The pattern that a light makes, or the nearest one; its gap is 0 where the light stands in its range. */
export function patternOf(angles: FaceAngles): PatternGap {
  return patternGaps(angles)[0] as PatternGap;
}
