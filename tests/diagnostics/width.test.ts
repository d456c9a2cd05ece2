import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { frame } from "../../src/diagnostics/print-frame.js";
import { cells, wrap } from "../../src/diagnostics/print-width.js";

describe("wrap", () => {
  const text = fc
    .array(fc.string({ unit: fc.constantFrom("a", "b", "光", "é", "-") }), { maxLength: 12 })
    .map((words) => words.join(" "));

  test("keeps every letter in order and no line above the width", () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 30 }), (words, width) => {
        const lines = wrap(words, width);
        expect(lines.join("").replaceAll(" ", "")).toBe(words.replaceAll(" ", ""));
        for (const line of lines) expect(cells(line)).toBeLessThanOrEqual(width);
      }),
    );
  });

  test("fills lines as far as words allow", () => {
    expect(wrap("aa bb cc dd", 5)).toEqual(["aa bb", "cc dd"]);
    expect(wrap("abcdefgh ij", 5)).toEqual(["abcde", "fgh", "ij"]);
    expect(wrap("", 5)).toEqual([""]);
  });
});

describe("frame", () => {
  test("keeps to the width with the marked place in view", () => {
    const line = fc.string({ unit: fc.constantFrom("a", "光", "\t", "\u001b", " ", "x"), maxLength: 200 });
    fc.assert(
      fc.property(
        line,
        fc.nat(200),
        fc.nat(20),
        fc.integer({ min: 30, max: 100 }),
        (text, from, length, width) => {
          const start = Math.min(from, text.length);
          const shown = frame(text, start, Math.min(text.length, start + length), width);
          expect(cells(shown.text)).toBeLessThanOrEqual(width);
          expect(shown.marks.indexOf("~")).toBeLessThanOrEqual(width);
          expect(cells(shown.marks)).toBeLessThanOrEqual(width + 1);
        },
      ),
    );
  });

  test("cuts a long line at both ends", () => {
    const line = `${"a".repeat(100)}HERE${"b".repeat(100)}`;
    const shown = frame(line, 100, 104, 40);
    expect(shown.text).toMatch(/^…a+HEREb+…$/);
    expect(shown.marks.length - 4).toBe(shown.text.indexOf("HERE"));
  });
});

test("a name longer than a line is cut behind a joint where there is one, and nothing of it is lost", () => {
  expect(wrap("under north_window_of_the_weaving_room.distance", 20)).toEqual([
    "under",
    "north_window_of_the_",
    "weaving_room.",
    "distance",
  ]);
  expect(wrap("abcdefghijklmnopqrstuvwxyz", 10)).toEqual(["abcdefghij", "klmnopqrst", "uvwxyz"]);
  // A joint near the front would waste the line.
  expect(wrap("a_bcdefghijklmnopqrst", 10)).toEqual(["a_bcdefghi", "jklmnopqrs", "t"]);
});
