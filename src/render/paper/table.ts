import type { TextWidth } from "../../core/paper.js";
import { type Block, boxAt, lineAt, lineHeight, ruleAt, type Style, wrapText } from "./blocks.js";

/** A cell: a text, with a smaller one below it; or a box to tick, or a line to write on. */
export type Cell =
  | { readonly text: string; readonly small?: string; readonly strong?: true }
  | "box"
  | "blank";

/** Space above and below the text of a cell, and between columns, pt. */
const ABOVE = 0.9;
const ASIDE = 3.4;
/** Side of a box to tick, pt: 2.6 mm. */
export const BOX = 7.4;

/** A table as one block for each row. The head is written once more where a page begins. */
export function tableBlocks(
  widthOf: TextWidth,
  width: number,
  columns: readonly { readonly title: string; readonly part: number }[],
  rows: readonly (readonly Cell[])[],
  { size }: Style,
): readonly Block[] {
  const whole = columns.reduce((sum, { part }) => sum + part, 0);
  const lefts: number[] = [];
  let left = 0;
  for (const { part } of columns) {
    lefts.push(left);
    left += (part / whole) * width;
  }
  const room = (i: number): number => ((columns[i]?.part ?? 0) / whole) * width - ASIDE;
  const rowBlock = (cells: readonly Cell[], rule: number, tone: number): Block => {
    const written = cells.map((cell, i) => {
      if (typeof cell === "string") return { cell, lines: [], small: [] };
      return {
        cell,
        lines: wrapText(widthOf, cell.text, size, room(i)),
        small: cell.small === undefined ? [] : wrapText(widthOf, cell.small, size * 0.84, room(i)),
      };
    });
    const high = Math.max(
      ...written.map(
        ({ lines, small }) => lines.length * lineHeight(size) + small.length * lineHeight(size * 0.84),
      ),
      lineHeight(size),
    );
    const height = high + 2 * ABOVE;
    return {
      height,
      draw: ([x, y]) => [
        ruleAt(x, y + height, width, rule, tone),
        ...written.flatMap(({ cell, lines, small }, i) => {
          const at = x + (lefts[i] ?? 0);
          if (cell === "box") return [boxAt([at, y + ABOVE + (lineHeight(size) - BOX) / 2], BOX)];
          if (cell === "blank") return [ruleAt(at, y + height, room(i), 0.8, 1)];
          const style = cell.strong === true ? ({ size, strong: true } as const) : { size };
          return [
            ...lines.map((text, k) => lineAt(text, [at, y + ABOVE + k * lineHeight(size)], style)),
            ...small.map((text, k) =>
              lineAt(text, [at, y + ABOVE + lines.length * lineHeight(size) + k * lineHeight(size * 0.84)], {
                size: size * 0.84,
                tone: 0.8,
              }),
            ),
          ];
        }),
      ],
    };
  };
  const head: Block = {
    ...rowBlock(
      columns.map(({ title }): Cell => ({ text: title, strong: true })),
      0.6,
      1,
    ),
    keeps: true,
  };
  return [head, ...rows.map((cells): Block => ({ ...rowBlock(cells, 0.45, 0.45), again: head }))];
}
