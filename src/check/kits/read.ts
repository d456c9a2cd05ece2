import type { Source } from "../../core/source.js";
import type { Diagnostic } from "../../diagnostics/diagnostic.js";

/** The text of a kit, or the finding that says why there is none. */
export type KitText =
  | { readonly source: Source; readonly problem?: never }
  | { readonly source?: never; readonly problem: Diagnostic };

/**
 * Gives the text that a `use` names.
 * @param path - What the `use` says, relative to the file that says it. It has no scheme, drive, pattern or hidden sign.
 * @param from - The name of the source that says it.
 * @returns The text under one name for one file, however it is reached, so that it is read once and a circle is seen.
 */
export type ReadKit = (path: string, from: string) => KitText;
