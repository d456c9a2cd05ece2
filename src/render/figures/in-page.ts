import type { Drawing } from "../../report/figures/drawing.js";
import type { ViewPart } from "../parts.js";
import { renderSvg, type SvgOptions, svgTree } from "./svg.js";

/** How a figure stands in a page of text. */
const inPage: SvgOptions = { width: 720, theme: "light" };

/** A figure as a part of a page. */
export const figurePart = (drawing: Drawing): ViewPart => ({
  kind: "figure",
  words: `${drawing.title}. ${drawing.description}`,
  svg: renderSvg(drawing, inPage).trimEnd(),
  element: svgTree(drawing, inPage),
});
