import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { disc, sphere } from "../../../src/model/make/lamps.js";
import { along, at, left, offset, right, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import {
  areas,
  growthOf,
  reachFrom,
  type Shadow,
  seamsOf,
  shadowsOf,
  stageOf,
} from "../../../src/report/thrown/shadows-of.js";
import type { Scene } from "../../../src/scene/types.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, flat, planOf, room, setOf } from "../../helpers/plan.js";

const shadowsIn = (scene: Scene, name: string): readonly Shadow[] => {
  const source = scene.sources[0];
  if (source === undefined) throw new Error("no light");
  const stage = stageOf(scene, source);
  const thrower = [...stage.throwers.people, ...stage.throwers.pieces].find((row) => row.name === name);
  if (thrower === undefined) throw new Error(`no ${name}`);
  return shadowsOf(stage, thrower);
};

const on = (shadows: readonly Shadow[], surface: string): Shadow => {
  const found = shadows.find((row) => row.surface === surface);
  if (found === undefined) throw new Error(`nothing on ${surface}`);
  return found;
};

const points = (shadow: Shadow): readonly Vec3[] => shadow.parts.flatMap(({ rings }) => rings.flat());

/** A ball 40 cm wide, its middle 1 m up, and a lamp 3 m up and 4 m away along the floor at camera-left. */
const ball = block("sphere", "ball", { diameter: cm(40), at: offset({ up: m(1) }) });
const lamp = (x: number, y: number, z: number) =>
  bulb({
    distance: undefined as never,
    bearing: undefined as never,
    height: undefined as never,
    position: at(m(x), m(y), m(z)),
  });

describe("the shadow of a ball on a floor", () => {
  const { scene } = planOf({ subjects: [], set: setOf(ball), lights: [lamp(-4, 0, 3)] });
  const shadow = on(shadowsIn(scene, "ball"), "floor");

  test("is the ellipse in which the floor cuts the cone round the ball", () => {
    // By hand in the plane through lamp and ball: the rays that touch it lie asin(r / d) above and below the one to its
    // middle, and meet the floor H / tan of their slopes from the point under the lamp.
    const d = Math.sqrt(4 * 4 + 2 * 2);
    const open = Math.asin(0.2 / d);
    const slope = Math.atan2(2, 4);
    const near = -4 + 3 / Math.tan(slope + open);
    const far = -4 + 3 / Math.tan(slope - open);
    const xs = points(shadow).map(([x]) => x);
    expect(Math.min(...xs)).toBeCloseTo(near, 4);
    expect(Math.max(...xs)).toBeCloseTo(far, 4);
    // The half axis across: the cone x2 tan2(open) = y2 at the middle of the ellipse, from the cone's equation.
    const middle = (near + far) / 2;
    const ahead = ((middle + 4) * 4 + 3 * 2) / d;
    const square = (middle + 4) * (middle + 4) + 9;
    const across = Math.sqrt(ahead * ahead * (1 + Math.tan(open) * Math.tan(open)) - square);
    const ys = points(shadow).map(([, y]) => y);
    expect(Math.max(...ys)).toBeCloseTo(across, 3);
    expect(Math.min(...ys)).toBeCloseTo(-across, 3);
    // 48 corners on the curve have sin(2 pi / 48) / (2 pi / 48) of its area.
    const turn = (2 * Math.PI) / 48;
    expect(areas(shadow).all).toBeCloseTo(Math.PI * across * ((far - near) / 2) * (Math.sin(turn) / turn), 4);
  });

  test("its corners lie on the cone exactly", () => {
    const d = Math.sqrt(20);
    for (const [x, y] of points(shadow)) {
      const way = [x + 4, y, -3] as const;
      const size2 = way[0] * way[0] + way[1] * way[1] + way[2] * way[2];
      const ahead = (way[0] * 4 + way[2] * -2) / d;
      // The distance of the ball's middle from the ray.
      const off = d * Math.sqrt(1 - (ahead * ahead) / size2);
      expect(off).toBeCloseTo(0.2, 5);
    }
  });

  test("in the open from a lamp below its top it has no end, and is cut where the ground is", () => {
    const low = planOf({ subjects: [], set: setOf(ball), lights: [lamp(-4, 0, 1.1)] }).scene;
    expect(Math.max(...points(on(shadowsIn(low, "ball"), "floor")).map(([x]) => x))).toBeCloseTo(60, 5);
  });
});

describe("a post", () => {
  const post = block("capsule", "post", { diameter: cm(2), height: m(1.2), at: offset({}) });

  test("throws a shadow h D / (H - h) long from a lamp H up and D away (similar triangles)", () => {
    const { scene } = planOf({ subjects: [], set: setOf(post), lights: [lamp(-3, 0, 2.4)] });
    const reach = reachFrom(on(shadowsIn(scene, "post"), "floor"), [0, 0, 0]);
    // Its round end, 1 cm in radius, moves the tip by less than its own size.
    expect(Math.abs(reach - (1.2 * 3) / (2.4 - 1.2))).toBeLessThan(0.02);
  });

  test("every ray to a corner of its shadow passes its axis at its radius", () => {
    const { scene } = planOf({ subjects: [], set: setOf(post), lights: [lamp(-3, 0.4, 2.4)] });
    const corners = points(on(shadowsIn(scene, "post"), "floor"));
    expect(corners.length).toBeGreaterThan(30);
    for (const [x, y] of corners) {
      // The axis runs straight up from 1 cm to 1.19 m over the mark: the least distance over a fine ladder of both.
      const way = [x + 3, y - 0.4, -2.4] as const;
      const size2 = way[0] * way[0] + way[1] * way[1] + way[2] * way[2];
      let least = 1;
      for (let i = 0; i <= 4000; i++) {
        const z = 0.01 + (1.18 * i) / 4000;
        const to = [3, -0.4, z - 2.4] as const;
        const t = (to[0] * way[0] + to[1] * way[1] + to[2] * way[2]) / size2;
        const off = to.map((part, k) => part - t * (way[k] ?? 0));
        least = Math.min(least, Math.sqrt(off.reduce((sum, part) => sum + part * part, 0)));
      }
      expect(least).toBeCloseTo(0.01, 5);
    }
  });

  test("a wall in the way takes the rest of it", () => {
    const wall = block("flat", "side", {
      size: size(m(3), m(2)),
      at: offset({ right: m(1) }),
      faces: along(left(deg(90))),
    });
    const { scene } = planOf({ subjects: [], set: setOf(post, wall as never), lights: [lamp(-3, 0, 2.4)] });
    const found = shadowsIn(scene, "post");
    expect(Math.max(...points(on(found, "floor")).map(([x]) => x))).toBeCloseTo(1, 5);
    const high = Math.max(...points(on(found, "side")).map(([, , z]) => z));
    // On the ray over its top, 1.2 m up after 3 m: 0.8 m up after 4 m.
    expect(Math.abs(high - 0.8)).toBeLessThan(0.01);
    expect(seamsOf(on(found, "floor"), found)).toContain("side");
  });
});

describe("a subject before a flat", () => {
  const plan = planOf({ set: setOf(flat), room, lights: [bulb()] });

  test("the head's shadow grows by (D + g) / D", () => {
    const { scene } = plan;
    const source = scene.sources[0];
    const subject = scene.subjects[0];
    if (source === undefined || subject === undefined) throw new Error("no scene");
    const [lx, ly, lz] = source.centre;
    const [hx, hy, hz] = subject.head;
    // The ray meets the plane of the flat, y = 0.6, at (0.6 - ly) / (hy - ly) of the way to the head.
    const growth = (0.6 - ly) / (hy - ly);
    expect(growthOf(on(shadowsIn(scene, "subject"), "back"))).toBeCloseTo(growth, 9);
    expect(Math.sqrt((lx - hx) ** 2 + (lz - hz) ** 2)).toBeGreaterThan(0.5);
  });

  test("mirrored, it falls on the other side", () => {
    const mirrored = planOf({ set: setOf(flat), room, lights: [bulb({ bearing: right(deg(35)) })] });
    const a = shadowsIn(plan.scene, "subject");
    const b = shadowsIn(mirrored.scene, "subject");
    expect(areas(on(b, "back")).all).toBeCloseTo(areas(on(a, "back")).all, 4);
    const [before, after] = [a, b].map((row) => points(on(row, "back")).map(([x]) => x));
    expect(Math.max(...(before ?? []))).toBeCloseTo(-Math.min(...(after ?? [])), 4);
  });

  test("twice as large, every length doubles and every area is fourfold", () => {
    const small = planOf({
      subjects: [],
      set: setOf(
        ball,
        block("flat", "back", { size: size(m(2), m(2)), at: offset({ behind: m(1) }) }) as never,
      ),
      lights: [lamp(-1, -2, 2)],
    });
    const large = planOf({
      subjects: [],
      set: setOf(
        block("sphere", "ball", { diameter: cm(80), at: offset({ up: m(2) }) }),
        block("flat", "back", { size: size(m(4), m(4)), at: offset({ behind: m(2) }) }) as never,
      ),
      lights: [lamp(-2, -4, 4)],
    });
    for (const surface of ["back", "floor"]) {
      const a = shadowsIn(small.scene, "ball").find((row) => row.surface === surface);
      const b = shadowsIn(large.scene, "ball").find((row) => row.surface === surface);
      expect((b === undefined ? 0 : areas(b).all) / 4).toBeCloseTo(a === undefined ? 0 : areas(a).all, 5);
    }
  });

  test("a card in the way stops it", () => {
    const card = block("card", "card", {
      size: size(m(2), m(2)),
      at: offset({ behind: cm(30), up: m(1) }),
    });
    const { scene } = planOf({ set: setOf(flat, card as never), room, lights: [bulb()] });
    const behind = shadowsIn(scene, "subject").find((row) => row.surface === "back");
    const free = on(shadowsIn(plan.scene, "subject"), "back");
    expect(behind === undefined ? 0 : areas(behind).all).toBeLessThan(0.2 * areas(free).all);
    expect(areas(on(shadowsIn(scene, "subject"), "card")).all).toBeGreaterThan(0.5);
  });

  test("a flat lamp throws nothing to its back", () => {
    const away = bulb({ shape: disc(cm(20)), feather: left(deg(150)) as never });
    const found = planOf({ set: setOf(flat), room, lights: [away] });
    expect(shadowsIn(found.scene, "subject").some((row) => row.surface === "back")).toBe(false);
    const round = planOf({ set: setOf(flat), room, lights: [bulb({ shape: sphere(cm(8)) })] });
    expect(shadowsIn(round.scene, "subject").some((row) => row.surface === "back")).toBe(true);
  });
});

test("stands of lamps are no pieces of the set", () => {
  const { scene } = planOf({ set: setOf(flat), room, lights: [bulb({ distance: tape(m(2)) })] });
  const source = scene.sources[0];
  if (source === undefined) throw new Error("no light");
  expect(stageOf(scene, source).throwers.pieces.map(({ name }) => name)).toEqual(["back"]);
});
