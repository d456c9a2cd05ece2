import type { BaseUnit } from "../units/dimension.js";

/** How far a kind of measured input may be off unless the recipe says otherwise. */
export interface ToleranceRow {
  readonly name: string;
  readonly value: number;
  readonly unit: BaseUnit;
  readonly help: string;
  /** For a share: the least and the most it may be. Off by all of itself, a size may be nothing. */
  readonly range?: readonly [low: number, high: number];
}

const SHARES = [0, 0.99] as const;

/** Default tolerances of inputs (common practice, no source). */
export const toleranceTable = [
  { name: "tape", value: 0.02, unit: "m", help: "A tape measure." },
  { name: "height", value: 0.03, unit: "m", help: "The height of a lamp, of the lens, or of a place." },
  { name: "angle", value: 2, unit: "deg", help: "A bearing or an elevation." },
  { name: "stature", value: 0.02, unit: "m", help: "The height of a person." },
  {
    name: "size",
    value: 0.02,
    unit: "1",
    help: "The size of a lit opening, or of a window that counts, as a share of it.",
    range: SHARES,
  },
  { name: "board", value: 0.01, unit: "m", help: "The width or the height of a flat." },
  { name: "hinge", value: 5, unit: "deg", help: "The angle between two hinged flats." },
  { name: "lens", value: 0.03, unit: "1", help: "The focal length, as a share of it.", range: SHARES },
  { name: "dial", value: 0.1, unit: "stop", help: "A step of a dial." },
  { name: "meter", value: 0.1, unit: "stop", help: "One meter reading." },
  { name: "reflectance", value: 0.05, unit: "1", help: "The reflectance of a surface.", range: SHARES },
  {
    name: "assumed_reflectance",
    value: 0.2,
    unit: "1",
    help: "The reflectance of a surface of which the recipe says nothing.",
    range: SHARES,
  },
] as const satisfies readonly ToleranceRow[];
