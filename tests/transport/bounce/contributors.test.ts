import { describe, expect, test } from "vitest";
import type { Scene, Source } from "../../../src/scene/types.js";
import { blackened, systemWithout } from "../../../src/transport/bounce/blackened.js";
import { bouncedColumn } from "../../../src/transport/bounce/column.js";
import { keepSet } from "../../../src/transport/bounce/kept-set.js";
import { ownersOf } from "../../../src/transport/bounce/owner.js";
import { balance, lightSystem } from "../../../src/transport/bounce/system.js";
import { prepareSource } from "../../../src/transport/direct.js";
import { occludersOf } from "../../../src/transport/hiding/occluder.js";
import { type ShadedSource, shadedSource } from "../../../src/transport/hiding/shaded.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { mustBreak } from "../../helpers/must-break.js";
import { randomFrom } from "../../helpers/random.js";
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

const shaded = (source: Source): ShadedSource => shadedSource(prepareSource(source), occludersOf(scene));
const kept = keepSet(scene);
const owners = [...new Set(ownersOf(kept.world, kept.sides))];

test("surfaces are called as the recipe calls them", () => {
  const room = ["floor", "ceiling", "wall left", "wall right", "wall back", "wall front"];
  expect(owners).toEqual([...room, "back", "side", "person"]);
  const two = keepSet(
    sceneOf(`
subject ana { height: 1.7 m }
subject ben { height: 1.8 m, at: offset(left: 1 m) }
set {
  paper roll { at: offset(behind: 1 m), width: 2 m, hangs: 2 m, run: 2 m, curve: 40 cm }
  box crate { size: 40 x 40 x 40 cm, at: (1 m, 0 m, 0 m) }
}`),
  );
  expect([...new Set(ownersOf(two.world, two.sides))].sort()).toEqual(["ana", "ben", "crate", "roll"]);
});

describe("a set with one owner black", () => {
  /** Within 2 % of the bounced light, and both errors. */
  function agrees(owner: string, found: (station: number) => number): void {
    const fresh = bouncedColumn(keepSet(painted(owner)), shaded(key));
    const whole = bouncedColumn(kept, shaded(key));
    scene.stations.forEach((_, i) => {
      const slack =
        0.02 * (whole.bounced[i] as number) + (fresh.error[i] as number) + (whole.error[i] as number);
      expect(Math.abs(found(i) - (fresh.bounced[i] as number))).toBeLessThan(slack);
    });
  }

  test.each(owners)("reads as the scene painted so and worked out anew: %s", (owner) => {
    const column = bouncedColumn(blackened(kept, owner), shaded(key));
    agrees(owner, (i) => column.bounced[i] as number);
  });

  test("the ceiling and the floor do something that this would not let pass", () => {
    const whole = bouncedColumn(kept, shaded(key));
    for (const owner of ["ceiling", "floor", "wall right"]) {
      mustBreak(() => agrees(owner, (i) => whole.bounced[i] as number));
    }
    // First bounces alone taken away, with the light that goes on from there left in.
    const { cells } = kept;
    const ceiling = kept.rho.map((share, c) => {
      const side = cells.grid.sideOfPatch[cells.patchOf[c] as number] as number;
      return ownersOf(kept.world, kept.sides)[side] === "ceiling" ? 0 : share;
    });
    const seen = scene.stations.map((_, i) => {
      let sum = 0;
      for (let c = 0; c < cells.count; c++)
        if (ceiling[c] !== 0) sum += kept.direct[i * cells.count + c] as number;
      return sum;
    });
    mustBreak(() => agrees("ceiling", (i) => seen[i] as number));
  });
});

test("a system without some members is the system made without them", () => {
  const random = randomFrom(77);
  const n = 12;
  const area = Float64Array.from({ length: n }, () => 0.5 + random());
  const between = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      between[i * n + j] = (random() * 0.9) / n / 2;
      between[j * n + i] = between[i * n + j] as number;
    }
  }
  const rho = Float64Array.from({ length: n }, () => 0.1 + 0.8 * random());
  const black = Uint8Array.from({ length: n }, (_, i) => (i % 5 === 1 ? 1 : 0));
  const whole = lightSystem({ count: n, between, area, lost: new Float64Array(n) }, rho);
  const own = Float64Array.from({ length: n }, (_, i) => (black[i] === 1 ? 0 : random()));
  // Made without them: no exchange with the black ones, which give nothing.
  const cut = Float64Array.from(between, (k, at) =>
    black[at % n] === 1 || black[Math.floor(at / n)] === 1 ? 0 : k,
  );
  const wanted = Float64Array.from(own);
  balance(lightSystem({ count: n, between: cut, area, lost: new Float64Array(n) }, rho), wanted);
  const law = (system: typeof whole): void => {
    const found = Float64Array.from(own);
    balance(system, found);
    found.forEach((x, i) => {
      expect(x).toBeCloseTo(wanted[i] as number, 12);
    });
  };
  law(systemWithout(whole, black));
  mustBreak(() => law(whole));
});

describe("contributors", () => {
  const light = sceneLight(scene);
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
