import type { Source } from "../core/source.js";
import type { Diagnostic } from "../diagnostics/diagnostic.js";
import { parseFile } from "../syntax/parse.js";
import { hintsOf } from "./hints.js";
import { layOut } from "./layout.js";
import { type CanonicalUnit, piecesOf } from "./pieces.js";
import { saysTheSame } from "./same.js";

/** What the formatter needs to know from outside. */
export interface FormatOptions {
  /** A unit's usual spelling, `metres` to `m`; null for a word that is no unit. */
  readonly canonicalUnit: CanonicalUnit;
}

/** A formatted text, or why there is none. */
export interface Formatted {
  /** Null where the text has errors, or where the result would not say the same, which is our own mistake. */
  readonly text: string | null;
  /** What was found while reading the text. */
  readonly diagnostics: readonly Diagnostic[];
  /** Whether the text differs from its source. */
  readonly changed: boolean;
  /** True where the result said something else than the source, or lost a comment; nothing must be written then. */
  readonly fault: boolean;
}

/**
 * A text in the usual form: spaces, indents, spellings of signs and units. Comments, empty lines between things and
 * the author's line breaks stay; nothing is re-ordered. A text with errors is refused.
 *
 * The result is read again and compared with the source before it is given back. Formatting it again changes nothing.
 */
export function formatText(source: Source, options: FormatOptions): Formatted {
  const diagnostics: Diagnostic[] = [];
  const parsed = parseFile(source, (diagnostic) => diagnostics.push(diagnostic));
  if (!parsed.complete) return { text: null, diagnostics, changed: false, fault: false };
  const hints = hintsOf(parsed.file);
  const pieces = piecesOf(source.text, parsed.tokens, parsed.comments, hints, options.canonicalUnit);
  const text = layOut(pieces, hints);
  const again = parseFile({ name: source.name, text }, () => {});
  const same =
    again.complete &&
    again.comments.length === parsed.comments.length &&
    saysTheSame(parsed.file, again.file, options.canonicalUnit);
  if (!same) return { text: null, diagnostics, changed: false, fault: true };
  return { text, diagnostics, changed: text !== source.text, fault: false };
}
