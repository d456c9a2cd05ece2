import type { ReadKit, ViewPart } from "../index.js";

/** How a page is worked on. */
export interface PageOptions {
  /** The name of the page in messages, and where paths start from; `page` where it is not given. */
  readonly page?: string;
  /**
   * Reads recipes that the page names by `of`, and kits. Without it a page is all there is: no file is ever read. The
   * reader decides what may be read; paths are checked before it is asked.
   */
  readonly read?: ReadKit;
  /** Level of the topmost heading of a view, from 1 to 6; 2 where it is not given. */
  readonly headings?: number;
  /** Told of everything that is wrong, which also stands in the page. */
  readonly onProblem?: (problem: PageProblem) => void;
}

/** Something wrong in a page. */
export interface PageProblem {
  readonly page: string;
  /** Line of the page, from 1, of the fence or mark. */
  readonly line: number;
  /** What is wrong and what to do, in one or two sentences. */
  readonly message: string;
  /** Findings about the text of the recipe as the command prints them, with lines of the page or of the file named. */
  readonly findings: string | null;
}

/** What a fence or mark becomes: the view, or what is wrong. */
export type Answer =
  | { readonly parts: readonly ViewPart[]; readonly problem?: never }
  | { readonly parts?: never; readonly problem: PageProblem };
