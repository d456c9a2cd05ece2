import { expect, test } from "vitest";
import { sceneOf } from "../helpers/worked.js";

const tubes = (light: string, room = "") =>
  sceneOf(`${room}
light key { shape: disc(20 cm), output: 9 lm s, position: (1 m, -2 m, 2.4 m), aim: (1 m, 0 m, 2.4 m), head_height: 30 cm, ${light} }`)
    .bodies;

test("a stand is a black tube from the floor to 15 cm under the head", () => {
  const [column, ...rest] = tubes("stand { highest: 3 m }");
  expect(rest).toEqual([]);
  expect(column).toMatchObject({ kind: "capsule", name: "key stand", radius: 0.015, reflectance: 0 });
  if (column?.kind !== "capsule") return;
  expect(column.from[2] - column.radius).toBeCloseTo(0, 12);
  expect(column.to[2] + column.radius).toBeCloseTo(2.4 - 0.15 - 0.15, 12);
});

test("a boom leads straight back from the light, and its column stands below the far end", () => {
  const bodies = tubes("stand { boom: 1.5 m }");
  expect(bodies.map(({ name }) => name)).toEqual(["key stand", "key boom"]);
  const [column, arm] = bodies;
  if (column?.kind !== "capsule" || arm?.kind !== "capsule") throw new Error("no tubes");
  expect(arm.from[1]).toBeCloseTo(-2.15, 9);
  expect(arm.to[1]).toBeCloseTo(-3.65, 9);
  expect(column.from[1]).toBeCloseTo(-3.65, 9);
});

test("without a stand there is none, and none stands outside the room", () => {
  expect(tubes("power: full")).toEqual([]);
  const room = "room { size: 5 x 6 x 3 m }";
  expect(tubes("stand { boom: 1.5 m }", room)).toEqual([]);
  expect(tubes("stand { highest: 3 m }", room)).toHaveLength(1);
});
