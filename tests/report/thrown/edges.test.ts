import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { disc, rectangle, sphere } from "../../../src/model/make/lamps.js";
import { at, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { edgesAlong } from "../../../src/report/thrown/edges.js";
import { pointLight } from "../../../src/report/thrown/shade.js";
import {
  middleEdge,
  outlineEdges,
  type Shadow,
  shadowsOf,
  stageOf,
} from "../../../src/report/thrown/shadows-of.js";
import type { Scene } from "../../../src/scene/types.js";
import { prepareSource } from "../../../src/transport/direct.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, flat, planOf, room, setOf } from "../../helpers/plan.js";

const back = (behind: number) =>
  block("flat", "back", { size: size(m(4), m(4)), at: offset({ behind: m(behind) }) }) as never;
const lampAt = (x: number, y: number, z: number, shape = sphere(cm(10))) =>
  bulb({
    shape,
    distance: undefined as never,
    bearing: undefined as never,
    height: undefined as never,
    position: at(m(x), m(y), m(z)),
    aim: at(m(0), m(0), m(z)),
  });

const shadowOf = (scene: Scene, name: string, surface: string): Shadow => {
  const source = scene.sources[0];
  if (source === undefined) throw new Error("no light");
  const stage = stageOf(scene, source);
  const thrower = [...stage.throwers.people, ...stage.throwers.pieces].find((row) => row.name === name);
  const found =
    thrower === undefined ? undefined : shadowsOf(stage, thrower).find((row) => row.surface === surface);
  if (found === undefined) throw new Error(`no shadow of ${name} on ${surface}`);
  return found;
};

describe("the edge of a card's shadow on a parallel flat", () => {
  // A square card 60 cm wide, 3 m before a lamp of 10 cm on its axis, a flat 50 cm behind it.
  const card = block("card", "card", { size: size(cm(60), cm(60)), at: offset({ up: m(2) }) }) as never;
  const scene = planOf({
    subjects: [],
    camera: null,
    set: setOf(card, back(0.5)),
    lights: [lampAt(0, -3, 2, disc(cm(10)))],
  }).scene;
  const edges = outlineEdges(shadowOf(scene, "card", "back"));

  test("is s g / D wide for a flat lamp on the axis", () => {
    expect(edges.length).toBeGreaterThan(10);
    // Square to the axis, each side is a straight edge 3 m from a disc of 10 cm: 0.1 * 0.5 / 3 = 16.7 mm.
    for (const { full } of edges) expect(full).toBeCloseTo((0.1 * 0.5) / 3, 4);
  });

  test("and its outline is the card, larger by (D + g) / D", () => {
    const half = (0.3 * 3.5) / 3;
    for (const {
      at: [x, , z],
    } of edges)
      expect(Math.max(Math.abs(x), Math.abs(z - 2))).toBeCloseTo(half, 5);
  });
});

test("on the floor an edge across the light is wider by 1 / sin of its height, one along it is not", () => {
  // A lamp 10 cm wide, 2 m up, looked at from 2 m away; a board 1 m high stands at the mark, square to it.
  const board = block("flat", "board", { size: size(m(1), m(1)), at: offset({}) }) as never;
  const scene = planOf({ subjects: [], camera: null, set: setOf(board), lights: [lampAt(0, -2, 2)] }).scene;
  const edges = outlineEdges(shadowOf(scene, "board", "floor"));
  const top = edges.filter(({ at: [, y] }) => Math.abs(y - 2) < 1e-3);
  expect(top.length).toBeGreaterThan(0);
  for (const {
    full,
    away,
    gap,
    at: [x],
  } of top) {
    // In the plane square to the edge the ray falls at 45 deg: both outer rays by hand, tan of 45 deg -+ asin(r / d).
    if (Math.abs(x) > 0.9) continue;
    const d = Math.sqrt(1 + 4);
    const flatWay = Math.sqrt(2 * 2 + 1 * 1);
    expect(flatWay).toBeCloseTo(d, 9);
    const e = Math.atan2(1, 2);
    const open = Math.asin(0.05 / d);
    expect(full).toBeCloseTo(1 / Math.tan(e - open) - 1 / Math.tan(e + open), 4);
    expect(gap / away).toBeGreaterThan(0);
  }
});

describe("an outline against rays to all places of the lamp", () => {
  /** Share of a lamp's places from which a ray to a point is not stopped by the head's ellipsoid. */
  const seenShare = (scene: Scene, point: Vec3): number => {
    const source = scene.sources[0];
    const head = scene.bodies.find(({ name }) => name === "head");
    if (source === undefined || head?.kind !== "ellipsoid" || source.shape.kind !== "sphere")
      throw new Error("no");
    const { radius } = source.shape;
    const stretch = (p: Vec3): Vec3 =>
      head.axes.map((axis) => {
        const size2 = axis[0] * axis[0] + axis[1] * axis[1] + axis[2] * axis[2];
        return (
          ((p[0] - head.centre[0]) * axis[0] +
            (p[1] - head.centre[1]) * axis[1] +
            (p[2] - head.centre[2]) * axis[2]) /
          size2
        );
      }) as unknown as Vec3;
    // Places spread over the lamp's disc as seen from the point, by the golden angle.
    const way = source.centre.map((c, i) => c - (point[i] ?? 0));
    const far = Math.sqrt(way.reduce((sum, w) => sum + w * w, 0));
    const n = way.map((w) => w / far);
    const u = [-(n[1] ?? 0), n[0] ?? 0, 0];
    const us = Math.sqrt((u[0] ?? 0) ** 2 + (u[1] ?? 0) ** 2);
    const uu = u.map((w) => w / us);
    const v = [
      (n[1] ?? 0) * (uu[2] ?? 0) - (n[2] ?? 0) * (uu[1] ?? 0),
      (n[2] ?? 0) * (uu[0] ?? 0) - (n[0] ?? 0) * (uu[2] ?? 0),
      (n[0] ?? 0) * (uu[1] ?? 0) - (n[1] ?? 0) * (uu[0] ?? 0),
    ];
    const places = 4000;
    let free = 0;
    for (let i = 0; i < places; i++) {
      const r = radius * Math.sqrt((i + 0.5) / places);
      const turn = i * 2.399963229728653;
      const from = stretch(
        source.centre.map(
          (c, k) => c + r * (Math.cos(turn) * (uu[k] ?? 0) + Math.sin(turn) * (v[k] ?? 0)),
        ) as unknown as Vec3,
      );
      const to = stretch(point);
      const d = to.map((t, k) => t - (from[k] ?? 0));
      const dd = d.reduce((sum, x) => sum + x * x, 0);
      const t = -d.reduce((sum, x, k) => sum + x * (from[k] ?? 0), 0) / dd;
      const near = d.reduce((sum, x, k) => sum + ((from[k] ?? 0) + t * x) ** 2, 0);
      if (near > 1) free++;
    }
    return free / places;
  };

  const scene = planOf({
    set: setOf(flat),
    room,
    camera: null,
    lights: [bulb({ shape: sphere(cm(12)) })],
  }).scene;
  const { light, thrower, parts } = shadowOf(scene, "subject", "back");
  // The head's own outline, away from neck and shoulders.
  const edges = parts
    .flatMap(({ ground, rings }) => rings.flatMap((ring) => edgesAlong(light, ground, thrower.things, ring)))
    .filter(({ at: [, , z] }) => z > 1.36);

  test("half of the lamp is hidden on it", () => {
    expect(edges.length).toBeGreaterThan(20);
    for (const { at: place, across, full } of edges) {
      // The lamp is 12 cm wide and the head 15 cm: half is hidden within a fifteenth of the edge's width.
      const off = full / 15;
      const move = (by: number): Vec3 => place.map((p, k) => p + by * (across[k] ?? 0)) as unknown as Vec3;
      expect(seenShare(scene, move(-off))).toBeLessThan(0.5);
      expect(seenShare(scene, move(off))).toBeGreaterThan(0.5);
    }
  });

  test("light begins and is full at the ends of the width", () => {
    for (const { at: place, across, full } of edges) {
      const move = (by: number): Vec3 =>
        place.map((p, k) => p + by * full * (across[k] ?? 0)) as unknown as Vec3;
      expect(seenShare(scene, move(0.55))).toBe(1);
      expect(seenShare(scene, move(0.4))).toBeLessThan(1);
      expect(seenShare(scene, move(-0.4))).toBeGreaterThan(0);
    }
  });
});

test("the middle width is that of a place on the outline, and a wider lamp draws a wider edge", () => {
  const widths = [10, 40].map((wide) => {
    const { scene } = planOf({
      set: setOf(flat),
      room,
      lights: [bulb({ shape: rectangle(cm(wide), cm(wide)) })],
    });
    const edges = outlineEdges(shadowOf(scene, "subject", "back"));
    return middleEdge(edges)?.full ?? 0;
  });
  expect((widths[1] ?? 0) / (widths[0] ?? 1)).toBeGreaterThan(3.5);
  expect((widths[1] ?? 0) / (widths[0] ?? 1)).toBeLessThan(4.5);
});

test("a grid ends the light where its cone ends", () => {
  const { scene } = planOf({
    set: setOf(flat),
    lights: [bulb({ shape: disc(cm(18)), grid: deg(20) as never })],
  });
  const source = scene.sources[0];
  if (source === undefined) throw new Error("no light");
  const light = pointLight(source);
  expect(prepareSource(source)).toBeDefined();
  const part = light.reach([
    [-50, -50, 0],
    [50, -50, 0],
    [50, 50, 0],
    [-50, 50, 0],
  ]);
  for (const point of part) {
    const way = point.map((p, k) => p - (source.centre[k] ?? 0));
    const size2 = Math.sqrt(way.reduce((sum, w) => sum + w * w, 0));
    const cos = way.reduce((sum, w, k) => sum + w * (source.axis[k] ?? 0), 0) / size2;
    // The cone stands with 24 sides round the true one of 10 deg.
    expect((Math.acos(cos) * 180) / Math.PI).toBeLessThan(10.2);
  }
});
