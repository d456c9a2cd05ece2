import { expect, test } from "vitest";
import { dotsOf } from "../../src/preview/letters.js";
import { besideEachOther } from "../../src/preview/pair.js";

test("two pictures stand beside each other with their own greys, and words below them", () => {
  const grey = (value: number): Uint8Array => new Uint8Array(200 * 100).fill(value);
  const found = besideEachOther(200, 100, [
    { greys: grey(10), label: "one" },
    { greys: grey(200), label: "two" },
  ]);
  expect(found.width).toBe(408);
  expect(found.greys.length).toBe(found.width * found.height);
  const at = (x: number, y: number) => found.greys[y * found.width + x];
  expect([at(0, 0), at(199, 99), at(200, 50), at(207, 50), at(208, 0), at(407, 99)]).toEqual([
    10, 10, 255, 255, 200, 200,
  ]);
  const inked = (left: number, right: number): number => {
    let dots = 0;
    for (let y = 100; y < found.height; y++)
      for (let x = left; x < right; x++) dots += at(x, y) === 0 ? 1 : 0;
    return dots;
  };
  expect(inked(0, 200)).toBe(dotsOf("one").length);
  expect(inked(208, 408)).toBe(dotsOf("two").length);
});

test("every letter of a label has its own shape", () => {
  const shapes = [..."abcdefghijklmnopqrstuvwxyz-"].map((sign) => JSON.stringify(dotsOf(sign)));
  expect(new Set(shapes).size).toBe(27);
  expect(dotsOf(" ")).toEqual([]);
});
