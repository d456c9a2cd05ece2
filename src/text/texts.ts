import { MAX_DEPTH } from "../core/limits.js";
import { codeName, isHidden, nameEnd } from "./characters.js";
import { Quoted, Text, TextBlock } from "./kinds.js";
import { emit, replacing, report, type Scan } from "./scan.js";

const QUOTE = 34;
const BACKSLASH = 92;
const BACKTICK = 96;

/** Offset of the line end at or after `at`. */
export function lineEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    if (code === 10 || code === 13) break;
    end++;
  }
  return end;
}

/** Reports every hidden character from `start` to `end`. Each is reported once, runs of them as one. */
export function reportHidden(scan: Scan, start: number, end: number): boolean {
  let found = false;
  for (let at = start; at < end; at++) {
    const code = scan.text.charCodeAt(at);
    if (code >= 32 && code < 127) continue;
    if (!isHidden(scan.text, at)) continue;
    const first = at;
    while (at + 1 < end && isHidden(scan.text, at + 1)) at++;
    report(
      scan,
      "text.hidden",
      first,
      at + 1,
      { character: codeName(scan.text, first) },
      {
        fixes: [replacing(scan, first, at + 1, "", false)],
      },
    );
    found = true;
  }
  return found;
}

/** Reads a text from its opening mark on; `start` is the mark. Gives the offset behind it. */
export function scanText(scan: Scan, start: number): number {
  const text = scan.text;
  if (text.charCodeAt(start + 1) === QUOTE && text.charCodeAt(start + 2) === QUOTE)
    return scanBlock(scan, start);
  let at = start + 1;
  let plain = true;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === QUOTE || code === 10 || code === 13) break;
    if (code === BACKSLASH) {
      plain = false;
      const next = text.charCodeAt(at + 1);
      if (next === 10 || next === 13 || Number.isNaN(next)) continue;
      at++;
    } else if (code < 32 || code > 126) plain = false;
  }
  const closed = text.charCodeAt(at) === QUOTE;
  if (!closed) at = beforeClosers(scan, start, at);
  const end = closed ? at + 1 : at;
  let broken = !closed;
  if (!closed) {
    report(
      scan,
      "text.unclosed",
      start,
      end,
      {},
      {
        fixes: [
          { title: 'put `"` at the end of the line', certain: false, edits: [insertion(scan, end, '"')] },
        ],
      },
    );
  }
  let value = text.slice(start + 1, at);
  if (!plain) {
    if (reportHidden(scan, start + 1, at)) broken = true;
    if (reportEscapes(scan, start + 1, at)) broken = true;
    value = resolveEscapes(value);
  }
  emit(scan, Text, start, end, value, broken);
  return end;
}

/**
 * Where an unclosed text probably ends: before the brackets at the end of the line that close what was opened on it.
 */
function beforeClosers(scan: Scan, start: number, end: number): number {
  const text = scan.text;
  const places: number[] = [];
  for (let at = end; at > start + 1 && places.length < Math.min(scan.open.length, MAX_DEPTH); at--) {
    const character = text.charAt(at - 1);
    if (character === ")" || character === "]" || character === "}") places.unshift(at - 1);
    else if (character !== " " && character !== ",") break;
  }
  while (places.length > 0 && !places.every((place, index) => closes(scan, text.charCodeAt(place), index))) {
    places.shift();
  }
  let result = places[0] ?? end;
  while (result < end && result > start + 1 && text.charAt(result - 1) === " ") result--;
  return result;
}

/** Whether a closing bracket fits the bracket opened on this line, counted from the innermost. */
function closes(scan: Scan, closer: number, fromInnermost: number): boolean {
  const depth = scan.open.length - 1 - fromInnermost;
  const opener = scan.open[depth] ?? 0;
  return (scan.openAt[depth] ?? -1) >= scan.lineStart && closer === (opener === 40 ? 41 : opener + 2);
}

function scanBlock(scan: Scan, start: number): number {
  const text = scan.text;
  let at = start + 3;
  let closed = false;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) at++;
    else if (code === QUOTE && text.charCodeAt(at + 1) === QUOTE && text.charCodeAt(at + 2) === QUOTE) {
      closed = true;
      break;
    }
  }
  const inner = Math.min(at, text.length);
  const end = closed ? inner + 3 : inner;
  let broken = !closed;
  if (!closed) report(scan, "text.unclosed", start, start + 3, {});
  if (reportHidden(scan, start + 3, inner)) broken = true;
  if (reportEscapes(scan, start + 3, inner)) broken = true;
  emit(scan, TextBlock, start, end, blockValue(text.slice(start + 3, inner)), broken);
  return end;
}

/** Reads a name in backticks. */
export function scanQuotedName(scan: Scan, start: number): number {
  const text = scan.text;
  let at = start + 1;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (code === BACKTICK || code === 10 || code === 13) break;
    at++;
  }
  const closed = text.charCodeAt(at) === BACKTICK;
  if (!closed) at = nameEnd(text, start + 1);
  const end = closed ? at + 1 : at;
  let broken = true;
  if (!closed) report(scan, "name.unclosed", start, end, {});
  else if (at === start + 1) report(scan, "name.empty", start, end, {});
  else broken = reportHidden(scan, start + 1, at);
  emit(scan, Quoted, start, end, text.slice(start + 1, at).normalize("NFC"), broken);
  return end;
}

function insertion(scan: Scan, at: number, text: string) {
  return { place: { file: scan.file, start: at, end: at }, text };
}

const escapeLook = /\\(?:u\{([0-9a-fA-F]{1,6})\}|[\s\S])/g;

function escaped(whole: string, hex: string | undefined): string | null {
  if (hex !== undefined) {
    const point = Number.parseInt(hex, 16);
    return point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff) ? null : String.fromCodePoint(point);
  }
  switch (whole.charAt(1)) {
    case "n":
      return "\n";
    case "t":
      return "\t";
    case '"':
      return '"';
    case "\\":
      return "\\";
    default:
      return null;
  }
}

function reportEscapes(scan: Scan, start: number, end: number): boolean {
  let found = false;
  for (const match of scan.text.slice(start, end).matchAll(escapeLook)) {
    if (escaped(match[0], match[1]) !== null) continue;
    const at = start + match.index;
    const shown = match[0].trim() === "\\" ? "\\" : match[0];
    report(scan, "text.escape", at, at + match[0].length, { escape: shown });
    found = true;
  }
  return found;
}

function resolveEscapes(text: string): string {
  return text.replace(escapeLook, (whole, hex: string | undefined) => escaped(whole, hex) ?? whole.slice(1));
}

/**
 * The value of a text of several lines, from what stands between its marks. A line end right behind the opening
 * marks does not count. Where the closing marks stand on a line of their own, that line does not count either, and
 * what stands before the marks is taken off the front of every line as far as it is there.
 */
export function blockValue(inner: string): string {
  let lines = inner.split(/\r\n|\r|\n/);
  if (lines.length > 1) {
    const last = lines[lines.length - 1] ?? "";
    if (last.trim() === "") {
      lines = lines.slice(0, -1).map((line, index) => (index === 0 ? line : withoutFront(line, last)));
    }
    if ((lines[0] ?? "").trim() === "") lines = lines.slice(1);
  }
  return resolveEscapes(lines.join("\n"));
}

function withoutFront(line: string, front: string): string {
  let count = 0;
  while (count < front.length && line.charCodeAt(count) === front.charCodeAt(count)) count++;
  return line.slice(count);
}
