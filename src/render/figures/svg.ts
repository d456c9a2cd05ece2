import { toHtml } from "hast-util-to-html";
import { s } from "hastscript";
import { grey, type PaperItem, type PaperPath, type PaperText, type Theme } from "../../core/paper.js";
import { visibleLine } from "../../diagnostics/print-visible.js";
import type { Drawing } from "../../report/figures/drawing.js";
import { type FigureSize, figurePage } from "./page.js";

/** How a figure is put on its page. */
export interface SvgOptions extends FigureSize {
  readonly theme: Theme;
}

const FONT = "Noto Sans, sans-serif";

type Element = ReturnType<typeof s>;

/** Pixels with one decimal: a tenth of a pixel is nothing to see. */
const px = (value: number): string => String(Math.round(value * 10) / 10 + 0);

/** A text of a user as XML can carry it: control signs are shown, what XML forbids is replaced. */
const safe = (text: string): string =>
  visibleLine(text).replace(/[^\t\n\r -\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "\ufffd");

/** The path of some lines; a ruler's by level and upright strokes. */
function outline({ rings, closed, corners }: PaperPath): string {
  return rings
    .map((ring) => {
      const steps = ring.map(([x, y], i) => {
        const before = ring[i - 1];
        if (before === undefined) return `M${px(x)} ${px(y)}`;
        if (corners !== "ruler") return `L${px(x)} ${px(y)}`;
        return before[0] === x ? `V${px(y)}` : `H${px(x)}`;
      });
      return steps.join("") + (closed ? "Z" : "");
    })
    .join("");
}

function pathElement(path: PaperPath, theme: Theme): Element {
  const { fill, stroke, corners } = path;
  return s("path", {
    d: outline(path),
    fill: fill === null ? "none" : grey(fill, theme),
    ...(stroke === null
      ? {}
      : {
          stroke: grey(stroke.tone, theme),
          "stroke-width": px(stroke.width),
          ...(corners === "round" ? { "stroke-linejoin": "round" } : {}),
          ...(stroke.dash.length === 0 ? {} : { "stroke-dasharray": stroke.dash.join(" ") }),
        }),
  });
}

function textElement({ text, at: [x, y], size, anchor, tone, turn }: PaperText, theme: Theme): Element {
  return s(
    "text",
    {
      x: px(x),
      y: px(y + size * 0.35),
      "font-size": px(size),
      "text-anchor": anchor,
      fill: grey(tone, theme),
      stroke: grey(0, theme),
      "stroke-width": px(size * 0.22),
      "stroke-linejoin": "round",
      "paint-order": "stroke",
      ...(turn === 0 ? {} : { transform: `rotate(${px(-turn)} ${px(x)} ${px(y)})` }),
    },
    safe(text),
  );
}

const element = (item: PaperItem, theme: Theme): Element =>
  item.kind === "path" ? pathElement(item, theme) : textElement(item, theme);

/** A figure as an element of SVG in a tree of HTML (hast): what `renderSvg` prints. */
export function svgTree(drawing: Drawing, { theme, ...size }: SvgOptions): Element {
  const { width, height, items } = figurePage(drawing, size);
  return s(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: px(width),
      height: px(height),
      viewBox: `0 0 ${px(width)} ${px(height)}`,
      role: "img",
      "font-family": FONT,
    },
    s("title", safe(drawing.title)),
    s("desc", safe(drawing.description)),
    s("path", { d: `M0 0H${px(width)}V${px(height)}H0Z`, fill: grey(0, theme) }),
    ...items.map((item) => element(item, theme)),
  );
}

/**
 * A figure as SVG: paths and texts only, its own title and description for screen readers, and under it a scale bar
 * and its notes. No text of a user becomes a tag, and there is no empty line. The same figure gives the same bytes.
 */
export function renderSvg(drawing: Drawing, options: SvgOptions): string {
  return `${toHtml(svgTree(drawing, options), { space: "svg" })}\n`;
}
