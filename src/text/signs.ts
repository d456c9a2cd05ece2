import type { TokenType } from "chevrotain";
import {
  characterAt,
  classOf,
  codeName,
  isDigit,
  isHidden,
  isNameStart,
  isSpace,
  nameEnd,
  OTHER,
  skipSpaces,
} from "./characters.js";
import * as kinds from "./kinds.js";
import { scanBarePoint } from "./numbers.js";
import { emit, replacing, report, type Scan } from "./scan.js";
import { lineEnd, reportHidden } from "./texts.js";
import { scanBy, scanWrongName } from "./words.js";

/** Reads a sign of the language. Gives the offset behind it. */
export function scanSign(scan: Scan, at: number): number {
  const text = scan.text;
  const next = text.charCodeAt(at + 1);
  switch (text.charAt(at)) {
    case ":":
      return one(scan, kinds.Colon, at);
    case ",":
      return one(scan, kinds.Comma, at);
    case ".":
      return isDigit(next) ? scanBarePoint(scan, at) : one(scan, kinds.Dot, at);
    case "{":
      return opening(scan, kinds.OpenBrace, at);
    case "}":
      return closing(scan, kinds.CloseBrace, at, 123);
    case "(":
      return opening(scan, kinds.OpenRound, at);
    case ")":
      return closing(scan, kinds.CloseRound, at, 40);
    case "[":
      return opening(scan, kinds.OpenSquare, at);
    case "]":
      return closing(scan, kinds.CloseSquare, at, 91);
    case "%":
      emit(scan, kinds.Percent, at, at + 1);
      scan.afterNumber = 3;
      return at + 1;
    case "?":
      return one(scan, kinds.Question, at);
    case "*":
      return one(scan, kinds.Times, at);
    case "-":
      return one(scan, kinds.Minus, at);
    case "+":
      if (next === 45) return two(scan, kinds.PlusMinus, at);
      if (next === 47 && text.charCodeAt(at + 2) === 45) return wrongTolerance(scan, at);
      return one(scan, kinds.Plus, at);
    case "/":
      if (next === 47) return wrongComment(scan, at, false);
      if (next === 42) return wrongComment(scan, at, true);
      return one(scan, kinds.Slash, at);
    case "<":
      if (next === 61) return two(scan, kinds.LessEqual, at);
      if (next === 62) return wrongOperator(scan, at, 2, null);
      return one(scan, kinds.Less, at);
    case ">":
      return next === 61 ? two(scan, kinds.GreaterEqual, at) : one(scan, kinds.Greater, at);
    default: // =
      if (next === 61) return two(scan, kinds.DoubleEquals, at);
      if (next === 60) return wrongOperator(scan, at, 2, kinds.LessEqual);
      if (next === 62) return wrongOperator(scan, at, 2, kinds.GreaterEqual);
      return one(scan, kinds.Equals, at);
  }
}

function one(scan: Scan, type: TokenType, at: number): number {
  emit(scan, type, at, at + 1);
  return at + 1;
}

function two(scan: Scan, type: TokenType, at: number): number {
  emit(scan, type, at, at + 2);
  return at + 2;
}

function opening(scan: Scan, type: TokenType, at: number): number {
  scan.open.push(scan.text.charCodeAt(at));
  scan.openAt.push(at);
  return one(scan, type, at);
}

function closing(scan: Scan, type: TokenType, at: number, partner: number): number {
  const place = scan.open.lastIndexOf(partner);
  if (place >= 0 && (partner === 123 || scan.open.lastIndexOf(123) < place)) {
    scan.open.length = place;
    scan.openAt.length = place;
  }
  return one(scan, type, at);
}

function wrongTolerance(scan: Scan, at: number): number {
  report(scan, "operator.tolerance", at, at + 3, {}, { fixes: [replacing(scan, at, at + 3, "+-", true)] });
  emit(scan, kinds.PlusMinus, at, at + 3, null, true);
  return at + 3;
}

function wrongOperator(scan: Scan, at: number, length: number, meant: TokenType | null): number {
  const sign = scan.text.slice(at, at + length);
  const right = meant === kinds.LessEqual ? "<=" : ">=";
  report(
    scan,
    "operator.unknown",
    at,
    at + length,
    { sign },
    {
      fixes: meant === null ? [] : [replacing(scan, at, at + length, right, true)],
    },
  );
  emit(scan, meant ?? kinds.Broken, at, at + length, null, true);
  return at + length;
}

function wrongComment(scan: Scan, at: number, block: boolean): number {
  const text = scan.text;
  const close = block ? text.indexOf("*/", at + 2) : -1;
  const end = !block ? lineEnd(text, at) : close < 0 ? text.length : close + 2;
  const inner = text.slice(at + 2, close < 0 ? end : close);
  const oneLine = !block || !/[\r\n]/.test(inner);
  const endsLine = /^[\r\n]?$/.test(text.charAt(skipSpaces(text, end)));
  report(
    scan,
    "comment.sign",
    at,
    at + 2,
    {},
    {
      fixes: oneLine && endsLine ? [replacing(scan, at, end, `# ${inner.trim()}`, true)] : [],
    },
  );
  reportHidden(scan, at + 2, end);
  scan.comments.push({ image: text.slice(at, end), startOffset: at, endOffset: end - 1 });
  return end;
}

/** Reads a character that is no letter, digit, blank or sign of the language. Gives the offset behind it. */
export function scanOther(scan: Scan, at: number): number {
  const text = scan.text;
  const character = characterAt(text, at);
  switch (character) {
    case ";":
      return semicolon(scan, at);
    case "!":
      return wrongOperator(scan, at, text.charAt(at + 1) === "=" ? 2 : 1, null);
    case "_":
      return scanWrongName(scan, at);
    case "'":
      return singleQuotes(scan, at);
    case "−":
      return one(scan, kinds.Minus, at);
    case "±":
      return one(scan, kinds.PlusMinus, at);
    case "≤":
      return one(scan, kinds.LessEqual, at);
    case "≥":
      return one(scan, kinds.GreaterEqual, at);
    case "≠":
    case "≈":
      return wrongOperator(scan, at, 1, null);
    case "×": {
      const end = scan.afterNumber > 0 ? scanBy(scan, at) : 0;
      if (end > 0) return end;
      break;
    }
    case "°":
    case "º":
      emit(scan, kinds.Degree, at, at + 1);
      scan.afterNumber = 3;
      return at + 1;
    case "“":
    case "”":
    case "„":
    case "«":
    case "»":
    case "‘":
    case "’":
    case "‚":
      return curlyQuotes(scan, at);
  }
  if (isHidden(text, at)) {
    let end = at + 1;
    while (end < text.length && isHidden(text, end)) end++;
    reportHidden(scan, at, end);
    return end;
  }
  return unknown(scan, at, character);
}

const lookAlikes: ReadonlyMap<string, string> = new Map([
  ["–", "-"],
  ["—", "-"],
  ["‐", "-"],
  ["‑", "-"],
  ["⁄", "/"],
  ["∕", "/"],
  ["÷", "/"],
  ["·", "*"],
  ["⋅", "*"],
  ["∶", ":"],
  ["：", ":"],
  ["，", ","],
  ["（", "("],
  ["）", ")"],
  ["｛", "{"],
  ["｝", "}"],
  ["＝", "="],
  ["％", "%"],
  ["×", "*"],
]);

function unknown(scan: Scan, at: number, character: string): number {
  const text = scan.text;
  let end = at + character.length;
  while (end < text.length && isUnknown(text, end)) end += characterAt(text, end).length;
  const single = end === at + character.length;
  const right = single ? lookAlikes.get(character) : undefined;
  const shown = text.slice(at, Math.min(end, at + 12));
  report(
    scan,
    "character.unknown",
    at,
    end,
    { character: single ? character : shown },
    {
      ...(right === undefined ? {} : { fixes: [replacing(scan, at, end, right, false)] }),
      label: single && character.codePointAt(0)! > 0x2000 ? codeName(text, at) : "",
    },
  );
  emit(scan, kinds.Broken, at, end, null, true);
  return end;
}

/** Whether `scanOther` would call the character at `at` unknown and nothing better. */
function isUnknown(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 128) return classOf(code) === OTHER && !"\"#`;!_'".includes(text.charAt(at));
  if (isSpace(code) || isNameStart(text, at) || isHidden(text, at)) return false;
  return nameEnd(text, at) === at && !"−±≤≥≠≈×°º“”„«»‘’‚½⅓⅔¼¾".includes(text.charAt(at));
}

/** `;` ends a line here as well, so that what follows can be read. */
function semicolon(scan: Scan, at: number): number {
  const text = scan.text;
  const rest = text.slice(at + 1, Math.min(text.length, at + 200));
  const endsLine = /^[ \t]*(?:[\r\n#]|$)/.test(rest);
  const inBraces = scan.open[scan.open.length - 1] === 123;
  report(
    scan,
    "line.semicolon",
    at,
    at + 1,
    {},
    {
      fixes: endsLine
        ? [replacing(scan, at, at + 1, "", true)]
        : inBraces
          ? [replacing(scan, at, at + 1, ",", false)]
          : [],
    },
  );
  if (!endsLine) emit(scan, kinds.NewLine, at, at + 1, null, true);
  return at + 1;
}

function singleQuotes(scan: Scan, at: number): number {
  const text = scan.text;
  let close = at + 1;
  while (close < text.length && !"'\r\n".includes(text.charAt(close))) close++;
  if (text.charAt(close) !== "'") return unknown(scan, at, "'");
  return wrongText(scan, "text.single-quotes", at, close, close + 1);
}

function curlyQuotes(scan: Scan, at: number): number {
  const text = scan.text;
  let close = at + 1;
  while (close < text.length && !'“”«»‘’"\r\n'.includes(text.charAt(close))) close++;
  const closed = close < text.length && !"\r\n".includes(text.charAt(close));
  return wrongText(scan, "text.curly-quotes", at, close, closed ? close + 1 : close);
}

function wrongText(
  scan: Scan,
  code: "text.curly-quotes" | "text.single-quotes",
  start: number,
  close: number,
  end: number,
): number {
  const inner = scan.text.slice(start + 1, close);
  const right = `"${inner.replaceAll(/["\\]/g, "\\$&")}"`;
  report(scan, code, start, end, {}, { fixes: [replacing(scan, start, end, right, close < end)] });
  reportHidden(scan, start + 1, close);
  emit(scan, kinds.Text, start, end, inner, true);
  return end;
}
