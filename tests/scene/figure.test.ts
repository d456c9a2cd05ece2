import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { arms as armsValue } from "../../src/model/make/lamps.js";
import { left, offset } from "../../src/model/make/points.js";
import type { SubjectModel } from "../../src/model/types.js";
import type { Body, Scene } from "../../src/scene/types.js";
import { cm, deg, m, percent } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { shoot } from "../helpers/shoot.js";

type Fields = Parameters<typeof block<"subject">>[2];
const person = (fields: Fields = {}): SubjectModel => block("subject", null, { height: m(1), ...fields });
const shot = (fields: Fields = {}): Scene => shoot({ subjects: [person(fields)] }).scene;
const body = (scene: Scene, name: string): Body => {
  const found = scene.bodies.find((candidate) => candidate.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const near = (v: Vec3 | undefined, w: Vec3) => {
  expect(v).toEqual(w.map((x) => expect.closeTo(x, 9)));
};
const facingLeft = { facing: { kind: "bearing", bearing: left(deg(90)), written: "left(90 deg)" } } as const;

describe("a standing figure of stature 1", () => {
  const scene = shot();

  test("has a head, a neck, a trunk, two legs and two arms of these proportions", () => {
    expect(scene.bodies.map((part) => part.name)).toEqual([
      "head",
      "neck",
      "trunk",
      "leg.right",
      "leg.left",
      "arm.right",
      "arm.left",
    ]);
    expect(body(scene, "head")).toMatchObject({
      kind: "ellipsoid",
      centre: [0, 0, 0.933],
      axes: [
        [0.045, 0, 0],
        [0, -0.057, 0],
        [0, 0, 0.067],
      ],
    });
    expect(body(scene, "neck")).toMatchObject({
      kind: "capsule",
      radius: 0.032,
      from: [0, 0, 0.82],
      to: [0, 0, 0.88],
    });
    expect(body(scene, "trunk")).toMatchObject({
      centre: [0, 0, 0.67],
      axes: [
        [0.115, 0, 0],
        [0, -0.075, 0],
        [0, 0, 0.165],
      ],
    });
    expect(body(scene, "leg.left")).toMatchObject({
      radius: 0.045,
      from: [-0.055, 0, 0.5],
      to: [-0.055, 0, 0.039],
    });
    expect(body(scene, "arm.right")).toMatchObject({ radius: 0.026, from: [0.13, 0, 0.8] });
  });

  test("has its stations at the front of the body", () => {
    const at = (name: string) => scene.stations.find((station) => station.name === name)?.at;
    near(at("face"), [0, -0.057, 0.933]);
    near(at("chest"), [0, -0.075 * Math.sqrt(1 - (0.05 / 0.165) ** 2), 0.72]);
    near(at("knee"), [0, -0.045, 0.285]);
    near(at("shin"), [0, -0.045, 0.16]);
    near(at("floor"), [0, 0, 0]);
  });

  test("is as tall as its stature, and heels lift all of it", () => {
    expect(scene.subjects[0]?.top).toBeCloseTo(1, 12);
    const heeled = shot({ heels: cm(5) });
    expect(heeled.subjects[0]?.top).toBeCloseTo(1.05, 12);
    near(heeled.subjects[0]?.face, [0, -0.057, 0.983]);
  });

  test("grows with its stature in every number", () => {
    const tall = shot({ height: m(1.8) });
    const face = scene.subjects[0]?.face ?? [0, 0, 0];
    near(tall.subjects[0]?.face, [0, face[1] * 1.8, face[2] * 1.8]);
  });

  test("turns about its place", () => {
    const turned = shot({ ...facingLeft, at: offset({ right: m(2) }) });
    near(turned.subjects[0]?.face, [2 - 0.057, 0, 0.933]);
    near(turned.subjects[0]?.across, [0, -1, 0]);
  });
});

describe("the arms", () => {
  const tip = (scene: Scene, name: string): Vec3 => {
    const arm = body(scene, name);
    if (arm.kind !== "capsule") throw new Error("an arm is a capsule");
    return arm.to;
  };

  test("hang, reach up, to the side or ahead, 0.44 of the stature from the shoulder to the fingertips", () => {
    near(tip(shot(), "arm.right"), [0.13, 0, 0.8 - 0.414]);
    near(tip(shot({ arms: armsValue("raised") }), "arm.right"), [0.13, 0, 0.8 + 0.414]);
    near(tip(shot({ arms: armsValue("spread", deg(0)) }), "arm.left"), [-0.13 - 0.414, 0, 0.8]);
    near(tip(shot({ arms: armsValue("ahead", deg(0)) }), "arm.left"), [-0.13, -0.414, 0.8]);
  });

  test("raised reach 1.24 of the stature; a stated reach counts from the top of the head", () => {
    expect(shot().subjects[0]?.reachTop).toBeCloseTo(1, 12);
    expect(shot({ arms: armsValue("raised") }).subjects[0]?.reachTop).toBeCloseTo(1.24, 12);
    expect(shot({ reach: cm(45) }).subjects[0]?.reachTop).toBeCloseTo(1.45, 12);
  });
});

describe("poses bend the same parts", () => {
  const lengthOf = (part: Body): number =>
    part.kind === "capsule" ? Math.hypot(...part.to.map((x, i) => x - (part.from[i] ?? 0))) : 0;
  const legs = (scene: Scene) => scene.bodies.filter((part) => part.name.startsWith("leg.left"));

  test("each leg keeps its length", () => {
    for (const pose of ["standing", "seated", "kneeling", "lying"]) {
      const sum = legs(shot({ pose })).reduce((total, part) => total + lengthOf(part), 0);
      expect(sum, pose).toBeCloseTo(0.461, 9);
    }
  });

  test("each leg keeps its length on a low seat and on a high one", () => {
    for (const seat of [0.1, 0.2, 0.4]) {
      const sum = legs(shot({ pose: "seated", seat: m(seat) })).reduce(
        (total, part) => total + lengthOf(part),
        0,
      );
      expect(sum).toBeCloseTo(0.461, 9);
    }
  });

  test("seated lowers the head by the bent legs and puts the knees out in front", () => {
    const scene = shot({ pose: "seated", seat: m(0.25) });
    near(scene.subjects[0]?.face, [0, -0.057, 0.933 - 0.5 + 0.25 + 0.045]);
    near(scene.stations.find((station) => station.name === "knee")?.at, [0, -0.26, 0.295]);
    expect(shot({ pose: "seated" }).subjects[0]?.face).toEqual(scene.subjects[0]?.face);
  });

  test("a low seat sends the feet forward, a high one lets them hang", () => {
    const foot = (seat: number): Vec3 => {
      const lower = legs(shot({ pose: "seated", seat: m(seat) }))[1];
      return lower?.kind === "capsule" ? lower.to : [0, 0, 0];
    };
    expect(foot(0.1)[2]).toBeCloseTo(0.039, 12);
    expect(foot(0.1)[1]).toBeLessThan(-0.215 - 0.2);
    near(foot(0.4), [-0.055, -0.215, 0.445 - 0.246]);
  });

  test("kneeling has the knees on the floor", () => {
    const scene = shot({ pose: "kneeling" });
    near(scene.subjects[0]?.face, [0, -0.057, 0.933 - 0.24]);
    const lowest = Math.min(
      ...legs(scene).map((part) => (part.kind === "capsule" ? part.to[2] - part.radius : 1)),
    );
    expect(lowest).toBeCloseTo(0, 12);
  });

  test("lying has the back on the floor, the feet towards its facing, and the nose up", () => {
    const scene = shot({ pose: "lying" });
    near(scene.subjects[0]?.face, [0, 0.433, 0.075 + 0.057]);
    near(scene.subjects[0]?.nose, [0, 0, 1]);
    expect(scene.subjects[0]?.top).toBeCloseTo(0.15, 12);
  });
});

test("reflectances of skin and cloth lie on the parts; defaults are listed", () => {
  const scene = shot({ skin: percent(50) });
  expect(body(scene, "head").reflectance).toBe(0.5);
  expect(body(scene, "trunk").reflectance).toBe(0.3);
  const what = scene.assumed.map((assumption) => assumption.what);
  expect(what).toContain("cloth");
  expect(what).toContain("hair");
  expect(what).not.toContain("skin");
});
