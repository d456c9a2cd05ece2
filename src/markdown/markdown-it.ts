import { partsHtml } from "../index.js";
import { fenceParts } from "./fence.js";
import type { PageOptions } from "./page.js";

/** What is asked of a token of markdown-it. */
export interface PageToken {
  readonly info: string;
  readonly content: string;
  readonly map: readonly [from: number, to: number] | readonly number[] | null;
}

type Rule = (tokens: never, index: number, options: never, env: never, self: never) => string;

/** What is asked of markdown-it. */
export interface PagePrinter {
  readonly renderer: { readonly rules: { fence?: Rule | undefined } };
}

/**
 * A plugin of markdown-it: every fence ` ```halfshade ` of a page becomes its report, table or figure, as HTML without
 * scripts and addresses. What is wrong stands in the page in place of the fence. Other fences are left to the rule that
 * was there before.
 */
export function markdownItHalfshade(printer: PagePrinter, options: PageOptions = {}): void {
  const { rules } = printer.renderer;
  const before = rules.fence;
  rules.fence = (tokens, index, ...rest) => {
    const token = (tokens as readonly PageToken[])[index];
    const made =
      token === undefined
        ? null
        : fenceParts({ info: token.info, text: token.content, line: (token.map?.[0] ?? 0) + 1 }, options);
    if (made === null) return before?.(tokens, index, ...rest) ?? "";
    return partsHtml(made.parts);
  };
}
