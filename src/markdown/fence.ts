import type { ViewPart } from "../index.js";
import { answer, problemAt, problemParts } from "./answer.js";
import { readOrder } from "./order.js";
import type { PageOptions, PageProblem } from "./page.js";

/** The word that a fence starts with. */
const NAME = "halfshade";

/** A fence of a page. */
export interface Fence {
  /** What stands behind the opening backticks. */
  readonly info: string;
  readonly text: string;
  /** Line of the opening backticks, from 1. */
  readonly line: number;
}

/** What a fence becomes, and what is wrong with it. */
export interface FenceParts {
  readonly parts: readonly ViewPart[];
  readonly problem: PageProblem | null;
}

/** What a fence becomes; null for one that is not ours. */
export function fenceParts({ info, text, line }: Fence, options: PageOptions): FenceParts | null {
  const words = /^\s*(\S+)([\s\S]*)$/.exec(info);
  if (words?.[1] !== NAME) return null;
  const { order, problem } = readOrder(words[2] ?? "");
  const made =
    order === undefined
      ? { problem: problemAt(options, line, problem) }
      : answer(order, { line, text }, options);
  if (made.problem === undefined) return { parts: made.parts, problem: null };
  options.onProblem?.(made.problem);
  return { parts: problemParts(made.problem), problem: made.problem };
}
