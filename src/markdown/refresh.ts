import { partsMarkdown } from "../index.js";
import { answer, problemAt } from "./answer.js";
import { type MarkedBlock, marksOf } from "./marks.js";
import { readOrder } from "./order.js";
import type { PageOptions, PageProblem } from "./page.js";

/** A marked block of a page after it was worked out. */
export interface RefreshedBlock {
  /** Line of its opening mark, from 1. */
  readonly line: number;
  /** What the mark asks for. */
  readonly order: string;
  /** Whether it held something else than what it holds now. */
  readonly stale: boolean;
}

/** A page with its blocks refreshed, and what is wrong. A block that is wrong is left as it is. */
export interface Refreshed {
  readonly text: string;
  readonly blocks: readonly RefreshedBlock[];
  readonly problems: readonly PageProblem[];
}

/**
 * Works out the marked blocks of a page anew:
 *
 * ```text
 * <!-- halfshade table "Walk the lamp in" of "loom.light" -->
 * <!-- /halfshade -->
 * ```
 *
 * What stands between the marks is replaced; every other byte of the page stays, and lines end as at the opening mark.
 * Pure: files are read by the reader of the options alone.
 */
export function refreshPage(text: string, options: PageOptions = {}): Refreshed {
  const { blocks, problems } = marksOf(text);
  const wrong: PageProblem[] = problems.map(({ line, message }) => problemAt(options, line, message));
  // Where marks do not fit together, it is not known what stands between which.
  if (wrong.length > 0) {
    for (const problem of wrong) options.onProblem?.(problem);
    return { text, blocks: [], problems: wrong };
  }
  const done: RefreshedBlock[] = [];
  const pieces: string[] = [];
  let at = 0;
  for (const block of blocks) {
    const made = contentOf(block, options);
    if (typeof made !== "string") {
      wrong.push(made);
      continue;
    }
    pieces.push(text.slice(at, block.start), made);
    at = block.end;
    const stale = made !== text.slice(block.start, block.end);
    done.push({ line: block.line, order: block.order.trim(), stale });
  }
  for (const problem of wrong) options.onProblem?.(problem);
  return {
    text: [...pieces, text.slice(at)].join(""),
    blocks: done,
    problems: wrong.sort((a, b) => a.line - b.line),
  };
}

/** What stands between the marks: the view with an empty line on either side. */
function contentOf({ line, order: text, lineEnd }: MarkedBlock, options: PageOptions): string | PageProblem {
  const { order, problem } = readOrder(text);
  if (order === undefined) return problemAt(options, line, problem);
  const made = answer(order, { line, text: null }, options);
  if (made.problem !== undefined) return made.problem;
  return `\n${partsMarkdown(made.parts)}\n`.replaceAll(/\r\n|\r|\n/g, lineEnd);
}
