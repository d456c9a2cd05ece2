import type { Drawing } from "../report/figures/drawing.js";
import { heightToScale, widthToScale } from "./figures/page.js";

/** The paper that a sheet is printed on. */
export type Paper = "a4" | "letter";

/** Scales that a rule has. */
const scales = [10, 20, 25, 40, 50, 75, 100, 125, 150, 200, 250, 400, 500];

/** The greatest of a rule's scales, one to so many, at which a figure of a sheet has room, px at 96 to the inch. */
export function sheetScale(drawing: Drawing, wide: number, high: number): number {
  const fits = (scale: number): boolean =>
    widthToScale(drawing, scale) <= wide && heightToScale(drawing, scale) <= high;
  return scales.find(fits) ?? (scales[scales.length - 1] as number);
}
