import { toHtml } from "hast-util-to-html";
import { s } from "hastscript";
import { visibleLine } from "../../diagnostics/print-visible.js";
import type { Drawing, Mark, Place } from "../../report/figures/drawing.js";
import { grey, strokes, type Theme } from "./look.js";

/** How a figure is put on its page. */
export interface SvgOptions {
  /** px; the height follows. */
  readonly width: number;
  readonly theme: Theme;
  /** True where a page says beside it what the figure is: heading and notes are then left out. */
  readonly bare?: boolean;
}

/** Width of a figure where nothing else is asked for, px. */
export const usualWidth = 960;
/** Space round a figure, px. */
const PAD = 14;
/** Pixels of a page to a metre of it: 96 to an inch (CSS Values and Units 3). */
const PIXELS_PER_METRE = 96 / 0.0254;

/** The width at which a figure is to scale, one to so many, where a page is printed at its full size. */
export const widthToScale = ({ left, right }: Drawing, scale: number): number =>
  ((right - left) * PIXELS_PER_METRE) / scale + 2 * PAD;

/** A figure is not higher than this many times its width. */
const TALLEST = 1.5;
/** Width of a letter over its height, with some to spare, from memory of common text faces. */
const LETTER = 0.58;
const FONT = "Noto Sans, sans-serif";

/** A text in lines of about so many letters, broken between words; a word that is longer stands alone. */
function wrapped(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines[lines.length - 1];
    if (last === undefined || last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

type Element = ReturnType<typeof s>;

/** Pixels with one decimal: a tenth of a pixel is nothing to see. */
const px = (value: number): string => String(Math.round(value * 10) / 10 + 0);

/** A text of a user as XML can carry it: control signs are shown, what XML forbids is replaced. */
const safe = (text: string): string =>
  visibleLine(text).replace(/[^\t\n\r -\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "\ufffd");

/** Where the parts of a figure lie on the page. */
interface Page {
  readonly at: (place: Place) => Place;
  /** px to a metre. */
  readonly scale: number;
  readonly letters: number;
  readonly theme: Theme;
}

const path = (page: Page, places: readonly Place[], closed: boolean): string =>
  places
    .map((place, i) => {
      const [x, y] = page.at(place);
      return `${i === 0 ? "M" : "L"}${px(x)} ${px(y)}`;
    })
    .join("") + (closed ? "Z" : "");

function words(
  page: Page,
  text: string,
  [x, y]: Place,
  anchor: string,
  strong: boolean,
  turn: number,
): Element {
  return s(
    "text",
    {
      x: px(x),
      y: px(y + page.letters * 0.35),
      "font-size": px(page.letters),
      "text-anchor": anchor,
      fill: grey(strong ? 1 : 0.9, page.theme),
      stroke: grey(0, page.theme),
      "stroke-width": px(page.letters * 0.22),
      "stroke-linejoin": "round",
      "paint-order": "stroke",
      ...(turn === 0 ? {} : { transform: `rotate(${px(-turn)} ${px(x)} ${px(y)})` }),
    },
    safe(text),
  );
}

function drawMark(page: Page, mark: Mark): readonly Element[] {
  switch (mark.kind) {
    case "line":
    case "area": {
      const { width, dash, tone, fill } = strokes[mark.ink];
      const closed = mark.kind === "area";
      const filled = closed && fill !== null;
      return [
        s("path", {
          d: path(page, closed ? mark.outline : mark.through, closed),
          fill: filled ? grey(fill, page.theme) : "none",
          stroke: grey(tone, page.theme),
          "stroke-width": px(width),
          "stroke-linejoin": "round",
          ...(dash.length === 0 ? {} : { "stroke-dasharray": dash.join(" ") }),
        }),
      ];
    }
    case "tape":
      return drawTape(page, mark);
    case "label":
      return [words(page, mark.text, page.at(mark.at), mark.anchor, mark.weight === "strong", mark.turn)];
    default:
      return mark satisfies never;
  }
}

/** A thin line with a short stroke across each end, and its length along it, never upside down. */
function drawTape(
  page: Page,
  { from, to, text, beside }: Extract<Mark, { kind: "tape" }>,
): readonly Element[] {
  const { width, tone } = strokes.tape;
  const [ax, ay] = page.at(from);
  const [bx, by] = page.at(to);
  const long = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
  if (long < 1e-6) return [];
  const ux = (bx - ax) / long;
  const uy = (by - ay) / long;
  const end = 4;
  const tick = (x: number, y: number): string =>
    `M${px(x - end * uy)} ${px(y + end * ux)}L${px(x + end * uy)} ${px(y - end * ux)}`;
  const stroke = { fill: "none", stroke: grey(tone, page.theme), "stroke-width": px(width) };
  const angle = (Math.atan2(-uy, ux) * 180) / Math.PI;
  const flipped = angle > 90.01 || angle < -89.99;
  const aside = beside * page.scale;
  const middle: Place = [(ax + bx) / 2 + aside * uy, (ay + by) / 2 - aside * ux];
  const turn = flipped ? angle - 180 : angle;
  return [
    s("path", { d: `M${px(ax)} ${px(ay)}L${px(bx)} ${px(by)}${tick(ax, ay)}${tick(bx, by)}`, ...stroke }),
    ...(text === "" ? [] : [words(page, text, middle, "middle", false, turn)]),
  ];
}

/** Lengths that a scale bar may show, m. */
const bars = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

function scaleBar(page: Page, x: number, y: number, room: number): readonly Element[] {
  const metres = [...bars].reverse().find((length) => length * page.scale <= room) ?? bars[0];
  if (metres === undefined) return [];
  const long = metres * page.scale;
  const name = metres >= 1 ? `${metres} m` : `${Math.round(metres * 100)} cm`;
  return [
    s("path", {
      d: `M${px(x)} ${px(y - 5)}V${px(y)}H${px(x + long)}V${px(y - 5)}`,
      fill: "none",
      stroke: grey(0.9, page.theme),
      "stroke-width": "1.4",
    }),
    words(page, name, [x + long + 8, y - 3], "start", false, 0),
  ];
}

/** A figure as an element of SVG in a tree of HTML (hast): what `renderSvg` prints. */
export function svgTree(drawing: Drawing, { width, theme, bare = false }: SvgOptions): Element {
  const wide = drawing.right - drawing.left;
  const high = drawing.top - drawing.bottom;
  const pad = PAD;
  const scale = Math.min((width - 2 * pad) / wide, (TALLEST * width) / high);
  const letters = drawing.em * scale;
  const size = Math.max(Math.min(12, width / 44), Math.min(18, letters));
  const room = (width - 2 * pad) / (LETTER * size);
  const titles = bare ? [] : wrapped(drawing.title, room);
  const head = bare ? pad : pad + 1.6 * size * titles.length;
  const bottom = head + high * scale;
  const lines = bare ? [] : drawing.notes.flatMap((note) => wrapped(note, room));
  const height = bottom + 2.4 * size + lines.length * 1.5 * size + pad;
  const left = (width - wide * scale) / 2;
  const page: Page = {
    at: ([x, y]) => [left + (x - drawing.left) * scale, head + (drawing.top - y) * scale],
    scale,
    letters,
    theme,
  };
  const plain = { ...page, letters: size };
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
    ...titles.map((text, i) => words(plain, text, [pad, pad + (0.5 + 1.6 * i) * size], "start", true, 0)),
    ...drawing.marks.flatMap((mark) => drawMark(page, mark)),
    ...(drawing.measured ? scaleBar(plain, pad, bottom + 1.6 * size, width / 4) : []),
    ...lines.map((text, i) => words(plain, text, [pad, bottom + (2.9 + 1.5 * i) * size], "start", false, 0)),
  );
}

/**
 * A figure as SVG: paths and texts only, its own title and description for screen readers, and under it a scale bar
 * and its notes. No text of a user becomes a tag, and there is no empty line. The same figure gives the same bytes.
 */
export function renderSvg(drawing: Drawing, options: SvgOptions): string {
  return `${toHtml(svgTree(drawing, options), { space: "svg" })}\n`;
}
