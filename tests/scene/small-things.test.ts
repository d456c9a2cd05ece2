import { describe, expect, test } from "vitest";
import { output, sphere } from "../../src/model/make/lamps.js";
import { at, named } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import { placeOf } from "../../src/scene/places.js";
import { cm, kg, lmSeconds, m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { firstSource, shoot } from "../helpers/shoot.js";

const set = (...parts: Parameters<typeof block<"set">>[2]["parts"] & object) =>
  shoot({ set: block("set", null, { parts }) }).scene;

describe("round pieces", () => {
  test("a sphere stands round its centre, a post on its foot with its ends included", () => {
    const scene = set(
      block("sphere", "ball", { diameter: cm(30), at: at(m(1), m(0), m(1)) }),
      block("capsule", "bottle", { diameter: cm(8), height: cm(26), at: at(m(0), m(0), m(0.8)) }),
    );
    expect(scene.bodies[0]).toMatchObject({
      kind: "sphere",
      centre: [1, 0, 1],
      radius: 0.15,
      reflectance: 0.3,
    });
    expect(scene.bodies[1]).toMatchObject({
      kind: "capsule",
      radius: 0.04,
      from: [0, 0, expect.closeTo(0.84, 12)],
      to: [0, 0, expect.closeTo(1.02, 12)],
    });
    expect(placeOf(scene, named("bottle"))?.[2]).toBeCloseTo(0.93, 12);
  });

  test("a post lower than wide is a sphere in all but name", () => {
    const scene = set(
      block("capsule", "puck", { diameter: cm(20), height: cm(5), at: at(m(0), m(0), m(0)) }),
    );
    expect(scene.bodies[0]).toMatchObject({ from: [0, 0, 0.1], to: [0, 0, expect.closeTo(0.1, 12)] });
  });
});

test("a table without a height is 75 cm high, and says so", () => {
  const scene = set(block("table", "top", { size: size(m(1), m(1)), at: at(m(0), m(0), m(0)) }));
  expect(scene.stations.find((station) => station.name === "top")?.at[2]).toBe(0.75);
  expect(scene.assumed).toContainEqual({ what: "height of top", value: "75 cm", matters: false });
});

test("a stand keeps what is said of it and lists what is not", () => {
  const lamp = block("light", "lamp", {
    shape: sphere(cm(8)),
    output: output(lmSeconds(1)),
    position: at(m(0), m(-2), m(2)),
    parts: [block("stand", null, { highest: m(2.6), head: kg(3), boom: m(1.6) })],
  });
  const { scene } = shoot({ lights: [lamp] });
  expect(firstSource(scene).stand).toEqual({
    highest: 2.6,
    feet: 0.5,
    weight: 2.5,
    head: 3,
    bag: 0,
    boom: 1.6,
    tail: 0.4,
    counterweight: 0,
  });
  const what = scene.assumed.map((assumption) => assumption.what);
  expect(what).toContain("mass of the stand of lamp");
  expect(what).toContain("short end of the boom of lamp");
  expect(what).not.toContain("mass of the head of lamp");
});

test("a seat is measured from the floor, whatever the heels", () => {
  const face = (heels: number) =>
    shoot({ subjects: [block("subject", null, { pose: "seated", seat: cm(45), heels: cm(heels) })] }).scene
      .subjects[0]?.face[2];
  expect(face(8)).toBeCloseTo(face(0) ?? 0, 12);
});
