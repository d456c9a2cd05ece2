import { expect, test } from "vitest";
import { sayBearing } from "../../../src/report/say/bearing.js";

const tenth = (degrees: number): string => `${degrees.toFixed(1)} deg`;

test.each([
  [-28.66, "28.7 deg to camera-left"],
  [138.5, "138.5 deg to camera-right"],
  [0.04, "straight in front"],
  [-0.06, "0.1 deg to camera-left"],
  [-179.96, "straight behind"],
  [179.94, "179.9 deg to camera-right"],
  [null, "straight overhead"],
])("%s deg", (bearing, words) => {
  expect(sayBearing(bearing, tenth)).toBe(words);
});

test("on a tape it is short, and still says the side", () => {
  expect(sayBearing(-40, tenth, "")).toBe("40.0 deg left");
  expect(sayBearing(40, tenth, "")).toBe("40.0 deg right");
});
