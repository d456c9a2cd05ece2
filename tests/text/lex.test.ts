import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { utf8Size } from "../../src/core/utf8-size.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { printFile } from "../../src/format/print-node.js";
import { keywords, tokenKinds } from "../../src/text/kinds.js";
import { lex } from "../../src/text/lex.js";
import { anyFile } from "../helpers/recipes.js";

const kindNames = (text: string): string => {
  const { tokens } = lex({ name: "a", text }, () => {});
  return tokens.map((token) => token.tokenType.name).join(" ");
};

/** The kinds of tokens of a text with their places, found by trying the published patterns one after another. */
function byPatterns(text: string): readonly string[] {
  const behindNumber = `(?<=(?<![\\p{L}\\p{M}\\p{N}_])\\d[\\d./:]*[ \\t]*(?:(?!(?:${[...keywords.keys()].join("|")})(?![\\p{L}\\p{M}\\p{N}_]))[\\p{L}%°][\\p{L}\\p{M}\\p{N}_/]*[ \\t]*){0,2})`;
  const behindNumberOrAs = "(?<=(?:\\d|\\bas[ \\t])[ \\t]*)";
  const fronts = new Map([
    ["By", behindNumber],
    ["CompoundUnit", behindNumberOrAs],
  ]);
  const patterns = tokenKinds
    .filter((kind) => kind.role !== "mistake")
    .map(({ type, pattern }) => ({
      name: type.name,
      look: new RegExp(`${fronts.get(type.name) ?? ""}(?:${pattern})`, "uy"),
    }));
  const blank = /[ \t]+|#[^\r\n]*/y;
  const found: string[] = [];
  for (let at = 0; at < text.length; ) {
    blank.lastIndex = at;
    const skipped = blank.exec(text);
    if (skipped !== null) {
      at += skipped[0].length;
      continue;
    }
    const match = patterns
      .map(({ name, look }) => {
        look.lastIndex = at;
        return { name, image: look.exec(text)?.[0] };
      })
      .find(({ image }) => image !== undefined);
    if (match?.image === undefined)
      throw new Error(`no pattern fits ${JSON.stringify(text.slice(at, at + 20))}`);
    const isSecondLineEnd = match.name === "NewLine" && found.at(-1)?.startsWith("NewLine") === true;
    if (!isSecondLineEnd) found.push(`${match.name} ${at} ${match.image}`);
    at += match.image.length;
  }
  return found;
}

describe("tokens", () => {
  it("are those of the published patterns", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const text = printFile(file);
        const { tokens } = lex({ name: "a", text }, () => {});
        expect(tokens.map((token) => `${token.tokenType.name} ${token.startOffset} ${token.image}`)).toEqual(
          byPatterns(text),
        );
      }),
      { numRuns: 200 },
    );
  });

  it("stand in order, apart, and show what the text says there", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
        const found: Diagnostic[] = [];
        const { tokens, comments } = lex({ name: "a", text }, (diagnostic) => found.push(diagnostic));
        let last = 0;
        for (const token of tokens) {
          expect(token.startOffset).toBeGreaterThanOrEqual(last);
          expect(token.endOffset).toBeGreaterThanOrEqual(token.startOffset);
          last = token.endOffset + 1;
          if (!token.broken) expect(token.image).toBe(text.slice(token.startOffset, token.endOffset + 1));
        }
        expect(last).toBeLessThanOrEqual(text.length);
        for (const comment of comments)
          expect(text.slice(comment.startOffset, comment.endOffset + 1)).toBe(comment.image);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    ["60 x 90 cm", "Numeral By Numeral Name"],
    ["60x90cm", "Numeral By Numeral Name"],
    ["60 cm × 90 cm X 2 m", "Numeral Name By Numeral Name By Numeral Name"],
    ["7 1/2 x 3", "Numeral Fraction By Numeral"],
    ["let x1 = x 2", "LetWord Name Equals Name Numeral"],
    ["2 m x1", "Numeral Name By Numeral"],
    ["light x { }", "Name Name OpenBrace CloseBrace"],
    ["3:1 a: 1", "Ratio Name Colon Numeral"],
    ["f/8 F/2.8 ƒ/4", "FNumber FNumber FNumber"],
    ["key.f/8", "Name Dot Name Slash Numeral"],
    ["cliff/8", "Name Slash Numeral"],
    ["1/200 1 / 200", "Fraction Numeral Slash Numeral"],
    ["10 lm/W 10 lm / W as lm/W", "Numeral CompoundUnit Numeral Name Slash Name AsWord CompoundUnit"],
    ["isolated is ISO iso", "Name IsWord ISOWord Name"],
    ["`is` `two words`", "Quoted Quoted"],
    ["+- ± + - −", "PlusMinus PlusMinus Plus Minus Minus"],
    ["< <= > >= ≤ ≥", "Less LessEqual Greater GreaterEqual LessEqual GreaterEqual"],
    [
      "[1,2] (1 m,2 m)",
      "OpenSquare Numeral Comma Numeral CloseSquare OpenRound Numeral Name Comma Numeral Name CloseRound",
    ],
    ["30° 30º 5 %", "Numeral Degree Numeral Degree Numeral Percent"],
    ['"a # b" # c', "Text"],
    ['"""a\n"b" # c\n"""', "TextBlock"],
    ["a\r\n\r\n \t\r # c\n\nb", "Name NewLine Name"],
    ["2\u00a0m\u2009x\u20033", "Numeral Name By Numeral"],
    ["Größe_2 λ ｆ", "Name Name Name"],
  ])("%j", (text, names) => {
    expect(kindNames(text)).toBe(names);
  });
});

describe("values of tokens", () => {
  const firstValue = (text: string): number | string | null | undefined =>
    lex({ name: "a", text }, () => {}).tokens[0]?.value;

  it.each([
    ["2.50", 2.5],
    ["1/200", 0.005],
    ["f/5.6", 5.6],
    ['"a\\"b\\\\c\\nd\\te\\u{263a}"', 'a"b\\c\nd\te\u263a'],
    ['"""\n    one\n      two\n\n    three\n    """', "one\n  two\n\nthree"],
    ['"""one\n  two"""', "one\n  two"],
    ['"""\r\n  one\r  two\n  """', "one\ntwo"],
    ['""""""', ""],
    ['"""\n\n"""', ""],
    ['"""\n\n\n"""', "\n"],
    ['"""\n\tone\n\t"""', "one"],
    ["`two words`", "two words"],
  ])("%j", (text, value) => {
    expect(firstValue(text)).toBe(value);
  });
});

describe("the size of a text", () => {
  it("is that of its UTF-8", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        fc.pre(!/[\ud800-\udfff]/u.test(text));
        expect(utf8Size(text)).toBe(new TextEncoder().encode(text).length);
      }),
    );
  });
});

describe("the time of the lexer", () => {
  const units = [
    '"',
    "'a",
    "`",
    "“",
    "/*",
    "//",
    "\\",
    '"""',
    "1,",
    "1.",
    "5'7\" ",
    "a/b ",
    "\u200b ",
    "@",
    "_",
    ";",
    "{",
    ")",
    "½",
    "é",
  ];

  it.each(units)("doubles with the length of a text of %j", (unit) => {
    // As many tokens are kept each time, so that what the engine does about memory costs the same.
    const cost = (count: number, times: number): number => {
      const text = unit.repeat(count);
      let best = Number.POSITIVE_INFINITY;
      for (let round = 0; round < 5; round++) {
        const kept: unknown[] = [];
        const before = process.cpuUsage();
        for (let time = 0; time < times; time++) kept.push(lex({ name: "a", text }, () => {}));
        const spent = process.cpuUsage(before);
        best = Math.min(best, spent.user + spent.system);
      }
      return best;
    };
    cost(4000, 1);
    const short = cost(10_000, 4) / 4;
    // Four times the text may take up to ten times as long (a quadratic one takes sixteen), or less than 20 ms.
    const long = cost(40_000, 1);
    expect(long < 20_000 || long <= 10 * short, `${short} µs, then ${long} µs`).toBe(true);
  });
});
