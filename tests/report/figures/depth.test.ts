import { describe, expect, test } from "vitest";
import { at } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { AreaMark, Drawing } from "../../../src/report/figures/drawing.js";
import { edgeDrawing } from "../../../src/report/figures/edge.js";
import { frameDrawing } from "../../../src/report/figures/frame.js";
import { planDrawing } from "../../../src/report/figures/plan.js";
import { sideDrawing } from "../../../src/report/figures/side.js";
import { cm, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, dish, far, person, planOf, setOf } from "../../helpers/plan.js";

const none = { shadows: [], fans: [], doubled: [] };

const frameOf = (plan: ReturnType<typeof planOf>): Drawing => {
  const drawing = frameDrawing(plan, none);
  if (typeof drawing === "string") throw new Error(drawing);
  return drawing;
};

/** Names of areas in the order in which they are drawn, each once. */
const order = ({ marks }: Drawing): readonly string[] => [
  ...new Set(marks.flatMap((mark) => (mark.kind === "area" ? [mark.name] : []))),
];

const isDrawnFirst = (names: readonly string[], a: string, b: string): boolean =>
  names.includes(a) && names.includes(b) && names.indexOf(a) < names.indexOf(b);

describe("what stands nearer to the lens is drawn later", () => {
  const lens = far(50);
  // Beside the head in the picture, so that it shows wherever it stands.
  const lamp = (y: number, name: string) => bulb({ position: at(m(0.25), m(y), m(1.5)) }, name);

  test("a lamp behind a person before the person, one before the person after it", () => {
    expect(
      isDrawnFirst(order(frameOf(planOf({ camera: lens, lights: [lamp(1, "behind")] }))), "behind", "person"),
    ).toBe(true);
    expect(
      isDrawnFirst(
        order(frameOf(planOf({ camera: lens, lights: [lamp(-1, "nearer")] }))),
        "person",
        "nearer",
      ),
    ).toBe(true);
  });

  test("a flat behind the person before it, a flat before the person after it, whatever order they are written in", () => {
    const leaf = (name: string, y: number) =>
      block("flat", name, { size: size(cm(60), m(1)), at: at(m(0.2), m(y), m(1)) });
    for (const set of [
      setOf(leaf("close", -1), leaf("distant", 1)),
      setOf(leaf("distant", 1), leaf("close", -1)),
    ]) {
      const names = order(frameOf(planOf({ camera: lens, set, lights: [dish()] })));
      expect(isDrawnFirst(names, "distant", "person")).toBe(true);
      expect(isDrawnFirst(names, "person", "close")).toBe(true);
    }
  });
});

describe("what carries a lamp", () => {
  const stand = block("stand", null, { boom: m(1.2) });
  const plan = planOf({ subjects: [person], lights: [dish({ parts: [stand] })] });
  const tubes = (drawing: Drawing): readonly AreaMark[] =>
    drawing.marks.filter((mark): mark is AreaMark => mark.kind === "area" && mark.ink === "tube");

  test("is drawn once, in an ink of its own, where light meets it", () => {
    const bodies = plan.scene.bodies.filter((body) => body.of === "stand");
    expect(bodies).toHaveLength(2);
    for (const drawing of [planDrawing(plan, none), sideDrawing(plan)]) {
      expect(tubes(drawing).map(({ name }) => name)).toEqual(bodies.map(({ name }) => name));
      const people = drawing.marks.filter((mark) => mark.kind === "area" && mark.ink === "person");
      expect(people.length).toBeGreaterThan(0);
      expect(people.some((mark) => mark.kind === "area" && /stand|boom/.test(mark.name))).toBe(false);
    }
    // The side has y to the right and z up: the column reaches from the floor to the arm.
    const column = bodies[0];
    const mark = tubes(sideDrawing(plan))[0];
    if (column?.kind !== "capsule" || mark === undefined) throw new Error("no column");
    const ys = mark.outline.map(([, y]) => y);
    expect(Math.max(...ys)).toBeCloseTo(column.to[2] + column.radius, 6);
    expect(Math.min(...ys)).toBeCloseTo(0, 6);
  });

  test("its feet are a circle of their radius below the column", () => {
    const feet = planDrawing(plan, none).marks.find(
      (mark) => mark.kind === "area" && mark.name === "key feet",
    );
    const column = plan.scene.bodies.find((body) => body.name === "key stand");
    if (feet?.kind !== "area" || column?.kind !== "capsule") throw new Error("no feet");
    for (const [x, y] of feet.outline)
      expect(Math.hypot(x - column.from[0], y - column.from[1])).toBeCloseTo(0.5, 9);
  });
});

describe("the edge of one light", () => {
  const plan = planOf({ lights: [dish(), bulb({}, "fill")] });
  const names = (drawing: Drawing | null): readonly string[] => [
    ...new Set((drawing?.marks ?? []).flatMap((mark) => (mark.kind === "line" ? [mark.name] : []))),
  ];

  test("is drawn alone with the sun's, the edges of all where no light is named", () => {
    expect(names(edgeDrawing(plan))).toEqual(expect.arrayContaining(["key", "fill"]));
    const one = names(edgeDrawing(plan, 0.5, "fill"));
    expect(one).toContain("fill");
    expect(one).not.toContain("key");
  });
});
