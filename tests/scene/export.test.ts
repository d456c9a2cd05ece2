import { expect, test } from "vitest";
import { cosinePower, disc, output, rectangle } from "../../src/model/make/lamps.js";
import { at, tape } from "../../src/model/make/points.js";
import { volume } from "../../src/model/make/sizes.js";
import { sceneToJson } from "../../src/scene/export.js";
import { cm, deg, lmSeconds, m, number, stops } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { shoot } from "../helpers/shoot.js";

const light = { output: output(lmSeconds(1000)), position: at(m(-1), m(-2), m(2)) };
const { scene } = shoot({
  room: block("room", null, { size: volume(m(5), m(6), m(3)) }),
  subjects: [block("subject", null, {})],
  set: block("set", null, {
    parts: [block("sphere", "ball", { diameter: cm(30), at: at(m(1), m(0), m(0.15)) })],
  }),
  lights: [
    block("light", "a", { ...light, shape: disc(cm(20)), beam: cosinePower(number(4)) }),
    block("light", "b", { ...light, shape: rectangle(cm(60), cm(90)), grid: deg(40), grid_loses: stops(1) }),
  ],
  camera: block("camera", null, { held: "upright", distance: tape(m(3)), height: m(1.4) }),
});
const json = sceneToJson(scene);

test("the exported scene survives JSON and holds no number that JSON cannot", () => {
  const text = JSON.stringify(json);
  expect(JSON.parse(text)).toEqual(json);
  expect(text).not.toMatch(/null,null|NaN|Infinity/);
  const walk = (value: unknown): void => {
    if (typeof value === "number") expect(Number.isFinite(value) && !Object.is(value, -0)).toBe(true);
    else if (value !== null && typeof value === "object")
      for (const inner of Object.values(value)) walk(inner);
  };
  walk(JSON.parse(text));
});

test("it holds every surface, body, source and station of the scene", () => {
  expect(json.format).toBe(1);
  expect(json.polygons).toHaveLength(scene.polygons.length);
  expect(json.spheres.length + json.capsules.length + json.ellipsoids.length).toBe(scene.bodies.length);
  expect(json.stations).toHaveLength(scene.stations.length);
  expect(json.sources.map((source) => [source.shape.kind, source.beam, source.emits])).toEqual([
    ["disc", { kind: "cosine_power", exponent: 4 }, "front"],
    ["rectangle", { kind: "grid", cutoff: expect.closeTo(40, 10) }, "front"],
  ]);
  expect(json.key).toBe("a");
});

test("its keys stand in the same order for every scene", () => {
  const other = sceneToJson(shoot({}).scene);
  expect(Object.keys(other)).toEqual(Object.keys(json));
});
