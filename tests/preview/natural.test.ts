import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { left, offset, right } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import { overcastOnPlane } from "../../src/physics/overcast-sky.js";
import { exposureAsSet } from "../../src/preview/look.js";
import { type NaturalName, naturalLookOf } from "../../src/preview/natural.js";
import { evenSky, overcastSky, sunSource, windowSource } from "../../src/preview/natural-lights.js";
import type { Plan } from "../../src/report/plan.js";
import { buildScene } from "../../src/scene/build.js";
import type { Source } from "../../src/scene/types.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { deg, m, percent as share } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { dish, person, planOf, room, setOf } from "../helpers/plan.js";

const natural = (plan: Plan, name: NaturalName, width: number) => {
  const found = naturalLookOf(plan, name, width);
  if (typeof found === "string") throw new Error(found);
  return found;
};

const planFrom = (text: string): Plan => {
  const { recipe } = compile({ name: "a.light", text });
  if (recipe === null || recipe.kind !== "recipe") throw new Error("no recipe");
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
};

/** Illuminance of a plane turned away from level by a tilt, on the mark. */
const onPlane = (sources: readonly Source[], tilt: number): number =>
  sources.reduce(
    (sum, source) =>
      sum +
      source.energy *
        directPerLumenSecond(source, [0.4, -0.3, 1.5], [Math.sin(tilt), 0, Math.cos(tilt)], "disc"),
    0,
  );

describe("the lights of nature", () => {
  const tilts = [0, 30, 60, 90, 120].map((angle) => (angle * Math.PI) / 180);

  test("an even sky gives a plane of tilt t its level illuminance times (1 + cos t) / 2", () => {
    for (const tilt of tilts) {
      // Over ground of 500 m to every side a meter 1.5 m up sees 0.2 deg of sky below the horizon.
      const expected = 500 * ((1 + Math.cos(tilt)) / 2);
      expect(Math.abs(onPlane(evenSky(500), tilt) / expected - 1)).toBeLessThan(0.01);
    }
    expect(onPlane(evenSky(500), 0)).toBeCloseTo(500, 0);
  });

  test("an overcast sky gives planes what the closed form for the sky of the CIE gives", () => {
    for (const tilt of tilts) {
      const expected = 700 * overcastOnPlane(tilt, 0);
      expect(Math.abs(onPlane(overcastSky(700), tilt) / expected - 1), `${tilt}`).toBeLessThan(0.03);
    }
  });

  test("a sun gives a plane square to it what it is made for", () => {
    const at = [0, 0, 1.6] as const;
    const sun = sunSource(at, [0, -0.8, 0.6], 0.0093, 90_000);
    expect((sun.energy * directPerLumenSecond(sun, at, [0, -0.8, 0.6], "disc")) / 90_000).toBeCloseTo(1, 6);
    // The disc is as wide as asked for.
    if (sun.shape.kind !== "disc") throw new Error("no disc");
    expect(2 * Math.atan(sun.shape.radius / 1e5)).toBeCloseTo(0.0093, 9);
  });

  test("a window gives a face straight opposite pi L times its form factor", () => {
    const at = [0, 0, 1.6] as const;
    const opening = windowSource(at, [-1, 0, 0], { width: 1.2, height: 1.8, away: 2 }, 1000);
    // Small element opposite the middle of a rectangle: four corner rectangles of 0.6 by 0.9 at 2 m
    // (Howell, catalogue of radiation configuration factors, B-3).
    const [x, y] = [0.6 / 2, 0.9 / 2];
    const corner = (a: number, b: number): number =>
      (a / Math.sqrt(1 + a * a)) * Math.atan(b / Math.sqrt(1 + a * a));
    const factor = (4 / (2 * Math.PI)) * (corner(x, y) + corner(y, x));
    const found = opening.energy * directPerLumenSecond(opening, at, [-1, 0, 0], "disc");
    expect(found / (1000 * factor)).toBeCloseTo(1, 6);
  });
});

describe("a set-up in natural light", () => {
  const wall = block("flat", "back", { size: size(m(2.4), m(2.4)), at: offset({ behind: m(0.5) }) });
  const someone = block("subject", null, { height: m(1.7), skin: share(35), cloth: share(30) });

  test("mirrored it gives the mirrored picture", () => {
    const [one, two] = [left(deg(40)), right(deg(40))].map(
      (bearing) =>
        natural(
          planOf({ room, subjects: [someone], set: setOf(wall), lights: [dish({ bearing })] }),
          "sun",
          48,
        ).look,
    );
    if (one === undefined || two === undefined) throw new Error("no picture");
    let worst = 0;
    for (let row = 0; row < one.height; row++)
      for (let column = 0; column < one.width; column++) {
        const a = one.luminance[row * one.width + column] as number;
        const b = two.luminance[row * two.width + one.width - 1 - column] as number;
        worst = Math.max(worst, Math.abs(a - b));
      }
    // What bounces is sampled.
    expect(worst).toBeLessThan(0.06);
    expect(one.luminance.reduce((sum, value) => sum + value, 0) / one.luminance.length).toBeGreaterThan(0.02);
  }, 120_000);

  test("the same set-up gives the same numbers", () => {
    const plan = planOf({ subjects: [someone], set: setOf(wall), lights: [dish()] });
    expect(natural(plan, "sun", 40).look.luminance).toEqual(natural(plan, "sun", 40).look.luminance);
  }, 120_000);

  test("sky and face are to each other as the formulas for sun, sky and ground have it", () => {
    // A black person alone, no room: the key alone makes the reading, and the exposure is right for f/8 as it is set.
    const plan = planOf({ subjects: [person], lights: [dish()] });
    const found = natural(plan, "sun", 40);
    // The sky above everything is L = level / pi; level 0.8 + 15.5 sqrt(sin a) klx, the sun 127.5 exp(-0.21 / sin a) klx
    // (J. IES 13:4 (1984) 381): at the elevation of the key, a disc turned to it gets sun + sky (1 + sin a) / 2, and from
    // the ground of 20 % (sun sin a + sky) 0.2 (1 - sin a) / 2, less what the body takes.
    const { scene, light } = plan;
    const station = scene.stations.find((row) => row.name === "face" && row.receptor === "disc");
    if (station === undefined) throw new Error("no face");
    const source = scene.sources[0] as Source;
    const lamps = source.energy * light.reach(source, station).direct;
    const sine = station.facing[2];
    const sky = 0.8 + 15.5 * Math.sqrt(sine);
    const sun = 127.5 * Math.exp(-0.21 / sine);
    const face = sun + (sky * (1 + sine)) / 2 + ((sun * sine + sky) * 0.2 * (1 - sine)) / 2;
    const [white] = found.look.luminance;
    expect(found.look.view.side[0]).toBe(-1);
    const expected = ((sky / face) * lamps) / (exposureAsSet(scene) as number);
    expect(Math.abs((white as number) / expected - 1)).toBeLessThan(0.03);
  }, 120_000);

  test("the edge of a shadow is as wide as the sun's disc makes it, to a pixel", () => {
    const plan = planFrom(`halfshade 1
recipe "One edge"
set {
  panel leaf { size: 1 x 6 m, at: (-50 cm, -4 m, 3 m), front: 0 %, back: 0 % }
  flat back { size: 4 x 3 m, at: offset(behind: 2 m), front: 50 % }
}
subject { height: 1.7 m, at: (1.5 m, 0 m, 0 m) }
light key {
  shape: disc(20 cm)
  calibration: metered(f/8, at: 2 m, ISO 100)
  power: full
  position: (1.5 m, -3 m, 3.3 m)
}
camera {
  held: level
  focal_length: 300 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3.5 m
  height: 1.3 m
  focus: (0 m, 2 m, 1.3 m)
}
`);
    const { camera, stations } = plan.scene;
    const station = stations.find((row) => row.name === "face" && row.receptor === "disc");
    const to = station?.facing ?? [0, 0, 1];
    const { look } = natural(plan, "sun", 100);
    const row = Math.floor(look.height / 2) * look.width;
    const line = [...look.luminance.subarray(row, row + look.width)];
    const least = Math.min(...line);
    const most = Math.max(...line);
    const crossing = (part: number): number => {
      const level = least + part * (most - least);
      const x = line.findIndex((value) => value >= level);
      const [a, b] = [line[x - 1] as number, line[x] as number];
      return x - 1 + (level - a) / (b - a);
    };
    // The leaf's right edge is upright, 6 m before the wall. The sun is 0.533 deg wide, over the cosine of its elevation on
    // the compass; on the wall that is the gap times it over the square of the cosine of its bearing, which is 0 but for
    // what the face lies before the mark. Of a disc's edge 0.687 lies between 10 and 90 % (the circular segment).
    const size = (0.533 * Math.PI) / 180;
    const level = Math.hypot(to[0], to[1]);
    const cosine = -to[1] / level;
    const wide = ((6 * size) / level / (cosine * cosine)) * 0.687;
    const v = (0.3 * 5.5) / (5.5 - 0.3);
    const pixel = ((5.5 / v) * (camera?.frameWidth as number)) / 100;
    expect(wide / pixel).toBeGreaterThan(6);
    // The sky behind changes a little over that width.
    expect(Math.abs(crossing(0.9) - crossing(0.1) - wide / pixel)).toBeLessThan(1);
  }, 120_000);

  test("what is not there is said", () => {
    const plan = planOf({ subjects: [person], lights: [dish()] });
    expect(naturalLookOf(plan, "intent", 40)).toContain("pass_for");
    expect(naturalLookOf(plan, "window", 40)).toContain("how far");
    expect(naturalLookOf(planOf({ subjects: [], lights: [dish()] }), "sun", 40)).toContain("subject");
  });
});
