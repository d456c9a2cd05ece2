import { MAX_SOURCE_BYTES, MAX_TOKENS } from "../core/limits.js";
import type { Source } from "../core/source.js";
import { utf8Size } from "../core/utf8-size.js";
import type { Sink } from "../diagnostics/diagnostic.js";
import {
  CONTROL,
  classOf,
  DIGIT,
  isNameStart,
  isWideSpace,
  LETTER,
  LINE_END,
  nameEnd,
  SIGN,
  SPACE,
} from "./characters.js";
import { NewLine } from "./kinds.js";
import { scanFractionSign, scanNumber } from "./numbers.js";
import { emit, lastType, report, type Scan } from "./scan.js";
import { scanOther, scanSign } from "./signs.js";
import { reportHidden, scanQuotedName, scanText } from "./texts.js";
import type { Lexed } from "./token.js";
import { scanWord, scanWrongName } from "./words.js";

/**
 * Turns a text into tokens and comments. Every mistake of letters, numbers, texts and signs is reported here, and a
 * token that stands for what was meant goes on to the parser. Takes time proportional to the text. Never throws.
 *
 * A row of line ends gives one `NewLine` token; blanks and comments give none.
 */
export function lex(source: Source, sink: Sink): Lexed {
  const text = source.text;
  const scan: Scan = {
    file: source.name,
    text,
    sink,
    tokens: [],
    comments: [],
    open: [],
    openAt: [],
    lineStart: 0,
    afterNumber: 0,
    found: 0,
  };
  const size = utf8Size(text);
  if (size > MAX_SOURCE_BYTES) {
    report(scan, "limit.size", 0, 0, { size, limit: MAX_SOURCE_BYTES });
    return { tokens: [], comments: [], whole: false };
  }
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < text.length) {
    if (scan.tokens.length >= MAX_TOKENS) {
      report(scan, "limit.tokens", at, at + 1, { limit: MAX_TOKENS });
      return { tokens: scan.tokens, comments: scan.comments, whole: false };
    }
    at = step(scan, at);
  }
  return { tokens: scan.tokens, comments: scan.comments, whole: true };
}

function step(scan: Scan, at: number): number {
  const text = scan.text;
  const code = text.charCodeAt(at);
  if (code >= 128) return wide(scan, at, code);
  switch (classOf(code)) {
    case SPACE:
      return at + 1;
    case LETTER:
      return scanWord(scan, at);
    case SIGN:
      return scanSign(scan, at);
    case DIGIT:
      return scanNumber(scan, at);
    case LINE_END:
      return newLine(scan, at, code);
    case CONTROL:
      return scanOther(scan, at);
  }
  switch (code) {
    case 34: // "
      return scanText(scan, at);
    case 35: // #
      return comment(scan, at);
    case 96: // `
      return scanQuotedName(scan, at);
  }
  return scanOther(scan, at);
}

function wide(scan: Scan, at: number, code: number): number {
  if (isWideSpace(code)) return at + 1;
  if (code === 0xba) return scanOther(scan, at);
  if (isNameStart(scan.text, at)) return scanWord(scan, at);
  const fraction = scanFractionSign(scan, at);
  if (fraction > 0) return fraction;
  if (nameEnd(scan.text, at) > at) return scanWrongName(scan, at);
  return scanOther(scan, at);
}

function newLine(scan: Scan, at: number, code: number): number {
  const end = code === 13 && scan.text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1;
  scan.lineStart = end;
  if (lastType(scan) === NewLine) return end;
  emit(scan, NewLine, at, end);
  return end;
}

function comment(scan: Scan, start: number): number {
  const text = scan.text;
  let end = start + 1;
  let plain = true;
  for (; end < text.length; end++) {
    const code = text.charCodeAt(end);
    if (code === 10 || code === 13) break;
    if (code < 32 || code > 126) plain = false;
  }
  if (!plain) reportHidden(scan, start, end);
  scan.comments.push({ image: text.slice(start, end), startOffset: start, endOffset: end - 1 });
  return end;
}
