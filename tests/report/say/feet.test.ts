import { describe, expect, test } from "vitest";
import { sayFeet } from "../../../src/report/say/feet.js";

describe("feet and inches", () => {
  // The international yard of 0.9144 m (1959): a foot is 0.3048 m, an inch 25.4 mm, exactly.
  test.each([
    [0.3048, "1 ft 0 in"],
    [0.9144, "3 ft 0 in"],
    [1.8288, "6 ft 0 in"],
    [1.7272, "5 ft 8 in"],
    [0.0254, "1 in"],
    [0.00635, "1/4 in"],
    [0.2413, "9 1/2 in"],
    [3.0414, "9 ft 11 3/4 in"],
    [0.3047, "1 ft 0 in"],
    [-0.6096, "-2 ft 0 in"],
    [0, "0 in"],
    [0.001, "0 in"],
  ])("%d m is %s", (metres, text) => {
    expect(sayFeet(metres)).toBe(text);
  });

  test("is never off by more than an eighth of an inch", () => {
    for (let metres = 0.01; metres < 9; metres += 0.0371) {
      const found = /^(?:(\d+) ft )?(\d+)?(?: ?(\d)\/(\d))? in$/.exec(sayFeet(metres));
      if (found === null) throw new Error(sayFeet(metres));
      const [, feet = "0", inches = "0", over = "0", under = "1"] = found;
      const back = (Number(feet) * 12 + Number(inches) + Number(over) / Number(under)) * 0.0254;
      expect(Math.abs(back - metres)).toBeLessThanOrEqual(0.0254 / 8 + 1e-9);
    }
  });
});
