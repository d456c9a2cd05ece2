import type { PaperItem } from "../../core/paper.js";
import type { Block } from "./blocks.js";

/** A place in the flow of pages: the number of the page from 0, and how far down. */
export interface Spot {
  readonly page: number;
  readonly y: number;
}

/** What lies on which page. */
export interface Placed {
  readonly page: number;
  readonly items: readonly PaperItem[];
}

/** Blocks put below one another, and where they end. */
export interface Flow {
  readonly placed: readonly Placed[];
  readonly end: Spot;
}

/**
 * Puts blocks below one another in a column, from a place on, and goes on at the top of the next page where one does not
 * fit any more. A block that is higher than a page runs over its foot.
 *
 * @param x - Left edge of the column.
 */
export function flow(
  blocks: readonly Block[],
  x: number,
  from: Spot,
  { top, foot }: { readonly top: number; readonly foot: number },
): Flow {
  const placed: Placed[] = [];
  let { page, y } = from;
  blocks.forEach((block, i) => {
    const next = block.keeps === true ? (blocks[i + 1]?.height ?? 0) : 0;
    if (y > top && y + block.height + next > foot) {
      page++;
      y = top;
      const { again } = block;
      if (again !== undefined) {
        placed.push({ page, items: again.draw([x, y]) });
        y += again.height;
      }
    }
    placed.push({ page, items: block.draw([x, y]) });
    y += block.height;
  });
  return { placed, end: { page, y } };
}

/** The lower of two places. */
export const lower = (a: Spot, b: Spot): Spot =>
  a.page > b.page || (a.page === b.page && a.y > b.y) ? a : b;
