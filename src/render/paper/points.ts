import type { PaperItem, PaperPage, PaperPlace } from "../../core/paper.js";
import { visibleLine } from "../../diagnostics/print-visible.js";

/** Points to a px of 96 to the inch (CSS Values and Units 3). */
export const POINTS = 0.75;

/** An item of a figure, which is laid out in px, in points, moved to a place; control signs in its texts are shown. */
export function inPoints(item: PaperItem, [left, top]: PaperPlace): PaperItem {
  const put = ([x, y]: PaperPlace): PaperPlace => [left + POINTS * x, top + POINTS * y];
  if (item.kind === "text")
    return { ...item, text: visibleLine(item.text), at: put(item.at), size: POINTS * item.size };
  const { stroke } = item;
  return {
    ...item,
    rings: item.rings.map((ring) => ring.map(put)),
    stroke:
      stroke === null
        ? null
        : { ...stroke, width: POINTS * stroke.width, dash: stroke.dash.map((part) => POINTS * part) },
  };
}

/** A figure's page in points. */
export const pointsOf = ({ width, height, items }: PaperPage): PaperPage => ({
  width: POINTS * width,
  height: POINTS * height,
  items: items.map((item) => inPoints(item, [0, 0])),
});
