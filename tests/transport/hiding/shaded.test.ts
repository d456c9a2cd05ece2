import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import type { Body, Scene, ScenePolygon, Source } from "../../../src/scene/types.js";
import { clearWay, emptyHit } from "../../../src/transport/bounce/first-hit.js";
import { worldOf } from "../../../src/transport/bounce/world.js";
import { prepareSource } from "../../../src/transport/direct.js";
import { occludersOf } from "../../../src/transport/hiding/occluder.js";
import { seenShare, shadedReading, shadedSource } from "../../../src/transport/hiding/shaded.js";
import { hiddenScene } from "../../helpers/hidden-scenes.js";
import { randomDirection, randomFrom } from "../../helpers/random.js";
import { spotOf } from "../../helpers/sampler.js";
import { freeSight } from "../../helpers/sight-oracle.js";

const sceneOf = (polygons: readonly ScenePolygon[], bodies: readonly Body[]): Scene =>
  ({ room: null, polygons, bodies }) as unknown as Scene;

const lampOf = (scene: ReturnType<typeof hiddenScene>) =>
  shadedSource(prepareSource(scene.source), occludersOf(sceneOf(scene.polygons, scene.bodies)));

/** The share of light that is left, by random points of the light and lines of sight found in another way. */
function sampledShare(scene: ReturnType<typeof hiddenScene>, count: number, random: () => number) {
  const { source, at, facing, receptor } = scene;
  let all = 0;
  let left = 0;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    const spot = spotOf(source, random);
    const to: Vec3 = [spot.at[0] - at[0], spot.at[1] - at[1], spot.at[2] - at[2]];
    const d = Math.sqrt(to[0] * to[0] + to[1] * to[1] + to[2] * to[2]);
    const dot = (n: Vec3): number => (to[0] * n[0] + to[1] * n[1] + to[2] * n[2]) / d;
    const response = receptor === "dome" ? (1 + dot(facing)) / 2 : Math.max(0, dot(facing));
    const value = (Math.max(0, -dot(spot.out)) * response) / (d * d);
    all += value;
    squares += value * value;
    if (value > 0 && freeSight(at, spot.at, scene.polygons, scene.bodies)) left += value;
  }
  const share = left / all;
  // Binomial error of the share, widened for points that count unequally.
  const effective = (all * all) / squares;
  return { share, error: Math.sqrt((share * (1 - share)) / effective) };
}

describe("light past what stands before it", () => {
  test("agrees with random points of the light, all shapes and receptors", () => {
    const random = randomFrom(77);
    let squares = 0;
    const count = 48;
    for (let i = 0; i < count; i++) {
      const scene = hiddenScene(random, i);
      const share = seenShare(lampOf(scene), scene.at, scene.facing, scene.receptor === "dome");
      const sampled = sampledShare(scene, 8000, random);
      // Outlines of few corners are stated to be right to 0.04 % of the whole light, at most a third of a per cent.
      expect(Math.abs(share - sampled.share)).toBeLessThan(4 * sampled.error + 0.0034);
      squares += (share - sampled.share) * (share - sampled.share) - sampled.error * sampled.error;
    }
    expect(Math.sqrt(Math.max(0, squares / count))).toBeLessThan(0.005);
  });

  test("a straight edge through the middle of a light leaves half", () => {
    const sheet: ScenePolygon = {
      name: "edge",
      kind: "panel",
      vertices: [
        [0, -5, 1],
        [5, -5, 1],
        [5, 5, 1],
        [0, 5, 1],
      ],
      normal: [0, 0, 1],
      frontReflectance: 0,
      backReflectance: 0,
    };
    for (const kind of [0, 1, 2, 3]) {
      const scene = hiddenScene(() => 0.5, kind);
      const source: Source = {
        ...scene.source,
        centre: [0, 0, 3],
        axis: [0, 0, -1],
        across: [1, 0, 0],
        along: [0, -1, 0],
      };
      const lamp = shadedSource(prepareSource(source), occludersOf(sceneOf([sheet], [])));
      expect(seenShare(lamp, [0, 0, 0], [0, 0, 1], false)).toBeCloseTo(0.5, 6);
      expect(seenShare(lamp, [0, 0, 0], [0, 0, 1], true)).toBeCloseTo(0.5, 6);
      expect(seenShare(lamp, [-3, 0, 0], [0, 0, 1], false)).toBe(1);
      expect(seenShare(lamp, [3, 0, 0], [0, 0, 1], false)).toBe(0);
    }
  });

  test("what lies behind the light or behind the receptor hides nothing", () => {
    const ball = (z: number): Body => ({
      kind: "sphere",
      name: "ball",
      centre: [0, 0, z],
      radius: 0.3,
      reflectance: 0,
    });
    const scene = hiddenScene(() => 0.5, 0);
    const source: Source = { ...scene.source, centre: [0, 0, 3] };
    const share = (z: number): number =>
      seenShare(
        shadedSource(prepareSource(source), occludersOf(sceneOf([], [ball(z)]))),
        [0, 0, 0],
        [0, 0, 1],
        false,
      );
    expect(share(4)).toBe(1);
    expect(share(-0.5)).toBe(1);
    expect(share(1)).toBeLessThan(0.9);
  });

  test("a body beside or behind a large light hides nothing of it", () => {
    const scene = hiddenScene(() => 0.5, 1);
    const source: Source = {
      ...scene.source,
      shape: { kind: "rectangle", width: 1, height: 1 },
      centre: [0, 0, 2],
      axis: [0, 0, -1],
      across: [1, 0, 0],
      along: [0, -1, 0],
    };
    const share = (z: number, radius: number, eye: Vec3): number => {
      const ball: Body = { kind: "sphere", name: "ball", centre: [0, 0, z], radius, reflectance: 0 };
      const lamp = shadedSource(prepareSource(source), occludersOf(sceneOf([], [ball])));
      return seenShare(lamp, eye, [0, 0, 1], false);
    };
    expect(share(2.4, 0.3, [0, 0, 0])).toBe(1);
    expect(share(2.2, 0.02, [0, 0, 0])).toBe(1);
  });

  test("hides in front of a light that is nearer than its own size", () => {
    const scene = hiddenScene(() => 0.5, 1);
    const source: Source = {
      ...scene.source,
      shape: { kind: "rectangle", width: 1, height: 1 },
      centre: [0, 0, 0.6],
      axis: [0, 0, -1],
      across: [1, 0, 0],
      along: [0, -1, 0],
    };
    const random = randomFrom(21);
    const ball: Body = { kind: "sphere", name: "ball", centre: [0, 0, 0.3], radius: 0.15, reflectance: 0 };
    const near: ReturnType<typeof hiddenScene> = {
      ...scene,
      source,
      polygons: [],
      bodies: [ball],
      at: [0, 0, 0],
      facing: [0, 0, 1],
      receptor: "disc",
    };
    const sampled = sampledShare(near, 20_000, random);
    const share = seenShare(lampOf(near), near.at, near.facing, false);
    expect(Math.abs(share - sampled.share)).toBeLessThan(4 * sampled.error + 0.005);
    expect(share).toBeLessThan(0.7);
  });

  test("a receptor on a body sees only what is above the surface there", () => {
    const body: Body = { kind: "sphere", name: "head", centre: [0, 0, 0], radius: 0.1, reflectance: 0 };
    const scene = hiddenScene(() => 0.5, 2);
    const occluders = occludersOf(sceneOf([], [body]));
    const share = (centre: Vec3): number =>
      seenShare(
        shadedSource(prepareSource({ ...scene.source, centre }), occluders),
        [0.1, 0, 0],
        [0, 0, 1],
        false,
      );
    expect(share([2, 0, 2])).toBe(1);
    expect(share([-2, 0, 2])).toBe(0);
    expect(share([0.1, 0, 2])).toBeCloseTo(0.5, 6);
  });

  test("order of what hides does not matter", () => {
    const random = randomFrom(5);
    for (let i = 0; i < 40; i++) {
      const scene = hiddenScene(random, i);
      const turned = {
        ...scene,
        bodies: [...scene.bodies].reverse(),
        polygons: [...scene.polygons].reverse(),
      };
      const value = (one: typeof scene): number =>
        shadedReading(lampOf(one), one.at, one.facing, one.receptor);
      expect(value(turned)).toBeCloseTo(value(scene), 9);
    }
  });
});

/** A lamp over the origin that shines down on a meter which looks up, and one body. */
function underLamp(
  source: Partial<Source>,
  body: Body,
  at: Vec3 = [0, 0, 0],
): ReturnType<typeof hiddenScene> {
  const bare = hiddenScene(() => 0.5, 1);
  return {
    ...bare,
    source: {
      ...bare.source,
      shape: { kind: "rectangle", width: 1, height: 1 },
      centre: [0, 0, 2],
      axis: [0, 0, -1],
      across: [1, 0, 0],
      along: [0, -1, 0],
      beam: { kind: "lambertian" },
      ...source,
    },
    polygons: [],
    bodies: [body],
    at,
    facing: [0, 0, 1],
    receptor: "disc",
  };
}

/** Shares of many scenes against random points of the light, each within 4 standard errors and `slack`. */
function agreeAll(scenes: readonly ReturnType<typeof hiddenScene>[], slack: number): void {
  const random = randomFrom(31);
  let cut = 0;
  for (const scene of scenes) {
    const share = seenShare(lampOf(scene), scene.at, scene.facing, false);
    const sampled = sampledShare(scene, 10_000, random);
    expect(Math.abs(share - sampled.share), JSON.stringify(scene.bodies)).toBeLessThan(
      4 * sampled.error + slack,
    );
    if (share > 0.02 && share < 0.98) cut++;
  }
  // Enough of them are in the half-shade to tell.
  expect(cut).toBeGreaterThan(scenes.length / 3);
}

describe("bodies that are hard to see whole", () => {
  test("limbs close to the meter, seen along their length and from the side", () => {
    const random = randomFrom(3);
    const between = (low: number, high: number): number => low + (high - low) * random();
    const scenes = Array.from({ length: 40 }, (_, i) => {
      const x = between(-0.16, 0.16);
      const from: Vec3 = [x, 0.1 + between(-0.01, 0.06), between(-0.05, 0.2)];
      const to: Vec3 = [x + between(-0.2, 0.2), between(-0.1, 0.3), between(0.5, 1.2)];
      const radius = 0.06;
      const body: Body = { kind: "capsule", name: "limb", from, to, radius, reflectance: 0 };
      const shape =
        i % 2 === 0
          ? ({ kind: "sphere", radius: between(0.05, 0.15) } as const)
          : ({ kind: "capsule", length: between(0.4, 0.9), radius: 0.04 } as const);
      return underLamp({ shape, centre: [between(-0.2, 0.2), between(0.2, 0.5), 1.6] }, body);
    });
    agreeAll(scenes, 0.006);
  });

  test("of a body that the light's own plane cuts only what lies before the plane hides", () => {
    const random = randomFrom(8);
    const between = (low: number, high: number): number => low + (high - low) * random();
    const scenes = Array.from({ length: 30 }, (_, i) => {
      const middle: Vec3 = [between(-0.5, 0.5), between(-0.5, 0.5), between(1.8, 2.2)];
      const axis: Vec3 = [between(-0.3, 0.3), between(-0.3, 0.3), between(-0.3, 0.3)];
      const end = (sign: number): Vec3 => [
        middle[0] + sign * axis[0],
        middle[1] + sign * axis[1],
        middle[2] + sign * axis[2],
      ];
      const bodies: readonly Body[] = [
        { kind: "sphere", name: "ball", centre: middle, radius: 0.3, reflectance: 0 },
        { kind: "capsule", name: "limb", from: end(-1), to: end(1), radius: 0.15, reflectance: 0 },
        {
          kind: "ellipsoid",
          name: "trunk",
          centre: middle,
          axes: [
            [0.4, 0, 0.1],
            [0, 0.2, 0],
            [-0.05, 0, 0.2],
          ],
          reflectance: 0,
        },
      ];
      return underLamp({}, bodies[i % 3] as Body, [between(-1, 1), between(-1, 1), between(0.5, 1.5)]);
    });
    agreeAll(scenes, 0.006);
  });
});

describe("lines of sight", () => {
  test("agree with another way of finding them", () => {
    const random = randomFrom(11);
    let blocked = 0;
    let different = 0;
    for (let i = 0; i < 400; i++) {
      const scene = hiddenScene(random, i);
      const world = worldOf(sceneOf(scene.polygons, scene.bodies));
      for (let k = 0; k < 10; k++) {
        const way = randomDirection(random);
        const from: Vec3 = [way[0], way[1], 1.4 + way[2]];
        const to: Vec3 = [-way[1] * random(), way[0] * random(), 1.4 - way[2] * random()];
        const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
        const d = Math.sqrt(dx * dx + dy * dy + dz * dz);
        const clear = clearWay(world, ...from, dx / d, dy / d, dz / d, d, true, emptyHit());
        if (!clear) blocked++;
        // A line that only grazes may be told either way.
        if (clear !== freeSight(from, to, scene.polygons, scene.bodies)) different++;
      }
    }
    expect(blocked).toBeGreaterThan(500);
    expect(different).toBe(0);
  });
});
