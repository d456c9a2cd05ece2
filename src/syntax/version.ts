import { placeIn, type Span } from "../core/span.js";
import { finding } from "../diagnostics/create.js";
import type { Fix, Sink } from "../diagnostics/diagnostic.js";
import { Fraction, NewLine, Numeral } from "../text/kinds.js";
import type { Token } from "../text/token.js";
import { spanOf } from "./build.js";
import { nearest } from "./near.js";
import { isWord } from "./token-classes.js";

/** The version of the language that this program reads. */
export const LANGUAGE_VERSION = 1;

/** The word of the first line. */
export const LANGUAGE_WORD = "halfshade";

/**
 * Checks the line that names the language: `halfshade 1` before anything else. Gives false when the file is of a
 * newer version, in which case nothing else of it is to be read.
 */
export function checkVersion(file: string, text: string, tokens: readonly Token[], sink: Sink): boolean {
  const first = tokens[0]?.tokenType === NewLine ? 1 : 0;
  const word = tokens[first];
  const number = tokens[first + 1];
  const fix = (span: Span, right: string): Fix => ({
    title: `write \`${right.trim()}\``,
    certain: true,
    edits: [{ place: placeIn(file, span), text: right }],
  });
  const isNumber = number !== undefined && (number.tokenType === Numeral || number.tokenType === Fraction);
  const isOurs = word?.image === LANGUAGE_WORD;
  if (word === undefined || !isWord(word) || (!isOurs && !isNumber)) {
    const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
    const fixes = [fix({ start, end: start }, `${LANGUAGE_WORD} ${LANGUAGE_VERSION}\n`)];
    sink(finding("header.missing", placeIn(file, { start, end: start }), {}, { fixes }));
    return true;
  }
  if (!isOurs) {
    const near = nearest(word.image, [LANGUAGE_WORD]) !== null;
    const fixes = near ? [fix(spanOf(word), LANGUAGE_WORD)] : [];
    sink(finding("header.word", placeIn(file, spanOf(word)), {}, { fixes }));
    return true;
  }
  const span = isNumber ? spanOf(number) : { start: spanOf(word).end, end: spanOf(word).end };
  const version =
    isNumber && number.tokenType === Numeral && /^\d+$/.test(number.image) ? Number(number.image) : 0;
  if (version > LANGUAGE_VERSION) {
    const written = number?.image ?? "";
    sink(
      finding("header.newer", placeIn(file, span), {
        version: written,
        known: LANGUAGE_VERSION,
      }),
    );
    return false;
  }
  if (version < 1) {
    const fixes = [fix(span, isNumber ? `${LANGUAGE_VERSION}` : ` ${LANGUAGE_VERSION}`)];
    sink(finding("header.version", placeIn(file, span), {}, { fixes }));
  }
  return true;
}
