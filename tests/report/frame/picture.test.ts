import { describe, expect, test } from "vitest";
import { at, named } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import { edgeOf } from "../../../src/model/make/surroundings.js";
import type { Recipe } from "../../../src/model/types.js";
import { closings } from "../../../src/report/frame/close-gap.js";
import { coverageOf } from "../../../src/report/frame/coverage.js";
import { framingOf, subjectHeight } from "../../../src/report/frame/framing.js";
import { frameTop, handLimit } from "../../../src/report/frame/hands.js";
import { lensOf } from "../../../src/report/frame/project.js";
import { seamsOf } from "../../../src/report/frame/seams.js";
import { seenThings } from "../../../src/report/frame/seen.js";
import { buildScene } from "../../../src/scene/build.js";
import { deg, m, mm } from "../../../src/units/make.js";
import { block, recipe } from "../../helpers/models.js";
import { camera, dish, far, setOf } from "../../helpers/plan.js";

const built = (parts: Partial<Recipe>) => {
  const made = recipe({ camera, ...parts });
  const scene = buildScene(made, () => undefined);
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (lens === null) throw new Error("no lens");
  return { recipe: made, scene, lens };
};

const leaf = (x: number, width = 0.5, height = 1.8) =>
  block("flat", "back", { size: size(m(width), m(height)), at: at(m(x), m(0), m(0)) });

describe("seams", () => {
  test("the edges of a leaf lie where like triangles put them", () => {
    const { scene } = built({ set: setOf(leaf(0.1)), camera: far(50) });
    const seams = seamsOf(scene);
    const edge = (side: string) => seams.find((seam) => seam.side === side);
    // Half a frame is 12 / 50 x 4 m wide and 18 / 50 x 4 m high at the leaf.
    expect(edge("left")?.from[0]).toBeCloseTo((0.1 - 0.25) / 0.96, 9);
    expect(edge("right")?.from[0]).toBeCloseTo((0.1 + 0.25) / 0.96, 9);
    expect(edge("top")?.from[1]).toBeCloseTo(0.3 / 1.44, 9);
    expect(edge("left")?.to[1]).toBeCloseTo(-1, 6);
    expect(edge("bottom")).toBeUndefined();
    expect(seams.every(({ kind, name }) => kind === "edge" && name === "back")).toBe(true);
  });

  test("with a raised lens a line is cut where the picture ends", () => {
    const seam = (shift: number) => {
      const { scene } = built({ set: setOf(leaf(0.1)), camera: far(50, { shift: mm(shift) }) });
      return seamsOf(scene).find(({ side }) => side === "left");
    };
    // Raised by a third of half the frame: the top edge, at 0.3 m above the lens, lies that much lower.
    expect(seam(6)?.from[1]).toBeCloseTo(0.3 / 1.44 - 1 / 3, 9);
    expect(seam(6)?.to[1]).toBeCloseTo(-1, 6);
    // Lowered by half of it the foot comes in: 1.5 m below the lens.
    expect(seam(-9)?.to[1]).toBeCloseTo(-1.5 / 1.44 + 0.5, 6);
  });

  test("two leaves that are joined have a fold and no edges there", () => {
    const wing = block("flat", "wing", {
      size: size(m(0.4), m(1.8)),
      hinge: edgeOf("right", "back"),
      opening: deg(120),
    });
    const { scene } = built({ set: setOf(leaf(-0.2), wing), camera: far(35) });
    const seams = seamsOf(scene);
    const fold = seams.filter(({ kind }) => kind === "fold");
    expect(fold.map(({ name }) => name)).toEqual(["back and wing"]);
    expect(fold[0]?.from[0]).toBeCloseTo((-0.2 + 0.25) / ((4 * 12) / 35), 9);
    expect(seams.some(({ kind, name, side }) => kind === "edge" && name === "back" && side === "right")).toBe(
      false,
    );
  });

  test("what is hidden is no seam, and a line is told as far as it is seen", () => {
    const before = block("panel", "screen", { size: size(m(0.3), m(3)), at: at(m(-0.15), m(-1), m(1.5)) });
    const { scene } = built({ set: setOf(leaf(0), before), camera: far(50) });
    const own = seamsOf(scene).filter(({ name }) => name === "back");
    expect(own.map(({ side }) => side).sort()).toEqual(["right", "top"]);
    // The screen ends on the axis; from there to the right the top edge is seen.
    expect(own.find(({ side }) => side === "top")?.from[0]).toBeCloseTo(0, 3);
    expect(own.find(({ side }) => side === "top")?.to[0]).toBeCloseTo(0.25 / 0.96, 6);
  });

  test("corners of the room by their two surfaces", () => {
    const room = block("room", null, { size: volume(m(3), m(12), m(2.6)) });
    const { scene } = built({ room, camera: far(20) });
    const names = seamsOf(scene).map(({ name }) => name);
    expect(names).toContain("the back wall and the floor");
    expect(names).toContain("the left wall and the back wall");
    const up = seamsOf(scene).find(({ name }) => name === "the left wall and the back wall");
    // The back wall is 10 m away: half the frame is 6 m there.
    expect(up?.from[0]).toBeCloseTo(-1.5 / 6, 9);
    expect(up?.from[1]).toBeCloseTo(1.1 / 9, 9);
  });
});

describe("things in the picture", () => {
  const lamp = (x: number, y: number, z: number, more: object = {}) =>
    dish({
      distance: undefined,
      bearing: undefined,
      height: undefined,
      position: at(m(x), m(y), m(z)),
      ...more,
    } as never);

  test("a lamp, its stand and a card, each with its place", () => {
    const { recipe: made, scene } = built({
      camera: far(35),
      set: setOf(block("card", "white", { size: size(m(0.4), m(0.4)), at: at(m(-0.8), m(0), m(1.5)) })),
      lights: [lamp(0.9, 0, 2, { aim: at(m(0), m(-4), m(1.5)), parts: [block("stand", null, {})] })],
    });
    const found = seenThings(scene, made);
    expect(found.map(({ kind, name }) => `${kind} ${name}`)).toEqual(["lamp key", "stand key", "card white"]);
    const half = (4 * 12) / 35;
    const card = found.find(({ kind }) => kind === "card");
    expect(card?.box.left).toBeCloseTo(-1 / half, 6);
    expect(card?.box.right).toBeCloseTo(-0.6 / half, 6);
    expect(card?.share).toBeCloseTo((0.4 * 0.4) / (4 * half * half * 1.5), 6);
    const stand = found.find(({ kind }) => kind === "stand");
    expect((stand?.box.left ?? 0) * half).toBeCloseTo(0.9 - 0.015, 2);
  });

  test("what stands before a lamp hides it, and outside of the frame there is none", () => {
    const screen = block("panel", "screen", { size: size(m(0.6), m(3)), at: at(m(0.7), m(-1), m(1.5)) });
    const seen = (set: Recipe["set"], x: number) => {
      const { recipe: made, scene } = built({ camera: far(35), set, lights: [lamp(x, 0, 1.8)] });
      return seenThings(scene, made).length;
    };
    expect(seen(null, 0.9)).toBe(1);
    expect(seen(setOf(screen), 0.9)).toBe(0);
    expect(seen(null, 1.6)).toBe(0);
  });

  test("an opening in a wall that is seen", () => {
    const room = block("room", null, {
      size: volume(m(4), m(12), m(2.6)),
      parts: [
        block("opening", "window", {
          wall: "back",
          size: size(m(1), m(1)),
          at: at(m(0.4), m(6), m(1)),
        } as never),
      ],
    } as never);
    const { recipe: made, scene } = built({ room, camera: far(35) });
    const [window] = seenThings(scene, made);
    expect(window?.kind).toBe("opening");
    // The back wall is 10 m away: half the frame is 12 / 35 x 10 m.
    expect(window?.box.left).toBeCloseTo(-0.1 / ((10 * 12) / 35), 6);
    expect(window?.box.right).toBeCloseTo(0.9 / ((10 * 12) / 35), 6);
  });
});

describe("the first subject", () => {
  const subject = block("subject", null, { height: m(1.7) });
  const framed = (focal: number, more: object = {}) => {
    const { scene, lens } = built({ subjects: [subject], camera: far(focal, more) });
    const [first] = scene.subjects;
    if (first === undefined) throw new Error("nobody");
    return { scene, lens, first };
  };

  // The lens at 1.5 m sees down to 1.5 m - 18 / f x 4 m in the plane of the subject; the knee, at 48.5 cm, lies nearer.
  test.each([
    [45, "full length"], // -0.10 m
    [55, "three-quarter"], // 0.19 m
    [68, "three-quarter"], // 0.44 m; 0.46 m at the knee
    [85, "half length"], // 0.65 m
    [135, "head and shoulders"], // 0.97 m
    [300, "head"], // 1.26 m
  ])("at %i mm it is %s", (focal, name) => {
    const { lens, scene, first } = framed(focal);
    expect(framingOf(lens, scene, first)).toBe(name);
  });

  test("a face outside of the picture has no framing", () => {
    const { lens, scene, first } = framed(85, { height: m(0.4) });
    expect(framingOf(lens, scene, first)).toBeNull();
  });

  test("its share of the height is stature over the field, and less where it is cut", () => {
    const whole = framed(35);
    // The head's top is nearer to round than to flat: within its depth of 10 cm at 4 m, 2.5 %.
    expect((subjectHeight(whole.lens, whole.scene, whole.first) ?? 0) / (1.7 / ((36 / 35) * 4))).toBeCloseTo(
      1,
      1,
    );
    const cut = framed(85);
    const top = (subjectHeight(cut.lens, cut.scene, cut.first) ?? 0) * ((36 / 85) * 4);
    expect(top).toBeCloseTo(1.7 - (1.5 - (18 / 85) * 4), 2);
  });

  test("the picture ends above the head where the drawing says, level and tilted", () => {
    const level = framed(50);
    expect(frameTop(level.lens, level.first)).toBeCloseTo(1.5 + (18 / 50) * 4, 6);
    const raised = framed(50, { shift: mm(5) });
    expect(frameTop(raised.lens, raised.first)).toBeCloseTo(1.5 + (23 / 50) * 4, 6);
    // Aimed at the mark's foot: the axis falls by atan(1.5 / 4), the upper edge lies atan(18 / 50) above it.
    const tilted = framed(50, { aim: named("mark") });
    const angle = Math.atan2(18, 50) - Math.atan2(1.5, 4);
    expect(frameTop(tilted.lens, tilted.first)).toBeCloseTo(1.5 + 4 * Math.tan(angle), 4);
  });

  test("hands end at the set where that is lower, by like triangles from the lens", () => {
    const set = setOf(block("panel", "wall", { size: size(m(3), m(2)), at: at(m(0), m(1), m(1)) }));
    const with_ = (focal: number) => {
      const { scene, lens } = built({ subjects: [subject], set, camera: far(focal) });
      const [first] = scene.subjects;
      return first === undefined ? null : handLimit(lens, scene, first);
    };
    const limit = with_(35);
    expect(limit?.by).toBe("set");
    // The face lies 9.7 cm before the mark (half the head's depth), where the tape to the set begins.
    const lensToFace = 4 - 0.057 * 1.7;
    expect(limit?.height).toBeCloseTo(1.5 + (0.5 * lensToFace) / 5, 9);
    expect(with_(200)).toMatchObject({ by: "frame" });
  });
});

describe("what closes a gap", () => {
  const wall = (width: number, height: number) =>
    block("flat", "back", { size: size(m(width), m(height)), at: at(m(0), m(0), m(0)) });

  test("each change closes it, and a little less does not", () => {
    const parts = { set: setOf(wall(1.2, 3.2)), camera: far(35, { height: m(1.6) }) };
    const { recipe: made, scene } = built(parts);
    const found = closings(made, scene);
    // 24 / f x 4 m = 1.2 m at f = 80 mm; 24 / 35 x d = 1.2 m at 1.75 m; a leaf of 24 / 35 x 4 m = 2.743 m, and
    // 36 / 35 x 4 m = 4.11 m are too high for it: the lens sees from -0.46 m to 3.66 m.
    const value = (what: string) => found.find((row) => row.what === what)?.value;
    expect(value("camera.focal_length")).toBeCloseTo(0.08, 9);
    expect(value("camera.distance")).toBeCloseTo(1.75, 9);
    expect(value("back.width")).toBeUndefined();
    const low = built({ ...parts, camera: far(50, { height: m(1.6) }) });
    const more = closings(low.recipe, low.scene).find((row) => row.what === "back.width");
    expect(more?.value).toBeCloseTo(1.92, 9);
  });

  test("the opening it names closes the gap", () => {
    const wing = (opening: number) =>
      block("flat", "wing", {
        size: size(m(1), m(3.4)),
        hinge: edgeOf("right", "back"),
        opening: deg(opening),
      });
    const parts = (opening: number) => ({
      set: setOf(
        block("flat", "back", { size: size(m(1.3), m(3.4)), at: at(m(-0.35), m(0), m(0)) }),
        wing(opening),
      ),
      camera: far(50, { height: m(1.7) }),
    });
    const { recipe: made, scene } = built(parts(95));
    const found = closings(made, scene).find((row) => row.what === "wing.opening");
    if (found === undefined) throw new Error("nothing found");
    const covered = (opening: number) => {
      const there = coverageOf(built(parts(opening)).scene);
      return typeof there === "string" ? 0 : there.covered;
    };
    expect(covered(95)).toBeLessThan(0.999);
    expect(covered(found.value)).toBeCloseTo(1, 5);
    expect(covered(found.value - 1)).toBeLessThan(0.99999);
  });

  test("a gap between two leaves is closed by no lens", () => {
    const near = block("flat", "near", { size: size(m(0.9), m(4)), at: at(m(-0.4), m(0), m(0)) });
    const other = block("flat", "other", { size: size(m(1), m(4)), at: at(m(0.6), m(0), m(0)) });
    const { recipe: made, scene } = built({ set: setOf(near, other), camera: far(85) });
    expect(closings(made, scene).some(({ what }) => what.startsWith("camera"))).toBe(false);
  });
});
