import { describe, expect, test } from "vitest";
import { disc, metered } from "../../../src/model/make/lamps.js";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Drawing, LineMark, Place } from "../../../src/report/figures/drawing.js";
import { fallOffDrawing } from "../../../src/report/figures/fall-off.js";
import { walkLine } from "../../../src/report/light/along-line.js";
import type { Plan } from "../../../src/report/plan.js";
import { cm, fNumber, iso, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, dish, flat, planOf, room, setOf } from "../../helpers/plan.js";
import { reflect, roomOf } from "../../helpers/rooms.js";

function walkOf(plan: Plan, name = "key") {
  const source = plan.scene.sources.find((one) => one.name === name);
  const walk = source === undefined ? null : walkLine(plan, source);
  if (walk === null) throw new Error("no line");
  return walk;
}

function drawingOf(plan: Plan): Drawing {
  const [source] = plan.scene.sources;
  const drawing = source === undefined ? null : fallOffDrawing(plan, source);
  if (drawing === null) throw new Error("no figure");
  return drawing;
}

const runs = ({ marks }: Drawing, name: string): readonly (readonly Place[])[] =>
  marks
    .filter((mark): mark is LineMark => mark.kind === "line" && mark.name === name)
    .map(({ through }) => through);

const wide = { shape: disc(cm(120)), calibration: metered(fNumber(11), m(2), iso(100)) };

describe("the line", () => {
  test("runs from the lamp through the face to the wall: by similar triangles from their places", () => {
    const plan = planOf({ room });
    const { line } = walkOf(plan);
    const [lamp, face] = [plan.scene.sources[0]?.centre, plan.scene.subjects[0]?.face];
    if (lamp === undefined || face === undefined) throw new Error("no lamp");
    expect(line.spot).toBeCloseTo(Math.hypot(...lamp.map((x, i) => x - (face[i] as number))), 9);
    // The lamp is at camera-left before the person, so that the line meets the right or the back wall, or the floor.
    const walls = [
      (2.5 - lamp[0]) / (face[0] - lamp[0]),
      (3.5 - lamp[1]) / (face[1] - lamp[1]),
      (0 - lamp[2]) / (face[2] - lamp[2]),
    ];
    const nearest = Math.min(...walls);
    expect(line.end).toBeCloseTo(line.spot * nearest - 0.02, 6);
    expect(line.endName).toBe(["the right wall", "the back wall", "the floor"][walls.indexOf(nearest)]);
  });

  test("goes on through people, in whose bodies it would be dark, and ends at a flat", () => {
    const plan = planOf({ set: setOf(flat) });
    const { line, places } = walkOf(plan);
    const face = plan.scene.subjects[0]?.face as readonly number[];
    expect((face[1] as number) + line.way[1] * (line.end - line.spot)).toBeCloseTo(0.6, 1);
    expect(line.endName).toBe("back");
    for (const { reading } of places) expect(reading.shares[0]?.direct).toBeGreaterThan(0);
  });

  test("is none where a leaf before the face leaves no light to compare with", () => {
    const leaf = block("flat", "leaf", { size: size(m(3), m(2.6)), at: offset({ ahead: cm(60) }) });
    const { scene, recipe, light } = planOf({ set: setOf(leaf) });
    const [source] = scene.sources;
    expect(source === undefined ? source : walkLine({ recipe, scene, light }, source)).toBeNull();
  });
});

describe("the fall-off", () => {
  test("of a small ball is 2 stops from any distance to its double, and lies on the inverse square", () => {
    const plan = planOf({ lights: [bulb()] });
    const { spot, places } = walkOf(plan);
    const [first, last] = [places[0], places[places.length - 1]];
    expect(first?.away).toBeCloseTo(spot.away / 8, 9);
    // Three doublings from the nearest place to the face: 6 stops. A ball's light is that of its centre at any distance.
    expect(Math.log2((first?.reading.exposure as number) / spot.reading.exposure)).toBeCloseTo(6, 6);
    expect(last?.away).toBeCloseTo(2 * spot.away, 9);
    expect(Math.log2((last?.reading.exposure as number) / spot.reading.exposure)).toBeCloseTo(-2, 6);
    const drawing = drawingOf(plan);
    const [curve] = runs(drawing, "key");
    const [point] = runs(drawing, "inverse square");
    expect(curve?.length).toBeGreaterThan(30);
    for (const [i, [x, y]] of (curve ?? []).entries()) {
      expect(x).toBeCloseTo(point?.[i]?.[0] as number, 9);
      expect(y).toBeCloseTo(point?.[i]?.[1] as number, 6);
    }
  });

  test("of a wide disc on its axis goes with 1 / (d^2 + R^2), the disc formula of handbooks of illumination", () => {
    const { spot, places } = walkOf(planOf({ lights: [dish(wide)] }));
    const share = (away: number): number => 1 / (away * away + 0.36);
    for (const { away, reading } of places)
      expect(reading.exposure / spot.reading.exposure, `${away} m`).toBeCloseTo(
        share(away) / share(spot.away),
        6,
      );
  });

  test("does not depend on the lamp's power; beside the face stands 0", () => {
    const { spot, places } = walkOf(planOf({ lights: [dish()] }));
    const dim = walkOf(planOf({ lights: [dish({ calibration: metered(fNumber(2.8), m(2), iso(100)) })] }));
    for (const [i, { reading }] of places.entries())
      expect(reading.exposure / spot.reading.exposure).toBeCloseTo(
        (dim.places[i]?.reading.exposure as number) / dim.spot.reading.exposure,
        9,
      );
  });

  test("in a closed bright room flattens: far from the lamp most of the light is what the room holds", () => {
    const bright = roomOf(reflect("walls", 80), reflect("ceiling", 80), reflect("floor", 80));
    const plan = planOf({ room: bright, lights: [bulb()] });
    const { places, spot } = walkOf(plan);
    // A cavity holds flux x rho / (A (1 - rho)) on the mean of its walls, here 142 m2 (CIE 84 for spheres; exact for the mean
    // of any closed room). A place of the line beyond the face is within a stop of it.
    const held = ((plan.scene.sources[0]?.energy as number) * 0.8) / (142 * 0.2);
    for (const { away, reading } of places)
      if (away > spot.away)
        expect(Math.abs(Math.log2((reading.shares[0]?.bounced as number) / held))).toBeLessThan(1);
    const of = (kind: "direct" | "bounced"): number[] =>
      places.map(({ reading }) => reading.shares[0]?.[kind] as number);
    const span = (values: readonly number[]): number => Math.log2(Math.max(...values) / Math.min(...values));
    const bounced = of("bounced");
    expect(span(of("direct"))).toBeGreaterThan(6);
    expect(span(bounced)).toBeLessThan(span(of("direct")) / 3);
    expect(bounced[bounced.length - 1]).toBeGreaterThan(of("direct")[bounced.length - 1] as number);
  });

  test("is not drawn of a light that gives the face nothing", () => {
    const plan = planOf();
    const off = { ...plan.scene.sources[0], energy: 0 } as (typeof plan.scene.sources)[number];
    expect(fallOffDrawing({ ...plan, scene: { ...plan.scene, sources: [off] } }, off)).toBeNull();
  });

  test("says in words what the ends of the curves show", () => {
    expect(drawingOf(planOf({ lights: [bulb()] })).description).toMatch(
      /At the end of the line, 4\.80 m from key: key -2\.0 and by the inverse square -2\.0\./,
    );
  });
});
