import { describe, expect, test } from "vitest";
import { right, tape } from "../../../src/model/make/points.js";
import { buildReport } from "../../../src/report/build.js";
import type { AreaMark, Drawing, Place } from "../../../src/report/figures/drawing.js";
import { ratioDrawing } from "../../../src/report/figures/ratio.js";
import type { Plan } from "../../../src/report/plan.js";
import { deg, m } from "../../../src/units/make.js";
import { dish, flat, planOf, room, setOf } from "../../helpers/plan.js";

const made = (plan: Plan) => {
  const report = buildReport(plan.recipe, plan.scene, plan.light);
  const drawing = ratioDrawing(plan, report);
  if (drawing === null) throw new Error("no figure");
  return { report, drawing };
};

/** Dots by name, their middles. */
const dots = ({ marks }: Drawing): ReadonlyMap<string, Place> =>
  new Map(
    marks
      .filter((mark): mark is AreaMark => mark.kind === "area")
      .map(({ name, outline }) => {
        const mean = (of: (place: Place) => number): number =>
          outline.reduce((sum, place) => sum + of(place), 0) / outline.length;
        return [name, [mean(([x]) => x), mean(([, y]) => y)] as const];
      }),
  );

/** Stops of each dot from the line of the key's reading. */
function stopsOf(drawing: Drawing): ReadonlyMap<string, number> {
  const zero = drawing.marks.find((mark) => mark.kind === "line" && mark.ink === "axis");
  const one = drawing.marks.filter((mark) => mark.kind === "line" && mark.name === "stops");
  const xs = one.map((mark) => (mark.kind === "line" ? (mark.through[0]?.[0] as number) : 0));
  const stop = (xs[1] as number) - (xs[0] as number);
  const at = zero?.kind === "line" ? (zero.through[0]?.[0] as number) : Number.NaN;
  return new Map([...dots(drawing)].map(([name, [x]]) => [name, (x - at) / stop]));
}

describe("the ratio", () => {
  const two = [dish(), dish({ bearing: right(deg(35)) }, "fill")];

  test("the parts of a reading are together the reading: light adds, stops do not", () => {
    const { drawing, report } = made(planOf({ room, set: setOf(flat), lights: two }));
    const stops = stopsOf(drawing);
    for (const name of ["face", "lit_cheek", "shaded_cheek", "floor", "back"]) {
      const parts = [...stops]
        .filter(([one]) => one.startsWith(`${name}: `))
        .map(([, at]) => Math.exp(at * Math.LN2));
      const whole = Math.exp((stops.get(name) as number) * Math.LN2);
      expect(parts.length, name).toBeGreaterThan(1);
      const sum = parts.reduce((a, b) => a + b, 0);
      // Parts below a hundredth have no row; there are four at most.
      expect(sum / whole, name).toBeLessThan(1 + 1e-6);
      expect(sum / whole, name).toBeGreaterThan(0.96);
      const station = report.stations.find((row) => row.name === name && row.receptor === "disc");
      expect(stops.get(name), name).toBeCloseTo(station?.from_key as number, 9);
    }
  });

  test("in the open two equal lamps to either side give the nose's line the same, each a stop under both", () => {
    const { drawing } = made(planOf({ lights: two }));
    const stops = stopsOf(drawing);
    // Mirror images: what one gives to one cheek, the other gives to the other.
    expect(stops.get("lit_cheek")).toBeCloseTo(stops.get("shaded_cheek") as number, 6);
    expect(stops.get("lit_cheek: key")).toBeCloseTo(stops.get("shaded_cheek: fill") as number, 6);
    expect([...stops.keys()].some((name) => name.includes("bounced"))).toBe(false);
    expect(drawing.notes.join(" ")).toContain("lit_cheek to shaded_cheek: 1:1 (0.0 stop)");
  });

  test("a lamp from the front lights both cheeks by the cosine of 45 deg, half a stop under the face", () => {
    // From 48 m the few centimetres between the places of the meters are nothing.
    const front = dish({ bearing: right(deg(0)), height: m(1.586), distance: tape(m(48)) });
    const { drawing } = made(planOf({ lights: [front] }));
    const stops = stopsOf(drawing);
    expect(stops.get("face")).toBeCloseTo(0, 6);
    expect(stops.get("lit_cheek")).toBeCloseTo(-0.5, 2);
  });

  test("is not drawn without a face", () => {
    const plan = planOf({ subjects: [] });
    expect(ratioDrawing(plan, buildReport(plan.recipe, plan.scene, plan.light))).toBeNull();
  });
});
