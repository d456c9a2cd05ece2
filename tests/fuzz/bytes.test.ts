import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { MAX_SOURCE_BYTES } from "../../src/core/limits.js";
import { textOfBytes } from "../../src/node/text-file.js";
import { runs } from "../helpers/runs.js";
import { drawFrom } from "../model/random/draw.js";
import { allTexts } from "./texts.js";

/** Bytes of a text with some of them changed, or bytes out of nowhere. */
function anyBytes(seed: number): Uint8Array {
  const draw = drawFrom(seed);
  if (draw.once(4)) return Uint8Array.from({ length: draw.int(0, 200) }, () => draw.int(0, 255));
  const bytes = [...new TextEncoder().encode(draw.one(allTexts).slice(0, 400))];
  for (let count = draw.int(1, 6); count > 0; count--) {
    const at = draw.int(0, bytes.length);
    bytes.splice(at, draw.int(0, 2), ...Array.from({ length: draw.int(0, 3) }, () => draw.int(0, 255)));
  }
  return Uint8Array.from(bytes);
}

test("bytes are a text, letter for letter, or are refused", () => {
  let texts = 0;
  const found = new Set<string>();
  for (let seed = 1; seed <= runs(4_000).numRuns; seed++) {
    const bytes = anyBytes(seed);
    const { text, problem } = textOfBytes("bytes.light", bytes);
    if (problem !== undefined) {
      found.add(problem.code);
      continue;
    }
    texts++;
    expect(Buffer.compare(Buffer.from(text, "utf8"), Buffer.from(bytes))).toBe(0);
    for (const { place } of compile({ name: "bytes.light", text }).diagnostics) {
      expect(place.start).toBeGreaterThanOrEqual(0);
      expect(place.end).toBeLessThanOrEqual(text.length);
    }
  }
  expect([...found].sort()).toEqual(["file.binary", "file.encoding"]);
  expect(texts).toBeGreaterThan(100);
});

test("a byte order mark stays, and both other encodings with a mark are refused", () => {
  expect(textOfBytes("a", Uint8Array.of(0xef, 0xbb, 0xbf, 0x61)).text).toBe("\ufeffa");
  for (const mark of [
    [0xff, 0xfe],
    [0xfe, 0xff],
  ]) {
    expect(textOfBytes("a", Uint8Array.from([...mark, 0x61, 0])).problem?.code).toBe("file.encoding");
  }
});

test("the cap counts bytes, not letters", () => {
  const letters = new TextEncoder().encode("é".repeat(MAX_SOURCE_BYTES / 2));
  expect(textOfBytes("a", letters).text).toBeDefined();
  expect(textOfBytes("a", Uint8Array.from([...letters, 0x61])).problem?.code).toBe("file.too-large");
});
