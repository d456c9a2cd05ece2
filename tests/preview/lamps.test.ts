import { describe, expect, test } from "vitest";
import { at } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import { type Look, lookOf } from "../../src/preview/look.js";
import { m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { bulb, dish, far, planOf, setOf } from "../helpers/plan.js";

const WIDE = 96;

const look = (...given: Parameters<typeof planOf>): Look => {
  const found = lookOf(planOf(...given), WIDE);
  if (typeof found === "string") throw new Error(found);
  return found;
};

/** Pixels that are far over white. */
const white = ({ luminance }: Look): number => luminance.filter((value) => value > 3).length;

/** The camera looks level at a height of 1.5 m from 4 m: at the mark it takes in 24 / 50 of 4 m across. */
const lens = far(50);
const pixel = ((24 / 50) * 4) / WIDE;

describe("a lamp in the picture", () => {
  const place = { position: at(m(0.3), m(0), m(1.6)), aim: at(m(0), m(-4), m(1.5)) } as const;
  const bare = { camera: lens, subjects: [] } as const;

  test("a bulb shows as a disc of its size at its place", () => {
    const found = look({ ...bare, lights: [bulb(place)] });
    // pi 4 cm squared, and the bulb is seen a little off the axis.
    expect(Math.abs((white(found) * pixel * pixel) / (Math.PI * 0.04 * 0.04) - 1)).toBeLessThan(0.2);
    const column = Math.floor(WIDE / 2 + 0.3 / pixel);
    const row = Math.floor(found.height / 2 - 0.1 / pixel);
    expect(found.luminance[row * WIDE + column]).toBeGreaterThan(3);
  });

  test("a dish shows its front, and nothing from behind", () => {
    const towards = dish(place);
    const away = { ...towards, aim: at(m(0), m(4), m(1.5)) } as typeof towards;
    expect(
      Math.abs((white(look({ ...bare, lights: [towards] })) * pixel * pixel) / (Math.PI * 0.01) - 1),
    ).toBeLessThan(0.1);
    expect(white(look({ ...bare, lights: [away] }))).toBe(0);
  });

  test("what stands before it hides it", () => {
    const board = block("flat", "board", { size: size(m(2.4), m(2.4)), at: at(m(0), m(-1), m(1.5)) });
    const lamp = bulb(place);
    expect(white(look({ ...bare, set: setOf(board), lights: [lamp] }))).toBe(0);
  });
});
