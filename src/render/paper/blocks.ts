import type { PaperItem, PaperPlace, PaperText, TextWidth } from "../../core/paper.js";

/** A piece of a page that is not cut: so high, drawn at its upper left corner. */
export interface Block {
  readonly height: number;
  readonly draw: (at: PaperPlace) => readonly PaperItem[];
  /** True for a heading, which does not stay behind at the foot of a page. */
  readonly keeps?: true;
  /** What is drawn once more where this block is the first of a page: the head of a table. */
  readonly again?: Block;
}

/** How a text is written. */
export interface Style {
  readonly size: number;
  readonly strong?: true;
  /** 0 to 1; the strongest where left out. */
  readonly tone?: number;
}

/** A line is this many times as high as its letters. */
const LEADING = 1.24;

/** The height of a line of text. */
export const lineHeight = (size: number): number => LEADING * size;

/**
 * A text in lines that are no wider than so much: broken between words, else behind a dot, a dash or the like within a
 * name, else anywhere.
 */
export function wrapText(widthOf: TextWidth, text: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  const put = (part: string, gap: string, finer: ((part: string) => readonly string[])[]): void => {
    const longer = line === "" ? part : line + gap + part;
    if (widthOf(longer, size) <= width) {
      line = longer;
      return;
    }
    const [cut, ...rest] = finer;
    if (cut === undefined || widthOf(part, size) <= width) {
      if (line !== "") lines.push(line);
      line = part;
      return;
    }
    if (gap !== "" && line !== "") {
      lines.push(line);
      line = "";
    }
    for (const piece of cut(part)) put(piece, "", rest);
  };
  const words = text.split(/\s+/).filter((part) => part !== "");
  for (const word of words) put(word, " ", [(part) => part.split(/(?<=[._-])/), (part) => [...part]]);
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}

/** One line of text whose upper left corner is at a place. */
export const lineAt = (text: string, [x, y]: PaperPlace, { size, strong, tone = 1 }: Style): PaperText => ({
  kind: "text",
  text,
  at: [x, y + lineHeight(size) / 2],
  size,
  anchor: "start",
  tone,
  strong: strong === true,
  turn: 0,
  clear: false,
});

/** A level line. */
export const ruleAt = (x: number, y: number, wide: number, width: number, tone: number): PaperItem => ({
  kind: "path",
  rings: [
    [
      [x, y],
      [x + wide, y],
    ],
  ],
  closed: false,
  fill: null,
  stroke: { tone, width, dash: [] },
  corners: "plain",
});

/** A box to tick. */
export const boxAt = ([x, y]: PaperPlace, side: number): PaperItem => ({
  kind: "path",
  rings: [
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
  ],
  closed: true,
  fill: null,
  stroke: { tone: 1, width: 0.8, dash: [] },
  corners: "plain",
});

/** Lines of text below one another, with some space under them. */
export function paragraph(lines: readonly string[], style: Style, under = 0): Block {
  const step = lineHeight(style.size);
  return {
    height: lines.length * step + under,
    draw: ([x, y]) => lines.map((text, i) => lineAt(text, [x, y + i * step], style)),
  };
}

/** Blocks beside each other at their own distances from the left: as high as the highest. */
export function beside(parts: readonly (readonly [left: number, block: Block])[], under = 0): Block {
  return {
    height: Math.max(0, ...parts.map(([, { height }]) => height)) + under,
    draw: ([x, y]) => parts.flatMap(([left, block]) => block.draw([x + left, y])),
  };
}

/** Blocks below one another, as one that is not cut. */
export function stacked(blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, { height }) => sum + height, 0),
    draw: ([x, y]) => {
      let top = y;
      return blocks.flatMap((block) => {
        const items = block.draw([x, top]);
        top += block.height;
        return items;
      });
    },
  };
}
