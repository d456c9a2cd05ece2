import { expect, test } from "vitest";
import {
  type AreaMark,
  area,
  line,
  type Mark,
  type Place,
  type TapeMark,
} from "../../../src/report/figures/drawing.js";
import { clearTapes, tapeText } from "../../../src/report/figures/settle.js";
import { shadowsNear } from "../../../src/report/figures/shadow-marks.js";

const em = 0.1;
const upright: TapeMark = { kind: "tape", from: [0, 0], to: [0, 2], text: "2.00 m", beside: 0.075 };

const textOf = (marks: readonly Mark[], tape = 0): Place => {
  const found = marks.filter((mark): mark is TapeMark => mark.kind === "tape")[tape] as TapeMark;
  return tapeText(found.from, found.to, found.beside, found.along);
};

/** Half the length of `2.00 m`, and half a letter's height. */
const [HALF, HIGH] = [0.5 * 6 * 0.56 * em, 0.6 * em];

test("the text of a tape stays in the middle of its line where nothing is in the way", () => {
  const [x, y] = textOf(clearTapes([upright], em));
  expect(x).toBeCloseTo(-0.075, 12);
  expect(y).toBeCloseTo(1, 12);
});

test("it makes way for the outline of a lamp and for the text of another tape", () => {
  const lamp = area("lit", "key", [
    [-0.4, 0.9],
    [0.4, 0.9],
    [0.4, 1.1],
    [-0.4, 1.1],
  ]);
  const [x, y] = textOf(clearTapes([lamp, upright], em));
  // Neither edge of the lamp runs through it.
  for (const edge of [0.9, 1.1]) expect(Math.abs(y - edge)).toBeGreaterThan(HALF - 0.7 * em);
  expect(Math.abs(x)).toBeLessThan(0.3);
  const other: TapeMark = { ...upright, to: [0, 2.02], text: "2.02 m" };
  const both = clearTapes([upright, other], em);
  const [a, b] = [textOf(both, 0), textOf(both, 1)];
  const apart = Math.abs(a[0] - b[0]) >= 2 * HIGH - 1e-9 || Math.abs(a[1] - b[1]) >= 2 * HALF - 1e-9;
  expect(apart).toBe(true);
});

test("a shadow that goes on and on is drawn as far as the figure goes, a short one as it is", () => {
  const others: readonly Mark[] = [line("wall", "a", [-2, -1], [2, 4])];
  const strip = (long: number): AreaMark =>
    area("shadow", "shadow", [
      [-0.2, 0],
      [0.2, 0],
      [0.2, long],
      [-0.2, long],
    ]);
  const [short] = shadowsNear([strip(3)], others);
  expect(short).toEqual(strip(3));
  const [cut] = shadowsNear([strip(80)], others);
  const heights = (cut?.outline ?? []).map(([, y]) => y);
  // The others take 5 m: two fifths of it more.
  expect(Math.max(...heights)).toBeCloseTo(6, 9);
  expect(Math.min(...heights)).toBe(0);
});
