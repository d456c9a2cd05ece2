import { expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { gaussLegendre } from "../../src/math/quadrature.js";
import { cross } from "../../src/math/vector.js";
import type { Source } from "../../src/scene/types.js";
import { prepareSource } from "../../src/transport/direct.js";
import { shadedReading, shadedSource } from "../../src/transport/hiding/shaded.js";
import { mustBreak } from "../helpers/must-break.js";
import { readRows } from "../helpers/reference-rows.js";
import { sourceOf } from "../helpers/sources.js";

/**
 * Every view factor of the check rows through the direct light of a scene: one surface shines with 1 lm/m2, and what a
 * flat meter reads is its view factor of that surface; the mean over a surface is that surface's. Sources stand in
 * tests/reference/view-factor: Howell's catalogue; Siegel and Howell.
 */
type Row = ReturnType<typeof readRows>[number];

/** Where a meter stands and looks, and how much of the mean it is. */
interface Place {
  readonly at: Vec3;
  readonly facing: Vec3;
  readonly part: number;
}
interface Case {
  readonly source: Source;
  readonly area: number;
  readonly places: readonly Place[];
}

const up: Vec3 = [0, 0, 1];
const rule = gaussLegendre(48);
/** Points of a mean from a to b, thick at both ends, where surfaces meet. */
const line = (a: number, b: number): readonly (readonly [x: number, part: number])[] =>
  rule.points.map((p, i) => {
    const s = (p + 1) / 2;
    const part = ((rule.weights[i] as number) / 2) * 6 * s * (1 - s);
    return [a + (b - a) * s * s * (3 - 2 * s), part] as const;
  });

/** Meters on the floor that look up. */
const floor = (x1: number, x2: number, y1: number, y2: number): readonly Place[] =>
  line(x1, x2).flatMap(([x, a]) =>
    line(y1, y2).map(([y, b]): Place => ({ at: [x, y, 0], facing: up, part: a * b })),
  );
const one = (at: Vec3, facing: Vec3 = up): readonly Place[] => [{ at, facing, part: 1 }];

/** A rectangle that shines along `axis`, with its width along `across`. */
function rectangle(centre: Vec3, axis: Vec3, across: Vec3, width: number, height: number): Source {
  const plain = sourceOf({ kind: "rectangle", width, height }, centre, axis);
  return { ...plain, across, along: cross(axis, across) };
}
const above = (x1: number, x2: number, y1: number, y2: number, z: number): Source =>
  rectangle([(x1 + x2) / 2, (y1 + y2) / 2, z], [0, 0, -1], [1, 0, 0], x2 - x1, y2 - y1);
/** A leaf of width w that is hinged on the line x = 0 of the floor and opened by an angle from it. */
const leaf = (common: number, w: number, angle: number): Source => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return rectangle([(w / 2) * c, common / 2, (w / 2) * s], [s, 0, -c], [c, 0, s], w, common);
};
/** Longer than anything here by far. */
const ENDLESS = 1e5;

const layouts: Readonly<Record<string, (n: (name: string) => number) => Case>> = {
  view_factor_parallel_equal_rectangles: (n) => ({
    source: above(0, n("a"), 0, n("b"), n("c")),
    area: n("a") * n("b"),
    places: floor(0, n("a"), 0, n("b")),
  }),
  view_factor_offset_parallel_rectangles: (n) => ({
    source: above(n("a1"), n("a2"), n("b1"), n("b2"), n("z")),
    area: (n("a2") - n("a1")) * (n("b2") - n("b1")),
    places: floor(n("x1"), n("x2"), n("y1"), n("y2")),
  }),
  view_factor_perpendicular_rectangles_common_edge: (n) => ({
    source: leaf(n("common"), n("w2"), Math.PI / 2),
    area: n("common") * n("w2"),
    places: floor(0, n("w1"), 0, n("common")),
  }),
  view_factor_rectangles_common_edge_at_angle: (n) => ({
    source: leaf(n("common"), n("w2"), (n("angle_deg") * Math.PI) / 180),
    area: n("common") * n("w2"),
    places: floor(0, n("w1"), 0, n("common")),
  }),
  view_factor_infinite_wedge: (n) => ({
    source: leaf(ENDLESS, n("w2"), (n("angle_deg") * Math.PI) / 180),
    area: ENDLESS * n("w2"),
    places: line(0, n("w1")).map(([x, part]) => ({ at: [x, ENDLESS / 2, 0], facing: up, part })),
  }),
  view_factor_infinite_parallel_strips: (n) => ({
    source: above(0, n("w"), 0, ENDLESS, n("h")),
    area: ENDLESS * n("w"),
    places: line(0, n("w")).map(([x, part]) => ({ at: [x, ENDLESS / 2, 0], facing: up, part })),
  }),
  view_factor_element_to_coaxial_disc: (n) => ({
    source: sourceOf({ kind: "disc", radius: n("R") }, [0, 0, n("h")], [0, 0, -1]),
    area: Math.PI * n("R") * n("R"),
    places: one([0, 0, 0]),
  }),
  view_factor_element_to_rectangle_corner_parallel: (n) => ({
    source: above(0, n("a"), 0, n("b"), n("c")),
    area: n("a") * n("b"),
    places: one([0, 0, 0]),
  }),
  // The element lies in the floor; the rectangle stands on it, a along the edge and b up.
  view_factor_element_to_rectangle_perpendicular: (n) => ({
    source: rectangle([n("a") / 2, n("c"), n("b") / 2], [0, -1, 0], [1, 0, 0], n("a"), n("b")),
    area: n("a") * n("b"),
    places: one([0, 0, 0]),
  }),
  view_factor_coaxial_discs: (n) => ({
    source: sourceOf({ kind: "disc", radius: n("R2") }, [0, 0, n("h")], [0, 0, -1]),
    area: Math.PI * n("R2") * n("R2"),
    places: rings(n("R1")),
  }),
  // The sphere's whole light on the disc is its factor: the disc's mean times the disc's area over the sphere's.
  view_factor_sphere_to_coaxial_disc: (n) => ({
    source: sourceOf({ kind: "sphere", radius: 0.2 }, [0, 0, n("h")]),
    area: Math.PI * n("r") * n("r"),
    places: rings(n("r")),
  }),
};

/** Meters along a radius, as the mean over a disc. */
function rings(radius: number): readonly Place[] {
  return line(0, 1).map(([s, part]) => ({ at: [s * radius, 0, 0], facing: up, part: part * 2 * s }));
}

type Read = typeof shadedReading;
const rows = readRows("view-factor");

const law = (row: Row, read: Read): void => {
  const layout = layouts[row.quantity];
  if (layout === undefined) throw new Error(`no layout for ${row.quantity}`);
  const { source, area, places } = layout((name) => row.inputs.get(name) as number);
  const prepared = shadedSource(prepareSource(source), []);
  let mean = 0;
  for (const { at, facing, part } of places) mean += part * read(prepared, at, facing, "disc");
  // Of 1 lm in all: the exitance is one over the area.
  expect(Math.abs((mean * area) / row.expected - 1)).toBeLessThan(1e-6);
};

test.each(rows.map((row) => [row.id, row.quantity, row] as const))("%s %s", (_id, _quantity, row) => {
  law(row, shadedReading);
  mustBreak(() =>
    law(row, (source, at, facing, receptor) => shadedReading(source, at, facing, receptor) * 1.00001),
  );
});

test("every layout has a row", () => {
  expect([...new Set(rows.map(({ quantity }) => quantity))].sort()).toEqual(Object.keys(layouts).sort());
});
