import { expect, test } from "vitest";
import { lyingOn } from "../../src/scene/lying-on.js";
import { sceneOf } from "../helpers/worked.js";

// Paper lies half a millimetre above the floor (the guide to the exported scene says so).
test("a meter put on the floor lies on the paper that covers it, and only there", () => {
  const scene = sceneOf(`
set { paper roll { width: 2 m, at: offset(behind: 1 m), run: 3 m, hangs: 2 m, curve: 30 cm } }
subject { height: 1.7 m }
point beside { at: (1.2 m, 0 m, 0 m), faces: up }
point above { at: (0.3 m, 0 m, 2 mm), faces: up }`);
  const height = (name: string): number | undefined => scene.stations.find((row) => row.name === name)?.at[2];
  expect(height("floor")).toBe(0.0005);
  expect(height("beside")).toBe(0);
  expect(height("above")).toBe(0.002);
  expect(lyingOn([], [0, 0, 0])).toEqual([0, 0, 0]);
});
