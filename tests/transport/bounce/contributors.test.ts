import { describe, expect, test } from "vitest";
import type { Scene, Source, Station } from "../../../src/scene/types.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { mustBreak } from "../../helpers/must-break.js";
import { sceneOf, sourceOf } from "../../helpers/worked.js";

const scene = sceneOf(`
room {
  size: 5 x 7 x 3 m
  walls { reflectance: 50 % }
  ceiling { reflectance: 80 % }
  floor { reflectance: 25 % }
}
set {
  flat back { size: 1.2 x 2.4 m, at: offset(behind: 1 m), front: 85 %, back: 30 % }
  flat side { size: 1.2 x 2.4 m, hinge: left_edge(back), opening: 110 deg, front: 85 %, back: 30 % }
}
subject { height: 1.7 m }
light key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }
light fill { shape: disc(60 cm), output: 300 lm s, distance: 2 m, bearing: right(50 deg), height: 1.7 m }`);
const cheek = scene.stations.findIndex(({ name }) => name === "shaded_cheek");
const key = sourceOf(scene, "key");
const fill = sourceOf(scene, "fill");

/** The scene with all that one owner has painted black. */
function painted(owner: string): Scene {
  return {
    ...scene,
    polygons: scene.polygons.map((polygon) =>
      polygon.name.split(".")[0] === owner
        ? { ...polygon, frontReflectance: 0, backReflectance: 0 }
        : polygon,
    ),
    bodies: scene.bodies.map((body) => (owner === "person" ? { ...body, reflectance: 0 } : body)),
  };
}

const light = sceneLight(scene);
const one = (source: Source) => [{ source, energy: 1 }];
const names = (of: Scene): readonly string[] => {
  const working = sceneLight(of);
  const source = of.sources[0] as Source;
  const all = of.stations.flatMap((row) => working.contributors(one(source), row));
  return [...new Set(all.map(({ surface }) => surface))].sort();
};
const room = ["ceiling", "floor", "wall back", "wall front", "wall left", "wall right"];

test("surfaces are called as the recipe calls them", () => {
  expect(names(scene)).toEqual([...room, "back", "side", "person"].sort());
  const two = sceneOf(`
subject ana { height: 1.7 m }
subject ben { height: 1.8 m, at: offset(left: 1 m) }
set {
  paper roll { at: offset(behind: 1 m), width: 2 m, hangs: 2 m, run: 2 m, curve: 40 cm }
  box crate { size: 40 x 40 x 40 cm, at: (1 m, 0 m, 0 m) }
}
light key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }`);
  expect(names(two)).toEqual(["ana", "ben", "crate", "roll"]);
});

describe("the reading with one surface black is that of the scene painted so and worked out anew", () => {
  /** Within 2 % of the reading, and both errors. */
  const law = (owner: string, without: (station: Station) => number): void => {
    const fresh = sceneLight(painted(owner));
    for (const station of scene.stations) {
      const there = fresh.reach(key, station);
      const slack = 0.02 * (there.direct + there.bounced) + there.error + light.reach(key, station).error;
      const off = without(station) - there.direct - there.bounced;
      expect(Math.abs(off), station.name).toBeLessThan(slack);
    }
  };
  const found = (owner: string) => (station: Station) => {
    const rows = light.contributors(one(key), station);
    const { direct, bounced } = light.reach(key, station);
    return rows.find(({ surface }) => surface === owner)?.without ?? direct + bounced;
  };
  test.each([...room, "back", "side", "person"])("%s", (owner) => law(owner, found(owner)));
  test("breaks with the surface left as it is, and with another", () => {
    const whole = (station: Station): number => {
      const { direct, bounced } = light.reach(key, station);
      return direct + bounced;
    };
    for (const owner of ["ceiling", "floor", "wall right"]) mustBreak(() => law(owner, whole));
    mustBreak(() => law("ceiling", found("floor")));
  });
});

describe("contributors", () => {
  const station = scene.stations[cheek];
  if (station === undefined) throw new Error("no cheek");

  test("name the surfaces of the greatest effect first, and what the reading is without them", () => {
    const rows = light.contributors([{ source: key, energy: key.energy }], station);
    const { direct, bounced } = light.reach(key, station);
    expect(rows.map(({ takes }) => takes)).toEqual(rows.map(({ takes }) => takes).sort((a, b) => b - a));
    for (const { takes, without } of rows) {
      expect((takes + without) / (key.energy * (direct + bounced))).toBeCloseTo(1, 12);
    }
    // The cheek is turned to the right wall; the white ceiling is over both.
    expect(
      rows
        .slice(0, 3)
        .map(({ surface }) => surface)
        .sort(),
    ).toEqual(["ceiling", "floor", "wall right"]);
    // Light by way of two surfaces is missed with either black: together more than all the bounced light.
    const sum = rows.reduce((all, { takes }) => all + takes, 0);
    expect(sum).toBeGreaterThan(key.energy * bounced);
  });

  test("mix lights by their energies, in any order, and a light that is off changes nothing", () => {
    const both = [
      { source: key, energy: 900 },
      { source: fill, energy: 300 },
    ];
    const rows = light.contributors(both, station);
    expect(light.contributors([...both].reverse(), station)).toEqual(rows);
    const one = light.contributors([{ source: key, energy: 900 }], station);
    const dark = light.contributors(
      [
        { source: key, energy: 900 },
        { source: fill, energy: 0 },
      ],
      station,
    );
    expect(dark).toEqual(one);
    const other = light.contributors([{ source: fill, energy: 300 }], station);
    const of = (list: typeof rows, name: string): number =>
      list.find(({ surface }) => surface === name)?.takes ?? 0;
    for (const { surface, takes } of rows) {
      expect(takes / (of(one, surface) + of(other, surface))).toBeCloseTo(1, 9);
    }
  });

  test("are none where nothing gives light back", () => {
    const open = sceneOf(
      "subject { height: 1.7 m, skin: 0 %, cloth: 0 % }\nlight key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }",
    );
    const at = open.stations.find(({ name }) => name === "face");
    if (at === undefined) throw new Error("no face");
    expect(sceneLight(open).contributors([{ source: sourceOf(open, "key"), energy: 1 }], at)).toEqual([]);
  });
});
