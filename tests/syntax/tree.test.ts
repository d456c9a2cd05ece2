import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Span } from "../../src/core/span.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { printFile } from "../../src/format/print-node.js";
import type { Item } from "../../src/syntax/ast.js";
import { parseFile } from "../../src/syntax/parse.js";
import { children, type Node } from "../../src/syntax/walk.js";
import { recipeTexts } from "../helpers/recipe-texts.js";
import { anyFile } from "../helpers/recipes.js";
import { shortClaim, shortExpression, shortValue } from "../helpers/short-tree.js";

function items(text: string): readonly Item[] {
  const found: Diagnostic[] = [];
  const { file } = parseFile({ name: "a", text: `halfshade 1\n${text}` }, (diagnostic) =>
    found.push(diagnostic),
  );
  expect(found).toEqual([]);
  return file.items;
}

const value = (text: string): string => {
  const [block] = items(`room { a: ${text} }`);
  const entry = block?.kind === "block" ? block.entries[0] : undefined;
  return entry?.kind === "property" ? shortValue(entry.value) : "none";
};

describe("values", () => {
  it.each([
    ["2.4 m", "2.4‹m›"],
    ["2.4m", "2.4‹m›"],
    ["0", "0"],
    ["1000 lm s", "1000‹lm s›"],
    ["10 lm/W", "10‹lm/W›"],
    ["18%", "18‹%›"],
    ["30°", "30‹°›"],
    ["12 EV", "12‹EV›"],
    ["1/200 s", "0.005‹s›"],
    ["7 1/2 in", "7.5‹in›"],
    ["5 ft 7 1/2 in", "5‹ft›&7.5‹in›"],
    ["60 x 90 cm", "60×90‹cm›"],
    ["60cm × 90cm x2m", "60‹cm›×90‹cm›×2‹m›"],
    ["f/5.6", "f5.6"],
    ["ISO 400", "iso400"],
    ["3:1", "3:1"],
    ["2.5:1", "2.5:1"],
    ["a - b + c", "(sum +a -b +c)"],
    ["a - b * c / 2 + 1", "(sum +a -(product *b *c /2) +1)"],
    ["a / b / c", "(product *a /b /c)"],
    ["(a + b) * c", "(product *{(sum +a +b)} *c)"],
    ["-a * -b", "(product *(neg a) *(neg b))"],
    ["-3 m - -2 m", "(sum +(neg 3‹m›) -(neg 2‹m›))"],
    ["5 m +- 5 cm", "(± 5‹m› 5‹cm›)"],
    ["-5 m ± 5 %", "(± (neg 5‹m›) 5‹%›)"],
    ["a + 5 m +- 5 cm * 2", "(sum +a +(product *(± 5‹m› 5‹cm›) *2))"],
    ["f/8 +- 1/3 stop", "(± f8 0.333333‹stop›)"],
    ["(1 m, 2 m, -3 m)", "{1‹m› 2‹m› (neg 3‹m›)}"],
    ["2 m from key", "(from 2‹m› key)"],
    ["1 stop under face.disc(towards: key)", "(under 1‹stop› face.disc(towards=key))"],
    ["1 stop over (a + b)", "(over 1‹stop› {(sum +a +b)})"],
    ["numbers(10 is full, 1 is 1 stop)", "numbers((is 10 full) (is 1 1‹stop›))"],
    ["between(a, b, 40 cm from b)", "between(a b (from 40‹cm› b))"],
    ["from(left: 1 m, back: 70 cm)", "from(left=1‹m› back=70‹cm›)"],
    ["metered(f/8, at: 2 m, ISO 100)", "metered(f8 at=2‹m› iso100)"],
    ["f()", "f()"],
    ["f(a,\n  b: [1,\n 2,\n],\n)", "f(a b=[1 2])"],
    ['["a", ?, [1]]', '["a" ? [1]]'],
    ["`two words`.part", "'two words'.part"],
    ["step", "step"],
    ["table.show(over: by)", "table.show(over=by)"],
    ['"""\n  a\n  """', 'block"a"'],
  ])("%s", (text, short) => {
    expect(value(text)).toBe(short);
  });
});

describe("claims", () => {
  it.each([
    ["expect no_warnings", "no_warnings"],
    ["expect a is 3 m within 5 %", "a is 3‹m› within 5‹%›"],
    ["expect a is 1 stop under b within 0.3 stop", "a is 1‹stop› under b within 0.3‹stop›"],
    ["expect a is (1 stop) over f(x) within 0.3 stop", "a is {1‹stop›} over f(x) within 0.3‹stop›"],
    ["expect a between b - 1 m and b + 1 m", "a from (sum +b -1‹m›) to (sum +b +1‹m›)"],
    ["expect a <= 3 m and b > 2", "a <= 3‹m›; b > 2"],
    ["expect a between 1 and 2 and b", "a from 1 to 2; b"],
    ["expect between(a, b) > 1 m", "between(a b) > 1‹m›"],
  ])("%s", (text, short) => {
    const [item] = items(text);
    expect(item?.kind === "expect" ? item.claims.map(shortClaim).join("; ") : "none").toBe(short);
  });

  it("take `surely` as a word and as a name", () => {
    const surely = (text: string): unknown =>
      items(text).map(
        (item) => item.kind === "expect" && [item.surely, item.claims.map(shortClaim).join("; ")],
      )[0];
    expect(surely("expect surely a > 1")).toEqual([true, "a > 1"]);
    expect(surely("expect surely > 1")).toEqual([false, "surely > 1"]);
    expect(surely("expect surely.x is 3 within 1")).toEqual([false, "surely.x is 3 within 1"]);
  });
});

describe("heads of blocks", () => {
  const head = (text: string): unknown => {
    const [item] = items(text);
    if (item?.kind !== "block") return null;
    const path = (parts: readonly { readonly text: string }[]): string =>
      parts.map((part) => part.text).join(".");
    return [
      item.words.map((word) => word.text),
      item.like === null ? null : path(item.like.parts),
      item.companions.map((each) => path(each.parts)),
    ];
  };

  it.each([
    ["room { }", [["room"], null, []]],
    ["light key { }", [["light", "key"], null, []]],
    ["light table { }", [["light", "table"], null, []]],
    ["light like { }", [["light", "like"], null, []]],
    ["light like head_a", [["light"], "head_a", []]],
    ["light key like head_a", [["light", "key"], "head_a", []]],
    ["light key like kit.head_a with octa, cloth { }", [["light", "key"], "kit.head_a", ["octa", "cloth"]]],
    ["light `a b` { }", [["light", "a b"], null, []]],
  ])("%s", (text, parts) => {
    expect(head(text)).toEqual(parts);
  });
});

describe("words of the language as names", () => {
  it.each(["use", "let", "expect", "hold", "table", "show", "like", "with", "is", "and", "step"])(
    "%s",
    (word) => {
      const [block, last] = items(
        `light ${word} { ${word}: 1, key.${word}: 2, part ${word} { a: ${word}.${word} } }\nlet ${word} = 3`,
      );
      expect(block?.kind === "block" && block.entries.map((entry) => entry.kind)).toEqual([
        "property",
        "property",
        "block",
      ]);
      expect(last?.kind === "let" && last.name.text).toBe(word);
    },
  );
});

describe("places", () => {
  const contains = (outer: Span, inner: Span): boolean =>
    outer.start <= inner.start && inner.end <= outer.end;

  /** Every node lies in its parent, children follow each other, and names and numbers stand where they say. */
  function look(text: string, node: Node): void {
    let last = node.span.start;
    for (const child of children(node)) {
      expect(contains(node.span, child.span), `${child.kind} in ${node.kind}`).toBe(true);
      expect(child.span.start).toBeGreaterThanOrEqual(last);
      last = child.kind === "name" || child.kind === "path" ? child.span.end : child.span.start;
      look(text, child);
    }
    const slice = text.slice(node.span.start, node.span.end);
    if (node.kind === "name")
      expect(slice.normalize("NFC")).toBe(node.quoted ? `\`${node.text}\`` : node.text);
    if (node.kind === "f-number") expect(slice).toBe(node.written);
    if (node.kind === "quantity") {
      for (const amount of node.amounts) {
        const own = text.slice(amount.span.start, amount.span.end);
        expect(own.startsWith(amount.written.split(" ")[0] ?? "")).toBe(true);
        if (amount.unit !== null)
          expect(text.slice(amount.unit.span.start, amount.unit.span.end)).toBe(amount.unit.text);
      }
    }
  }

  it("are right in whole texts", () => {
    for (const text of recipeTexts) look(text, parseFile({ name: "a", text }, () => {}).file);
    expect(recipeTexts.length).toBeGreaterThan(2);
  });

  it("are right in any text", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const text = printFile(file);
        look(text, parseFile({ name: "a", text }, () => {}).file);
      }),
      { numRuns: 200 },
    );
  });
});

describe("damage", () => {
  it("is marked on the blocks that hold it, and on no others", () => {
    const text =
      "halfshade 1\nset {\n  flat a { b: 1 }\n  flat c { d 2 }\n  flat e { f: 1,5 m }\n}\nroom { g: 1 }\n";
    const { file, complete } = parseFile({ name: "a", text }, () => {});
    const marks = (items: readonly Node[]): unknown =>
      items.flatMap((item) =>
        item.kind === "block"
          ? [[item.words.map((word) => word.text).join(" "), item.damaged, marks(item.entries)]]
          : [],
      );
    expect(complete).toBe(false);
    expect(marks(file.items)).toEqual([
      [
        "set",
        true,
        [
          ["flat a", false, []],
          ["flat c", true, []],
          ["flat e", true, []],
        ],
      ],
      ["room", false, []],
    ]);
  });

  it("leaves a hole where a value was, and keeps what was read", () => {
    const text = "halfshade 1\nlight key { aim: , height: 1 m + , at: (1 m, , 2 m) }\nexpect a is\n";
    const { file } = parseFile({ name: "a", text }, () => {});
    const [block, claim] = file.items;
    const values =
      block?.kind === "block"
        ? block.entries.map((entry) => entry.kind === "property" && shortValue(entry.value))
        : [];
    expect(values).toEqual(["hole", "(sum +1‹m› +hole)", "{1‹m› 2‹m›}"]);
    expect(claim?.kind === "expect" && claim.claims.map(shortClaim)).toEqual(["a is hole within nothing"]);
    expect(shortExpression({ kind: "damaged", span: { start: 0, end: 0 } })).toBe("hole");
  });
});
