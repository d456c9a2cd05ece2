import { describe, expect, test } from "vitest";
import { at, offset, tape } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { behind, coverageOf } from "../../../src/report/frame/coverage.js";
import { shareOf } from "../../../src/report/frame/region.js";
import { bareSides } from "../../../src/report/frame/sides.js";
import { buildScene } from "../../../src/scene/build.js";
import { deg, m, mm, percent } from "../../../src/units/make.js";
import { block, recipe } from "../../helpers/models.js";
import { camera, setOf } from "../../helpers/plan.js";

const scene = (parts: Partial<Recipe>) => buildScene(recipe({ camera, ...parts }), () => undefined);

function covered(parts: Partial<Recipe>) {
  const found = coverageOf(scene(parts));
  if (typeof found === "string") throw new Error(found);
  return found;
}

/** A flat square on to the lens, its lower edge `low` above the floor and its middle `side` to the right. */
const board = (width: number, height: number, low: number, side = 0, behindMark = 0.5) =>
  block("panel", "back", {
    size: size(m(width), m(height)),
    at: at(m(side), m(behindMark), m(low + height / 2)),
  });

/** Width and height of the frame 4 m from the lens of 85 mm, focused at infinity: 24 / 85 and 36 / 85 of 4 m. */
const [wide, high] = [(4 * 24) / 85, (4 * 36) / 85];

describe("a rectangle seen square on", () => {
  // Nobody is there: the lens is focused at infinity. It stands 3.5 m before the mark, 1.3 m high.
  test.each([
    [0.5, 0.9, 0],
    [0.8, 1.2, 0.1],
    [0.2, 0.3, -0.3],
  ])("%f x %f m covers the product of its shares of width and height", (w, h, side) => {
    const found = covered({ set: setOf(board(w, h, 1.3 - h / 2, side)) });
    expect(found.covered).toBeCloseTo((w / wide) * (h / high), 6);
  });

  test("what sticks out of the frame does not count", () => {
    const found = covered({ set: setOf(board(0.6, 5, 0, 0.4)) });
    expect(found.covered).toBeCloseTo((wide / 2 - 0.1) / wide, 6);
  });

  test("two that overlap count once", () => {
    const found = covered({
      set: setOf(board(0.4, 4, 0, -0.1), { ...board(0.4, 4, 0, 0.1), name: "other" }),
    });
    expect(found.covered).toBeCloseTo(0.6 / wide, 6);
  });

  test("its bare strips are those of the drawing", () => {
    const found = covered({ set: setOf(board(0.6, 1, 1.1, 0.1)) });
    const sides = bareSides(found.bare, found.set);
    const depth = (name: string) => sides.find(({ side }) => side === name)?.depth;
    const share = (name: string) => sides.find(({ side }) => side === name)?.share;
    const [left, right] = [wide / 2 - 0.2, wide / 2 - 0.4];
    const [top, bottom] = [high / 2 - 0.8, high / 2 - 0.2];
    expect(depth("left")).toBeCloseTo(left / wide, 6);
    expect(depth("right")).toBeCloseTo(right / wide, 6);
    expect(depth("top")).toBeCloseTo(top / high, 6);
    expect(depth("bottom")).toBeCloseTo(bottom / high, 6);
    expect(share("left")).toBeCloseTo(left / wide, 6);
    expect(share("top")).toBeCloseTo((0.6 / wide) * (top / high), 6);
    expect(share("within")).toBe(0);
    expect(sides.reduce((sum, row) => sum + row.share, 0)).toBeCloseTo(1 - found.covered, 6);
  });

  test("a hole between two is within, and a wedge above a slanting edge is above", () => {
    const pair = covered({ set: setOf(board(0.4, 4, 0, -0.4), { ...board(0.4, 4, 0, 0.4), name: "other" }) });
    const gap = bareSides(pair.bare, pair.set);
    expect(gap.find(({ side }) => side === "top")?.share).toBeCloseTo(0.4 / wide, 6);
    const slanting = covered({
      set: setOf(
        block("flat", "back", {
          size: size(m(6), m(1.8)),
          at: offset({ behind: m(1) }),
          faces: { kind: "bearing", bearing: { side: "left", angle: deg(40), written: "" }, written: "" },
        } as never),
      ),
    });
    const wedge = bareSides(slanting.bare, slanting.set);
    expect(wedge.find(({ side }) => side === "within")?.share).toBe(0);
    expect(wedge.find(({ side }) => side === "top")?.share).toBeCloseTo(1 - slanting.covered, 6);
  });
});

describe("people", () => {
  const person = block("subject", null, { height: m(1.7) });

  test("cover as well, and what they hide of the set counts once", () => {
    const alone = covered({ set: setOf(board(0.1, 0.1, 0.2, 0, 9)), subjects: [person] });
    const before = covered({ set: setOf(board(20, 20, -5, 0, 9)), subjects: [person] });
    expect(alone.covered).toBeGreaterThan(0.05);
    expect(alone.covered).toBeLessThan(0.4);
    expect(before.covered).toBe(1);
  });
});

describe("what the room shows", () => {
  const room = (belongs?: "set") =>
    block("room", null, {
      size: volume(m(4), m(9), m(2.5)),
      parts: [
        block("wall", "back", { reflectance: percent(50), ...(belongs ? { belongs_to: belongs } : {}) }),
      ],
    } as never);
  const low = block("camera", null, { ...camera, focal_length: mm(24) });

  test("shares of walls, floor and ceiling make up what is bare", () => {
    const made = scene({ room: room(), camera: low, set: setOf(board(0.5, 0.5, 1)) });
    const found = coverageOf(made);
    if (typeof found === "string") throw new Error(found);
    const rows = behind(made, found.bare);
    expect(rows.map(({ surface }) => surface).sort()).toEqual([
      "ceiling",
      "floor",
      "wall back",
      "wall left",
      "wall right",
    ]);
    expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(shareOf(found.bare), 5);
    // The back wall, 8 m from a lens of 24 mm, 4 m x 2.5 m: the frame takes in 8 m x 12 m there.
    const wall = rows.find(({ surface }) => surface === "wall back")?.share ?? 0;
    const hidden = (0.5 * 0.5) / (4 * 6);
    expect(wall).toBeCloseTo((4 * 2.5) / (8 * 12) - hidden, 5);
  });

  test("a wall whose back the lens sees is none", () => {
    const outside = block("camera", null, { ...camera, focal_length: mm(24), distance: tape(m(6)) });
    const made = scene({ room: room(), camera: outside, set: setOf(board(0.5, 0.5, 1)) });
    const found = coverageOf(made);
    if (typeof found === "string") throw new Error(found);
    expect(behind(made, found.bare).map(({ surface }) => surface)).not.toContain("wall front");
  });

  test("a wall that belongs to the set covers; without a background there is no coverage", () => {
    const made = covered({ room: room("set"), camera: low });
    expect(made.covered).toBeCloseTo((4 * 2.5) / (8 * 12), 5);
    expect(coverageOf(scene({ room: room(), camera: low }))).toContain("belongs to the set");
    expect(coverageOf(scene({ camera: null, set: setOf(board(1, 1, 1)) }))).toBe("there is no camera");
  });
});

describe("laws", () => {
  const hinged = (mirror: 1 | -1, scale = 1) => {
    const flats = [
      block("flat", "a", {
        size: size(m(0.7 * scale), m(1.9 * scale)),
        at: at(m(-0.3 * mirror * scale), m(0.6 * scale), m(0)),
      }),
      block("flat", "b", {
        size: size(m(0.9 * scale), m(1.7 * scale)),
        hinge: { edge: mirror > 0 ? "right" : "left", of: "a", written: "" },
        opening: deg(125),
      } as never),
    ];
    return covered({
      set: setOf(...flats),
      camera: block("camera", null, {
        ...camera,
        focal_length: mm(50),
        distance: tape(m(3.5 * scale)),
        height: m(1.3 * scale),
      }),
    });
  };

  test("a mirrored set leaves the mirrored sides bare", () => {
    const [one, other] = [hinged(1), hinged(-1)];
    expect(one.covered).toBeCloseTo(other.covered, 6);
    expect(one.covered).toBeLessThan(0.95);
    const sides = bareSides(one.bare, one.set);
    const mirrored = bareSides(other.bare, other.set);
    const share = (rows: typeof sides, name: string) => rows.find(({ side }) => side === name)?.share ?? 0;
    expect(share(sides, "left")).toBeCloseTo(share(mirrored, "right"), 6);
    expect(share(sides, "right")).toBeCloseTo(share(mirrored, "left"), 6);
    expect(share(sides, "top")).toBeCloseTo(share(mirrored, "top"), 6);
    expect(Math.abs(share(sides, "left") - share(sides, "right"))).toBeGreaterThan(0.01);
  });

  test("a set-up twice as large has the same picture", () => {
    expect(hinged(1, 2).covered).toBeCloseTo(hinged(1).covered, 6);
  });

  test("a longer lens never shows less of a set that is square on", () => {
    let before = 0;
    for (const focal of [24, 35, 50, 70, 85, 105, 135, 200]) {
      const now = covered({
        set: setOf(board(1.2, 1.5, 0.4, 0.05)),
        camera: block("camera", null, { ...camera, focal_length: mm(focal) }),
      }).covered;
      expect(now).toBeGreaterThanOrEqual(before);
      before = now;
    }
    expect(before).toBe(1);
  });
});
