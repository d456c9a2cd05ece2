import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Photometry } from "../../src/photometry/photometry.js";
import { readLm63 } from "../../src/photometry/read-lm63.js";
import { type Sample, sampleFile } from "./sample.js";

/** Reads a made-up file that must be right. */
function read(sample: Sample = {}): { photometry: Photometry; notes: readonly string[] } {
  const result = readLm63(sampleFile(sample));
  if (result.photometry === null) throw new Error(`line ${result.line}: ${result.problem}`);
  return result;
}

/** Reads a text that must be wrong. */
function wrong(text: string): string {
  const result = readLm63(text);
  if (result.photometry !== null) throw new Error("was read");
  return `${result.line}: ${result.problem}`;
}

describe("editions", () => {
  test.each([
    ["IESNA91", "1991"],
    ["IESNA:LM-63-1995", "1995"],
    ["iesna:lm-63-2002", "2002"],
    ["IES:LM-63-2019", "2019"],
  ])("%s", (first, edition) => {
    const { photometry, notes } = read({ head: [first, "[TEST] T1"] });
    expect(photometry.edition).toBe(edition);
    expect(photometry.keywords).toEqual([{ name: "TEST", text: "T1" }]);
    expect(notes).toEqual([]);
  });

  test("without a first line of its own it is one of 1986, whose lines above TILT are free text", () => {
    const { photometry } = read({ head: ["Some lamp, measured by somebody"] });
    expect(photometry.edition).toBe("1986");
    expect(photometry.keywords).toEqual([{ name: "", text: "Some lamp, measured by somebody" }]);
    expect(read({ head: [] }).photometry.edition).toBe("1986");
  });

  test("an edition that is not known is read like one of 2002, with a note", () => {
    const { photometry, notes } = read({ head: ["IESNA:LM-63-2031"] });
    expect(photometry.edition).toBe("2002");
    expect(notes[0]).toContain("IESNA:LM-63-2031");
  });

  test("the value after the ballast factor multiplies in 1986 and 1991 only", () => {
    const axial = (head: readonly string[]) =>
      read({ head, multiplier: 2, factors: "0.9 0.5 100" }).photometry.candela[0]![0];
    expect(axial(["free text"])).toBeCloseTo(900, 9);
    expect(axial(["IESNA91"])).toBeCloseTo(900, 9);
    expect(axial(["IESNA:LM-63-1995"])).toBeCloseTo(1800, 9);
    expect(axial(["IESNA:LM-63-2002"])).toBeCloseTo(1800, 9);
    expect(axial(["IES:LM-63-2019"])).toBeCloseTo(1800, 9);
  });
});

describe("what files do", () => {
  test("keywords that go on, absolute photometry, feet", () => {
    const { photometry } = read({ head: ["IESNA91", "[A] one", "[MORE] two", "[_OWN] three"], units: 1 });
    expect(photometry.keywords).toEqual([
      { name: "A", text: "one\ntwo" },
      { name: "_OWN", text: "three" },
    ]);
    expect(photometry.lumensPerLamp).toBeNull();
    expect(photometry.opening.width).toBeCloseTo(0.3 * 0.3048, 12);
    expect(read({ lumens: 1500 }).photometry.lumensPerLamp).toBe(1500);
  });

  test("commas, tabs, one number a line, a byte-order mark, old line ends and a tail are all one", () => {
    const text = sampleFile({ head: ["IESNA91"] });
    const plain = readLm63(text);
    const [head = "", numbers = ""] = text.split("TILT=NONE");
    for (const separator of [",", "\t", "\n", "\r", " , ", "\r\n\r\n"]) {
      const other = `\uFEFF${head}TILT=NONE\n${numbers.trim().split(/\s+/).join(separator)}`;
      expect(readLm63(other)).toEqual(plain);
    }
    const tail = readLm63(`${text} 17`);
    expect(tail.photometry).toEqual(plain.photometry);
    expect("notes" in tail && tail.notes.join()).toContain("more follows");
  });

  test("TILT=INCLUDE is kept and does not change the candelas", () => {
    const tilted = read({ tilt: "INCLUDE\n2\n3\n0 45 90\n1 0.9 0.8" });
    expect(tilted.photometry.tilt).toEqual({ geometry: 2, angles: [0, 45, 90], factors: [1, 0.9, 0.8] });
    expect(tilted.photometry.candela).toEqual(read().photometry.candela);
    expect(tilted.notes.join()).toContain("tilt");
  });

  test("a part of the circle that is no quarter or half is noted", () => {
    expect(read({ horizontal: [0, 40, 80] }).notes.join()).toContain("quarter");
    expect(read({ horizontal: [0, 45, 90] }).notes).toEqual([]);
  });
});

describe("what is refused, by name and line", () => {
  test.each<[string, string, RegExp]>([
    ["nothing", "", /^1: .*TILT=/],
    ["no TILT", "IESNA91\n[TEST] x\n1 2 3\n", /TILT=/],
    ["a tilt file", sampleFile({ tilt: "LAMP.TLT" }), /^4: TILT=LAMP.TLT is not supported/],
    ["type A", sampleFile({ type: 3 }), /type A is not supported/],
    [
      "an unknown type",
      sampleFile({ type: 7 }),
      /photometric type must be a whole number from 1 to 3, not 7/,
    ],
    ["a word among numbers", sampleFile().replace("0.3 0.4", "0.3 wide"), /^5: the length .* "wide"/],
    ["hexadecimal", sampleFile().replace("0.3 0.4", "0x3 0.4"), /"0x3"/],
    ["infinity", sampleFile().replace("0.3 0.4", "Infinity 0.4"), /"Infinity"/],
    ["a number too great", sampleFile().replace("0.3 0.4", "1e999 0.4"), /"1e999"/],
    ["too few numbers", sampleFile({ counts: "10 3" }), /ends before a candela value|greater than/],
    ["a table without end", sampleFile({ counts: "720 720" }), /ends before|greater than|below zero/],
    ["too many angles", sampleFile({ counts: "100000 100000" }), /from 1 to 721/],
    ["no angles", sampleFile({ counts: "0 1" }), /from 1 to 721, not 0/],
    ["half an angle", sampleFile({ counts: "9.5 1" }), /not 9.5/],
    ["angles that fall", sampleFile({ vertical: [0, 20, 10] }), /10 follows 20/],
    ["angles twice", sampleFile({ vertical: [0, 10, 10] }), /10 follows 10/],
    ["angles past the pole", sampleFile({ vertical: [0, 90, 181] }), /between 0 and 180/],
    [
      "type B past the side",
      sampleFile({ type: 2, horizontal: [0, 100] }),
      /type B must lie between -90 and 90/,
    ],
    ["light below zero", sampleFile({ candela: () => -5 }), /candela value is below zero/],
    ["a factor below zero", sampleFile({ multiplier: -1 }), /multiplier is below zero/],
    ["light without end", sampleFile({ candela: () => 1e300, multiplier: 1e300 }), /too great/],
    ["a long word", sampleFile().replace("0.3 0.4", `${"x".repeat(500)} 0.4`), /^5: .{1,120}$/],
    ["control characters", sampleFile().replace("0.3 0.4", "\u001b[31m 0.4"), /"\?\[31m"/],
    ["far too many lines", `IESNA91\n${"[A] b\n".repeat(2000)}TILT=NONE`, /more than 1000 lines/],
    ["a file past the limit", "x".repeat(1_100_000), /longer than/],
  ])("%s", (_what, text, sentence) => {
    expect(wrong(text)).toMatch(sentence);
  });

  test("whatever the text, an answer comes and nothing is thrown", () => {
    const piece = fc.oneof(
      fc.constantFrom(
        "IESNA91\n",
        "TILT=NONE\n",
        "TILT=INCLUDE\n",
        "[MORE] x\n",
        "1 ",
        "0 ",
        "90,",
        "-1 ",
        "\n",
        "1e9 ",
      ),
      fc.string({ unit: "binary", maxLength: 12 }),
      fc.double().map((value) => `${value} `),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        const result = readLm63(pieces.join(""));
        if (result.photometry === null) expect(result.problem.length).toBeGreaterThan(5);
        else expect(result.photometry.candela.flat().every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("a good file cut anywhere or with one character changed never throws", () => {
    const good = sampleFile({ horizontal: [0, 90] });
    fc.assert(
      fc.property(
        fc.nat(good.length),
        fc.string({ unit: "binary", maxLength: 2 }),
        fc.boolean(),
        (at, put, cut) => {
          const text = good.slice(0, at) + put + (cut ? "" : good.slice(at + 1));
          const result = readLm63(text);
          if (result.photometry === null) expect(result.line).toBeGreaterThanOrEqual(1);
        },
      ),
      { numRuns: 500 },
    );
  });
});
