import type { PaperPage, PaperPlace, TextWidth } from "../core/paper.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import type { Drawing } from "../report/figures/drawing.js";
import type { BothWays, DaySheet } from "../report/sheet/sheet.js";
import { figurePage, widthToScale } from "./figures/page.js";
import {
  type Block,
  beside,
  boxAt,
  lineAt,
  lineHeight,
  paragraph,
  ruleAt,
  stacked,
  wrapText,
} from "./paper/blocks.js";
import { type Flow, flow, lower, type Placed } from "./paper/flow.js";
import { inPoints, POINTS } from "./paper/points.js";
import { BOX, type Cell, tableBlocks } from "./paper/table.js";
import { type Paper, sheetScale } from "./sheet-scale.js";
import { noReadings, sideWays, warningWords } from "./sheet-words.js";

/** The letters that a sheet is written in. */
export interface SheetLetters {
  /** In points. */
  readonly widthOf: TextWidth;
  readonly hasAll: (text: string) => boolean;
}

/** Points: 72 to an inch. ISO 216 A4, and North American letter. */
const papers: Readonly<Record<Paper, PaperPlace>> = { a4: [595.28, 841.89], letter: [612, 792] };
const MARGIN = 28.35;
const TOP = 25.5;
const GUTTER = 14.2;
const SIZE = 7.8;
const SMALL = 6.8;
/** Height that the two figures may take, px. */
const HIGH = 390;
/** How large figures and letters of a sheet are, as shares of their usual size. */
export interface SheetSize {
  readonly figures: number;
  readonly letters: number;
}

/** How much smaller figures and letters may be where that keeps the sheet on one page; smaller ones cannot be read. */
const sizes: readonly SheetSize[] = [
  { figures: 1, letters: 1 },
  { figures: 0.9, letters: 1 },
  { figures: 0.8, letters: 1 },
  { figures: 0.8, letters: 0.94 },
  { figures: 0.7, letters: 0.94 },
  { figures: 0.6, letters: 0.9 },
  { figures: 0.5, letters: 0.9 },
  { figures: 0.42, letters: 0.9 },
];

/** True where what to bring stands under the readings, so that the two columns end at about the same height. */
export const bringsLeft = ({ readings, kit, camera, places }: DaySheet): boolean =>
  readings.length + kit.length / 2 <= camera.length + 2 * places.length;

/** Width of a letter over its height, on average, and the height that is kept free, where the letters are not known. */
const AVERAGE = 0.455;
const UNSURE = 8;

/** How large figures and letters are where letters of about the usual width keep the sheet on one page, if any do. */
export function sheetSize(sheet: DaySheet, paper: Paper): SheetSize {
  const letters: SheetLetters = {
    widthOf: (text, size) => AVERAGE * size * [...text].length,
    hasAll: () => true,
  };
  return (
    sizes.find((size) => pagesWith(sheet, paper, letters, size, UNSURE).length === 1) ??
    (sizes[sizes.length - 1] as SheetSize)
  );
}

/**
 * The sheet for the day as pages of lines and texts, in points. What does not fit goes on to another page; where smaller
 * figures keep it on one, they are smaller.
 */
export function sheetPages(sheet: DaySheet, paper: Paper, letters: SheetLetters): readonly PaperPage[] {
  let first: readonly PaperPage[] | null = null;
  for (const size of sizes) {
    const pages = pagesWith(sheet, paper, letters, size, 0);
    if (pages.length === 1) return pages;
    first ??= pages;
  }
  return first ?? [];
}

function pagesWith(
  sheet: DaySheet,
  paper: Paper,
  { widthOf, hasAll }: SheetLetters,
  { figures: share, letters }: SheetSize,
  spare: number,
): readonly PaperPage[] {
  const [width, height] = papers[paper];
  const whole = width - 2 * MARGIN;
  const half = (whole - GUTTER) / 2;
  const bounds = { top: TOP, foot: height - TOP - spare };
  const maker = makerOf(widthOf, SIZE * letters);
  const put = (blocks: readonly Block[], x: number, from: Flow["end"]): Flow => flow(blocks, x, from, bounds);

  const head = put(
    [
      ...maker.text(sheet.title, whole, { size: 13, strong: true }, 2),
      ...maker.text(sheet.headline, whole, { size: SIZE * letters }, 2),
      ...(sheet.mattersMost === null
        ? []
        : [maker.led("The tape that matters most: ", sheet.mattersMost, whole)]),
      maker.heading("Lamps", whole),
      ...maker.table(
        whole,
        [
          ["Lamp", 2.5],
          ["From the mark", 1.15],
          ["From the lens", 1.15],
          ["At the mark", 1.25],
          ["Height", 1.1],
          ["To the face", 1.1],
          ["Tilt", 1.1],
          ["Power", 0.9],
        ],
        sheet.lamps.map((lamp) => [
          { text: lamp.name, small: lamp.opening, strong: true },
          both(lamp.fromMark),
          both(lamp.fromLens),
          { text: lamp.bearing },
          both(lamp.height),
          both(lamp.slant),
          { text: lamp.tilt },
          { text: lamp.power },
        ]),
      ),
      paragraph([], { size: SIZE }, 5),
    ],
    MARGIN,
    { page: 0, y: TOP },
  );
  const bring = (): readonly Block[] => [
    maker.heading("Bring", half),
    ...maker.twoColumns(sheet.kit, half, "box"),
  ];
  const left = put(
    [
      maker.figure(sheet.plan, "From above", half, share),
      maker.heading("Readings to check, at ISO as set", half),
      ...(sheet.readings.length > 0 ? [] : maker.text(noReadings, half, { size: SIZE * letters }, 1)),
      ...(sheet.readings.length === 0
        ? []
        : maker.table(
            half,
            [
              ["Where", 2.7],
              ["Meter", 2.2],
              ["Reads", 1.3],
              ["Actual", 1],
              ["Off by", 1],
              ["", 0.4],
            ],
            sheet.readings.map(({ where, meter, reads }) => [
              { text: where },
              { text: meter },
              { text: reads, strong: true },
              "blank",
              "blank",
              "box",
            ]),
          )),
      ...(bringsLeft(sheet) ? bring() : []),
    ],
    MARGIN,
    head.end,
  );
  const right = put(
    [
      maker.figure(sheet.side, "From camera-right", half, share),
      maker.heading("Camera", half),
      ...maker.table(
        half,
        [
          ["Setting", 1],
          ["Value", 2],
        ],
        sheet.camera.map(([name, value]) => [{ text: name }, { text: value }]),
      ),
      ...(sheet.places.length === 0
        ? []
        : [
            maker.heading("Set, from the mark", half),
            ...maker.table(
              half,
              [
                ["Middle of", 1.4],
                ["Along the lens", 2],
                ["Across", 1.2],
                ["Up", 1],
              ],
              sheet.places.map((place) => {
                const across = sideWays(place.right);
                return [
                  { text: place.what },
                  { text: place.away },
                  { text: across.metric, small: across.feet },
                  both(place.up),
                ];
              }),
            ),
          ]),
      ...(bringsLeft(sheet) ? [] : bring()),
    ],
    MARGIN + half + GUTTER,
    head.end,
  );
  const tail = put(
    [
      ...maker.list("Build", sheet.build, whole),
      ...(sheet.warnings.length === 0
        ? []
        : [
            maker.heading("Warnings", whole),
            ...sheet.warnings.map((warning) => {
              const { lead, text } = warningWords(warning);
              return maker.bullet(maker.led(lead, text, whole - INDENT, warning.severity === "stop"));
            }),
          ]),
      maker.heading("Take care", whole),
      ...sheet.cautions.map((line) => maker.bullet(maker.one(line, whole - INDENT))),
      ...(maker.all().every(hasAll)
        ? []
        : maker.text(
            "Signs that these letters lack are printed as boxes; the sheet as HTML shows them in the letters of the machine.",
            whole,
            { size: SMALL },
            0,
          )),
    ],
    MARGIN,
    lower(left.end, right.end),
  );
  return pagesOf(
    [...head.placed, ...left.placed, ...right.placed, ...tail.placed],
    width,
    height,
    sheet.title,
  );
}

const both = (value: BothWays | null): Cell =>
  value === null ? { text: "-" } : { text: value.metric, small: value.feet };

const INDENT = 9;
/** Of the space round a figure, px. */
const SPARE = 10;

/** Makes the blocks of a sheet, and remembers the texts in them. */
function makerOf(widthOf: TextWidth, size: number) {
  const texts: string[] = [];
  const safe = (text: string): string => {
    const shown = visibleLine(text);
    texts.push(shown);
    return shown;
  };
  const one = (text: string, width: number): Block =>
    paragraph(wrapText(widthOf, safe(text), size, width), { size }, 1);
  const heading = (title: string, width: number): Block => {
    const above = 5 * (size / SIZE);
    const large = 9 * (size / SIZE);
    return {
      height: above + lineHeight(large) + 2.5,
      keeps: true,
      draw: ([x, y]) => [
        lineAt(title, [x, y + above], { size: large, strong: true }),
        ruleAt(x, y + above + 0.6 + lineHeight(large), width, 0.85, 1),
      ],
    };
  };
  const bullet = (block: Block): Block => ({
    height: block.height,
    draw: ([x, y]) => [lineAt("•", [x + 1.5, y], { size }), ...block.draw([x + INDENT, y])],
  });
  /** A text whose first words stand out. */
  const led = (lead: string, text: string, width: number, strong = true): Block => {
    const lines = wrapText(widthOf, safe(`${lead}${text}`), size, width);
    const [first = "", ...rest] = lines;
    const start = lead.trim();
    if (!strong || !first.startsWith(start)) return paragraph(lines, { size }, 1);
    const more = paragraph(rest, { size }, 1);
    const step = lineHeight(size);
    return {
      height: step + more.height,
      draw: ([x, y]) => [
        lineAt(start, [x, y], { size, strong: true }),
        lineAt(first.slice(start.length).trimStart(), [x + widthOf(`${start} `, size), y], { size }),
        ...more.draw([x, y + step]),
      ],
    };
  };
  const twoColumns = (items: readonly string[], width: number, mark: "box" | "dot"): readonly Block[] => {
    const each = (width - GUTTER / 2) / 2;
    const indent = mark === "box" ? BOX + 4 : INDENT;
    const blocks = items.map((item): Block => {
      const text = one(item, each - indent);
      if (mark === "dot") return bullet(text);
      return {
        height: Math.max(text.height, BOX + 2.5),
        draw: ([x, y]) => [boxAt([x, y + (lineHeight(size) - BOX) / 2], BOX), ...text.draw([x + indent, y])],
      };
    });
    return inColumns(blocks, each + GUTTER / 2);
  };
  return {
    all: (): readonly string[] => texts,
    one,
    led,
    bullet,
    heading,
    twoColumns,
    text: (
      text: string,
      width: number,
      style: Parameters<typeof paragraph>[1],
      under: number,
    ): readonly Block[] => [paragraph(wrapText(widthOf, safe(text), style.size, width), style, under)],
    list: (title: string, items: readonly string[], width: number): readonly Block[] =>
      items.length === 0 ? [] : [heading(title, width), ...twoColumns(items, width, "dot")],
    table: (
      width: number,
      columns: readonly (readonly [title: string, part: number])[],
      rows: readonly (readonly Cell[])[],
    ): readonly Block[] =>
      tableBlocks(
        widthOf,
        width,
        columns.map(([title, part]) => ({ title, part })),
        rows.map((cells) =>
          cells.map((cell): Cell => {
            if (typeof cell === "string") return cell;
            const { small } = cell;
            return {
              ...cell,
              text: safe(cell.text),
              ...(small === undefined ? {} : { small: safe(small) }),
            };
          }),
        ),
        { size },
      ),
    figure: (drawing: Drawing, what: string, width: number, share: number): Block => {
      const scale = sheetScale(drawing, (share * width) / POINTS, share * HIGH);
      const page = figurePage(drawing, { width: widthToScale(drawing, scale), bare: true });
      const caption = wrapText(
        widthOf,
        safe(`${what}, 1:${scale} where the page is printed at its full size`),
        size,
        width,
      );
      const under = paragraph(caption, { size, tone: 0.8 }, 2);
      for (const item of page.items) if (item.kind === "text") safe(item.text);
      // The page of a figure has some space all round it, of which a sheet needs less.
      const high = (page.height - 2 * SPARE) * POINTS;
      return {
        height: high + under.height,
        draw: ([x, y]) => [
          ...page.items.map((item) => inPoints(item, [x, y - SPARE * POINTS])),
          ...under.draw([x, y + high]),
        ],
      };
    },
  };
}

/** The longest list that is one block in two columns, pt; a longer one may be cut between pairs. */
const LONG = 300;

/** Blocks in two columns: down the first and then down the second where there are few, else in pairs. */
function inColumns(blocks: readonly Block[], second: number): readonly Block[] {
  const heightOf = (part: readonly Block[]): number => part.reduce((sum, { height }) => sum + height, 0);
  const split = blocks.findIndex((_, i) => heightOf(blocks.slice(0, i + 1)) >= heightOf(blocks.slice(i + 1)));
  const [a, b] = [blocks.slice(0, split + 1), blocks.slice(split + 1)];
  if (heightOf(a) < LONG)
    return [
      beside([
        [0, stacked(a)],
        [second, stacked(b)],
      ]),
    ];
  const rows = Math.ceil(blocks.length / 2);
  return Array.from({ length: rows }, (_, i) =>
    beside([
      [0, stacked(blocks.slice(i, i + 1))],
      [second, stacked(blocks.slice(rows + i, rows + i + 1))],
    ]),
  );
}

function pagesOf(
  placed: readonly Placed[],
  width: number,
  height: number,
  title: string,
): readonly PaperPage[] {
  const count = 1 + Math.max(0, ...placed.map(({ page }) => page));
  return Array.from({ length: count }, (_, number) => ({
    width,
    height,
    items: [
      ...placed.filter(({ page }) => page === number).flatMap(({ items }) => items),
      ...(count === 1
        ? []
        : [
            lineAt(`${visibleLine(title)}, page ${number + 1} of ${count}`, [MARGIN, height - TOP + 3], {
              size: SMALL,
            }),
          ]),
    ],
  }));
}
