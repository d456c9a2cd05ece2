import { describe, expect, test } from "vitest";
import { disc } from "../../../src/model/make/lamps.js";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { buildReport } from "../../../src/report/build.js";
import type { Drawing, LabelMark, Mark, Place, TapeMark } from "../../../src/report/figures/drawing.js";
import { edgeDrawing } from "../../../src/report/figures/edge.js";
import { frameDrawing } from "../../../src/report/figures/frame.js";
import { planDrawing } from "../../../src/report/figures/plan.js";
import { readingsDrawing } from "../../../src/report/figures/readings.js";
import { sideDrawing } from "../../../src/report/figures/side.js";
import { throwDrawing } from "../../../src/report/figures/throw.js";
import { shadowEdge } from "../../../src/report/light/shadow-edge.js";
import { cm, m, mm } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, camera, dish, planOf, room, setOf } from "../../helpers/plan.js";

const flat = block("flat", "back", {
  size: size(m(1.5), m(2)),
  at: offset({ behind: cm(60) }),
  thickness: cm(4),
});
const plan = planOf({ room, set: setOf(flat) });
const { thrown } = buildReport(plan.recipe, plan.scene, plan.light);
const none = { shadows: [], fans: [], doubled: [] };
const named = (drawing: Drawing, name: string): Mark[] =>
  drawing.marks.filter((mark) => "name" in mark && mark.name === name);
const tapes = ({ marks }: Drawing): TapeMark[] => marks.filter((mark) => mark.kind === "tape");
const labels = ({ marks }: Drawing): string[] =>
  marks.filter((mark): mark is LabelMark => mark.kind === "label").map(({ text }) => text);
const lengthOf = ({ from, to }: TapeMark): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

describe("the plan", () => {
  const drawing = planDrawing(plan, thrown);
  const key = plan.scene.sources[0];
  if (key === undefined) throw new Error("no key");

  test("every tape says the length that it has on the paper", () => {
    expect(tapes(drawing).length).toBeGreaterThan(5);
    for (const tape of tapes(drawing)) {
      const [figure, unit] = tape.text.split(",")[0]?.split(" ") ?? [];
      const metres = Number(figure) * (unit === "cm" ? 0.01 : 1);
      expect(Math.abs(metres - lengthOf(tape)), tape.text).toBeLessThan(0.0051);
    }
  });

  test("the lamp is where it stands, with both tapes and its height", () => {
    const at: Place = [key.centre[0], key.centre[1]];
    const ends = tapes(drawing).filter(({ to }) => to[0] === at[0] && to[1] === at[1]);
    expect(ends.map(({ from }) => from)).toEqual([
      [0, 0],
      [plan.scene.camera?.at[0], plan.scene.camera?.at[1]],
    ]);
    expect(labels(drawing)).toContain("key, 2.20 m up");
  });

  test("the picture's edges open by the angle of view: 24 mm at the image distance of 85 mm", () => {
    const edges = named(drawing, "edge of the picture");
    const angles = edges.map((mark) => {
      if (mark.kind !== "line") throw new Error("no line");
      const [a, b] = mark.through as [Place, Place];
      return Math.atan2(b[0] - a[0], b[1] - a[1]);
    });
    // v = f s / (s - f) with the face 3.5 m less 0.057 x 1.7 m away (ISO 9358 calls it the image distance).
    const s = 3.5 - 0.057 * 1.7;
    const v = (0.085 * s) / (s - 0.085);
    expect((angles[1] as number) - (angles[0] as number)).toBeCloseTo(2 * Math.atan(0.012 / v), 4);
  });

  test("the picture's edges end where they meet the set, behind people, or a little past the mark in the open", () => {
    const ends = (drawing: Drawing, along = 1): number[] =>
      named(drawing, "edge of the picture").flatMap((mark) =>
        mark.kind === "line" ? [mark.through[1]?.[along] as number] : [],
      );
    for (const y of ends(drawing)) expect(y).toBeCloseTo(0.6, 9);
    for (const y of ends(planDrawing(planOf({ room }), none))) expect(y).toBeCloseTo(3.5, 9);
    for (const y of ends(planDrawing(planOf(), none))) expect(y).toBeCloseTo(2, 9);
    // From the side, a long lens looks into the trunk with its lower edge, and the line goes on behind it.
    const near = planOf({ camera: { ...camera, focal_length: mm(200) } });
    for (const y of ends(sideDrawing(near), 0)) expect(y).toBeCloseTo(2, 9);
  });

  test("no name lies on a person", () => {
    const people = drawing.marks.filter((mark) => mark.kind === "area" && mark.ink === "person");
    const boxes = people.map((mark) => (mark.kind === "area" ? mark.outline : []));
    expect(boxes.length).toBeGreaterThan(3);
    for (const mark of drawing.marks) {
      if (mark.kind !== "label") continue;
      const wide = 0.5 * drawing.em * mark.text.length;
      const left =
        mark.anchor === "start" ? mark.at[0] : mark.at[0] - (mark.anchor === "end" ? wide : wide / 2);
      for (const outline of boxes)
        for (const [x, y] of outline)
          expect(
            x > left && x < left + wide && Math.abs(y - mark.at[1]) < 0.3 * drawing.em,
            `${mark.text} on a person`,
          ).toBe(false);
    }
  });

  test("a leaf seen on edge is as long as it is wide and as thick as it is", () => {
    const [leaf] = named(drawing, "back");
    if (leaf?.kind !== "area") throw new Error("no leaf");
    const xs = leaf.outline.map(([x]) => x);
    const ys = leaf.outline.map(([, y]) => y);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(1.5, 12);
    expect(Math.min(...ys)).toBeCloseTo(0.6, 12);
    expect(Math.max(...ys)).toBeCloseTo(0.64, 12);
  });

  test("a set-up seen in the mirror has the mirror's plan", () => {
    const left = planDrawing(planOf({ lights: [dish()] }), none);
    const right = planDrawing(
      planOf({ lights: [dish({ bearing: { ...dishBearing(), side: "right" } })] }),
      none,
    );
    const lamp = (drawing: Drawing): readonly Place[] => {
      const [mark] = named(drawing, "key").filter(({ kind }) => kind === "area");
      return mark?.kind === "area" ? mark.outline : [];
    };
    const xs = (places: readonly Place[]): number[] => places.map(([x]) => x).sort((a, b) => a - b);
    const mirrored = xs(lamp(right))
      .map((x) => -x)
      .sort((a, b) => a - b);
    const lefts = xs(lamp(left));
    expect(lefts.length).toBe(mirrored.length);
    for (const [i, x] of lefts.entries()) expect(x).toBeCloseTo(mirrored[i] as number, 9);
  });
});

const dishBearing = () => {
  const { bearing } = dish();
  if (bearing === undefined) throw new Error("no bearing");
  return bearing;
};

describe("the side", () => {
  test("heights are true: lamp to floor and to ceiling, lens, face", () => {
    const drawing = sideDrawing(plan);
    const texts = tapes(drawing).map(({ text }) => text);
    expect(texts).toContain("2.20 m");
    expect(texts).toContain("60 cm");
    expect(texts).toContain("1.30 m");
    expect(texts).toContain("3.50 m");
    expect(labels(drawing)).toContain("face, 1.59 m up");
  });
});

describe("the throw", () => {
  const [key] = plan.scene.sources;
  if (key === undefined) throw new Error("no key");

  test("the line over the head ends where a stick of that height throws its shadow: h D / (H - h)", () => {
    const drawing = throwDrawing(plan, key);
    if (drawing === null) throw new Error("no throw");
    const [ray] = named(drawing, "to the top of the head");
    if (ray?.kind !== "line") throw new Error("no ray");
    const [[lampX, lampZ], tip] = ray.through as [Place, Place];
    const top = plan.scene.subjects[0]?.top as number;
    const end = (top * -lampX) / (lampZ - top);
    if (end <= 6) expect(tip).toEqual([expect.closeTo(end, 9), 0]);
    else expect(tip[1]).toBeCloseTo(top - ((lampZ - top) * tip[0]) / -lampX, 9);
  });

  test("floor and ceiling reach under and over the whole of a wide lamp", () => {
    const sky = planOf({
      room,
      lights: [dish({ shape: disc(m(3)), height: m(2.5) })],
    });
    const [source] = sky.scene.sources;
    const drawing = source === undefined ? null : throwDrawing(sky, source);
    if (drawing === null) throw new Error("no throw");
    const least = (name: string): number =>
      Math.min(
        ...named(drawing, name).flatMap((mark) =>
          mark.kind === "line"
            ? mark.through.map(([x]) => x)
            : mark.kind === "area"
              ? mark.outline.map(([x]) => x)
              : [],
        ),
      );
    expect(least("floor")).toBeLessThan(least("key"));
    expect(least("ceiling")).toBeLessThan(least("key"));
  });

  test("without a subject there is none", () => {
    expect(throwDrawing(planOf({ subjects: [] }), key)).toBeNull();
  });
});

describe("the frame", () => {
  const drawing = frameDrawing(plan, thrown);
  if (typeof drawing === "string") throw new Error(drawing);
  const inBox = (name: string): { x: number; y: number }[] =>
    named(drawing, name).flatMap((mark) =>
      mark.kind === "area" ? mark.outline.map(([x, y]) => ({ x, y })) : [],
    );

  test("is 24 by 36 mm seen through the lens in the plane of focus, its middle in the middle", () => {
    const xs = inBox("the picture").map(({ x }) => x);
    const ys = inBox("the picture").map(({ y }) => y);
    const s = 3.5 - 0.057 * 1.7;
    const v = (0.085 * s) / (s - 0.085);
    expect(Math.max(...xs)).toBeCloseTo((0.012 * s) / v, 6);
    expect(Math.max(...ys)).toBeCloseTo((0.018 * s) / v, 6);
    expect(Math.min(...xs)).toBeCloseTo(-(0.012 * s) / v, 6);
  });

  test("a leaf 60 cm behind the mark is as much smaller as it is farther than the focus", () => {
    const tops = inBox("back").map(({ y }) => y);
    const s = 3.5 - 0.057 * 1.7;
    expect(Math.max(...tops)).toBeCloseTo(((2 - 1.3) * s) / 4.1, 6);
  });

  test("what is hatched lies in the picture, above or beside the set", () => {
    const lines = named(drawing, "bare");
    expect(lines.length).toBeGreaterThan(3);
    const top = Math.max(...inBox("the picture").map(({ y }) => y));
    const set = Math.max(...inBox("back").map(({ y }) => y));
    for (const mark of lines) {
      if (mark.kind !== "line") continue;
      for (const [, y] of mark.through) {
        expect(y).toBeLessThanOrEqual(top + 1e-9);
        expect(y).toBeGreaterThanOrEqual(set - 1e-6);
      }
    }
  });
});

describe("shadows of people", () => {
  test("lie on the plan where a ray over the head's top meets the floor, and on the set in the frame", () => {
    const open = planOf({ lights: [bulb({ height: m(3) })] });
    const report = buildReport(open.recipe, open.scene, open.light);
    const drawing = planDrawing(open, report.thrown);
    const ys = drawing.marks.flatMap((mark) =>
      mark.kind === "area" && mark.name.startsWith("shadow of") ? mark.outline.map(([x, y]) => [x, y]) : [],
    );
    expect(ys.length).toBeGreaterThan(20);
    const [lamp] = open.scene.sources;
    const top = open.scene.subjects[0]?.top as number;
    if (lamp === undefined) throw new Error("no lamp");
    // The top of the head throws its shadow h D / (H - h) behind its foot, along the line from the lamp's foot.
    const away = Math.hypot(lamp.centre[0], lamp.centre[1]);
    const reach = (top * away) / (lamp.centre[2] - top);
    const far = Math.max(...ys.map(([x, y]) => Math.hypot(x as number, y as number)));
    expect(Math.abs(far - reach)).toBeLessThan(0.12);
    const walled = frameDrawing(plan, thrown);
    if (typeof walled === "string") throw new Error(walled);
    expect(walled.marks.some((mark) => "name" in mark && mark.name.startsWith("shadow of"))).toBe(true);
  });
});

describe("the edge of a shadow", () => {
  test("the curve runs from dark to light over the full width, the middle at half the light for a ball", () => {
    const ball = planOf({ lights: [bulb()] });
    const drawing = edgeDrawing(ball, 0.25);
    if (drawing === null) throw new Error("no edge");
    const [curve] = named(drawing, "key");
    if (curve?.kind !== "line") throw new Error("no curve");
    const ys = curve.through.map(([, y]) => y);
    expect(ys.every((y, i) => i === 0 || y >= (ys[i - 1] as number) - 1e-9)).toBe(true);
    const [source] = ball.scene.sources;
    const full = source === undefined ? null : shadowEdge(source, 0.25);
    expect(drawing.notes.join(" ")).toContain(`key ${((full as number) * 1000).toFixed(1)} mm`);
    const middle = curve.through[Math.floor(curve.through.length / 2)] as Place;
    expect(middle[1] / 24).toBeCloseTo(0.5, 2);
  });
});

describe("the readings", () => {
  test("each bar is as long as its stops say", () => {
    const report = buildReport(plan.recipe, plan.scene, plan.light);
    const drawing = readingsDrawing(report);
    if (drawing === null) throw new Error("no readings");
    const scale = 5;
    for (const row of report.stations) {
      if (row.from_key === null || row.from_key < -8) continue;
      const bars = named(drawing, row.name).filter(({ kind }) => kind === "area");
      const lengths = bars.map((bar) => {
        const xs = bar.kind === "area" ? bar.outline.map(([x]) => x) : [];
        return (xs[1] as number) - (xs[0] as number);
      });
      expect(lengths.some((long) => Math.abs(long - scale * (row.from_key as number)) < 1e-9)).toBe(true);
    }
  });
});
