import type { Draw } from "../model/random/draw.js";

/** Letters, signs and words that have broken readers of text before. */
const hostile = [
  ..."{}()[]\"'`#:;,.=<>+-*/%?!\\|&^~@$\n\r\t \0",
  ...["\u200b", "\u202e", "\ufeff", "\ud800", "é", "e\u0301", "灯", "💡", "−", "×", "½", "“", "°"],
  ...[
    "__proto__",
    "constructor",
    "toString",
    "like",
    "with",
    "is",
    "within",
    "surely",
    "x",
    "f/",
    "ISO ",
    "?",
    "of",
  ],
  ...[
    '"""',
    "{ {",
    "}}}",
    " = ",
    "+-",
    "..",
    "1/0",
    "3:1:2",
    "f/0",
    "ISO 0",
    "0 m",
    "-0 m",
    "K",
    "0 K",
    "-1 stop",
  ],
];

/** Numbers at the ends of what a number can be. */
const extremes = [
  ...[
    "0",
    "-1",
    "0.0000001",
    "99999999",
    "1/3",
    "0/5",
    "9007199254740993",
    "7 1/2",
    "00012",
    "1.7976931348623157",
  ],
  "1".padEnd(309, "0"),
  `0.${"0".repeat(320)}1`,
  "9".repeat(400),
];

/** What a text falls apart into when it is changed: words, numbers, signs and line ends. */
export function piecesOf(text: string): readonly string[] {
  return text.match(/\n|[ \t]+|[\p{L}_][\p{L}\p{N}_]*|\d+(?:\.\d+)?|"[^"\n]*"|[^\s]/gu) ?? [];
}

/** One change of a text. */
function change(draw: Draw, text: string, other: string): string {
  const at = draw.int(0, text.length);
  const to = Math.min(text.length, at + draw.int(0, 12));
  switch (draw.int(0, 9)) {
    case 0:
      return text.slice(0, at) + text.slice(Math.min(text.length, at + 1));
    case 1:
      return text.slice(0, at) + draw.one(hostile) + text.slice(at);
    case 2:
      return text.slice(0, at) + draw.one(hostile) + text.slice(to);
    case 3:
      return text.slice(0, at) + text.slice(at, to) + text.slice(at);
    case 4:
      return withPiece(draw, text, (pieces, i) => pieces.splice(i, 1));
    case 5:
      return withPiece(draw, text, (pieces, i) => pieces.splice(i, 0, draw.one(piecesOf(other))));
    case 6:
      return withPiece(draw, text, (pieces, i) => pieces.splice(i, 1, draw.one(piecesOf(other))));
    case 7:
      return withPiece(draw, text, (pieces, i) => pieces.splice(i, 1, draw.one(pieces)));
    case 8: {
      const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)];
      const hit = numbers[draw.int(0, Math.max(0, numbers.length - 1))];
      if (hit === undefined) return text;
      return text.slice(0, hit.index) + draw.one(extremes) + text.slice(hit.index + hit[0].length);
    }
    default: {
      const lines = text.split("\n");
      const line = draw.one(other.split("\n"));
      lines.splice(draw.int(0, lines.length), draw.int(0, 2), line);
      return lines.join("\n");
    }
  }
}

function withPiece(draw: Draw, text: string, edit: (pieces: string[], index: number) => void): string {
  const pieces = [...piecesOf(text)];
  if (pieces.length === 0) return text;
  edit(pieces, draw.int(0, pieces.length - 1));
  return pieces.join("");
}

/** A text with one to five changes, some of them taken from another text. */
export function mutant(draw: Draw, texts: readonly string[]): string {
  let text = draw.one(texts);
  for (let count = draw.int(1, draw.once(3) ? 5 : 1); count > 0; count--)
    text = change(draw, text, draw.one(texts));
  return text;
}
