import { expect, test } from "vitest";
import { wholePerCents } from "../../../src/report/say/per-cents.js";
import { sayContrast } from "../../../src/report/say/quantity.js";

test("whole per cents add up to 100, and the largest rests are rounded up", () => {
  // 62.5 and 37.5 % would both round up, to 101.
  expect(wholePerCents([5, 3])).toEqual([63, 37]);
  expect(wholePerCents([1, 1, 1])).toEqual([34, 33, 33]);
  expect(wholePerCents([1, 0])).toEqual([100, 0]);
  expect(wholePerCents([0, 0])).toEqual([0, 0]);
  for (let n = 1; n < 40; n++) {
    const parts = Array.from({ length: 5 }, (_, k) => ((n * 7919 + k * 104_729) % 997) + 0.3);
    expect(wholePerCents(parts).reduce((sum, part) => sum + part, 0)).toBe(100);
  }
});

test("a contrast beyond all measure is not printed to a tenth", () => {
  expect(sayContrast(Math.log2(2.94))).toBe("2.9:1 (1.6 stop)");
  expect(sayContrast(Math.log2(400))).toBe("400:1 (8.6 stop)");
  expect(sayContrast(Math.log2(1234))).toBe("more than 500:1 (10.3 stop)");
});
