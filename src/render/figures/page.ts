import type { PaperItem, PaperPage, PaperPath, PaperText } from "../../core/paper.js";
import type { Drawing, Mark, Place } from "../../report/figures/drawing.js";
import { strokes } from "./look.js";

/** How a figure is put on its page. */
export interface FigureSize {
  /** px; the height follows. */
  readonly width: number;
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

/** How high what is drawn of it is then, px, without what stands round it. */
export const heightToScale = ({ bottom, top }: Drawing, scale: number): number =>
  ((top - bottom) * PIXELS_PER_METRE) / scale;

/** A figure is not higher than this many times its width. */
const TALLEST = 1.5;
/** Width of a letter over its height, with some to spare, from memory of common text faces. */
const LETTER = 0.58;

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

/** Where the parts of a figure lie on the page. */
interface Sheet {
  readonly at: (place: Place) => Place;
  /** px to a metre. */
  readonly scale: number;
  readonly letters: number;
}

const words = (
  size: number,
  text: string,
  at: Place,
  anchor: PaperText["anchor"],
  strong: boolean,
  turn: number,
): PaperText => ({
  kind: "text",
  text,
  at,
  size,
  anchor,
  tone: strong ? 1 : 0.9,
  strong: false,
  turn,
  clear: true,
});

function drawMark(page: Sheet, mark: Mark): readonly PaperItem[] {
  switch (mark.kind) {
    case "line":
    case "area": {
      const { width, dash, tone, fill } = strokes[mark.ink];
      const closed = mark.kind === "area";
      return [
        {
          kind: "path",
          rings: [(closed ? mark.outline : mark.through).map(page.at)],
          closed,
          fill: closed ? fill : null,
          stroke: { tone, width, dash },
          corners: "round",
        },
      ];
    }
    case "tape":
      return drawTape(page, mark);
    case "label":
      return [
        words(page.letters, mark.text, page.at(mark.at), mark.anchor, mark.weight === "strong", mark.turn),
      ];
    default:
      return mark satisfies never;
  }
}

/** A thin line with a short stroke across each end, and its length along it, never upside down. */
function drawTape(
  page: Sheet,
  { from, to, text, beside, along = 0.5 }: Extract<Mark, { kind: "tape" }>,
): readonly PaperItem[] {
  const { width, tone } = strokes.tape;
  const [ax, ay] = page.at(from);
  const [bx, by] = page.at(to);
  const long = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
  if (long < 1e-6) return [];
  const ux = (bx - ax) / long;
  const uy = (by - ay) / long;
  const end = 4;
  const tick = (x: number, y: number): readonly Place[] => [
    [x - end * uy, y + end * ux],
    [x + end * uy, y - end * ux],
  ];
  const angle = (Math.atan2(-uy, ux) * 180) / Math.PI;
  const flipped = angle > 90.01 || angle < -89.99;
  const aside = beside * page.scale;
  const middle: Place = [ax + along * (bx - ax) + aside * uy, ay + along * (by - ay) - aside * ux];
  const turn = flipped ? angle - 180 : angle;
  const rings: PaperPath["rings"] = [
    [
      [ax, ay],
      [bx, by],
    ],
    tick(ax, ay),
    tick(bx, by),
  ];
  return [
    {
      kind: "path",
      rings,
      closed: false,
      fill: null,
      stroke: { tone, width, dash: [] },
      corners: "plain",
    },
    ...(text === "" ? [] : [words(page.letters, text, middle, "middle", false, turn)]),
  ];
}

/** Lengths that a scale bar may show, m. */
const bars = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

function scaleBar(page: Sheet, size: number, x: number, y: number, room: number): readonly PaperItem[] {
  const metres = [...bars].reverse().find((length) => length * page.scale <= room) ?? bars[0];
  if (metres === undefined) return [];
  const long = metres * page.scale;
  const name = metres >= 1 ? `${metres} m` : `${Math.round(metres * 100)} cm`;
  return [
    {
      kind: "path",
      rings: [
        [
          [x, y - 5],
          [x, y],
          [x + long, y],
          [x + long, y - 5],
        ],
      ],
      closed: false,
      fill: null,
      stroke: { tone: 0.9, width: 1.4, dash: [] },
      corners: "ruler",
    },
    words(size, name, [x + long + 8, y - 3], "start", false, 0),
  ];
}

/** A figure on a page of its own, in px: lines, areas and texts, under it a scale bar and its notes. */
export function figurePage(drawing: Drawing, { width, bare = false }: FigureSize): PaperPage {
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
  const page: Sheet = {
    at: ([x, y]) => [left + (x - drawing.left) * scale, head + (drawing.top - y) * scale],
    scale,
    letters,
  };
  return {
    width,
    height,
    items: [
      ...titles.map((text, i) => words(size, text, [pad, pad + (0.5 + 1.6 * i) * size], "start", true, 0)),
      ...drawing.marks.flatMap((mark) => drawMark(page, mark)),
      ...(drawing.measured ? scaleBar(page, size, pad, bottom + 1.6 * size, width / 4) : []),
      ...lines.map((text, i) => words(size, text, [pad, bottom + (2.9 + 1.5 * i) * size], "start", false, 0)),
    ],
  };
}
