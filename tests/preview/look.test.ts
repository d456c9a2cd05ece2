import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { left, offset, right } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import { greysOf } from "../../src/preview/grey.js";
import { exposureAsSet, type Look, lookOf } from "../../src/preview/look.js";
import { meterAt, SEEN } from "../../src/preview/view.js";
import { readingAt } from "../../src/report/light/reading.js";
import type { Plan } from "../../src/report/plan.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { deg, m, mm, percent as share } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { bulb, camera, dish, planOf, room, setOf } from "../helpers/plan.js";

const wall = block("flat", "back", { size: size(m(2.4), m(2.4)), at: offset({ behind: m(0.5) }) });
const someone = block("subject", null, { height: m(1.7), skin: share(35), cloth: share(30) });

/** A black leaf whose right edge stands at the mark, a disc aimed at that edge, a wall behind. */
const edgeText = `halfshade 1
recipe "One edge"
set {
  panel leaf { size: 1 x 3 m, at: (-50 cm, 0 m, 1.5 m), front: 0 %, back: 0 % }
  flat back { size: 4 x 3 m, at: offset(behind: 50 cm), front: 50 % }
}
light key {
  shape: disc(20 cm)
  calibration: metered(f/8, at: 2 m, ISO 100)
  power: full
  position: (-1 m, -2 m, 1.3 m)
  aim: (0 m, 0 m, 1.3 m)
}
camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3.5 m
  height: 1.3 m
  focus: (0 m, 50 cm, 1.3 m)
}
`;

const look = (plan: Plan, width = 90): Look => {
  const found = lookOf(plan, width);
  if (typeof found === "string") throw new Error(found);
  return found;
};

/** The pixel that sees the place nearest to a point, with how far it is. */
function pixelAt({ view, width, height }: Look, point: readonly number[]): { pixel: number; away: number } {
  let best = { pixel: -1, away: Number.POSITIVE_INFINITY };
  for (let pixel = 0; pixel < width * height; pixel++) {
    if (view.side[pixel] === -1) continue;
    const at = SEEN * pixel;
    const away = Math.hypot(...[0, 1, 2].map((i) => (view.data[at + i] as number) - (point[i] as number)));
    if (away < best.away) best = { pixel, away };
  }
  return best;
}

describe("a preview", () => {
  const plan = planOf({
    camera: { ...camera, focal_length: mm(40) },
    room,
    subjects: [someone],
    set: setOf(wall),
    lights: [dish(), bulb({ bearing: right(deg(60)) }, "fill")],
  });
  const picture = look(plan, 140);

  test("at a station it is as bright as the station's reading makes its surface, within 0.1 stop", () => {
    const set = exposureAsSet(plan.scene) as number;
    let seen = 0;
    for (const name of ["back.left", "back", "back.right", "lit_cheek", "shaded_cheek"]) {
      const station = plan.scene.stations.find((row) => row.name === name);
      if (station === undefined) throw new Error(name);
      const { pixel, away } = pixelAt(picture, station.at);
      if (away > 0.02) continue;
      seen++;
      const rho = picture.view.reflectance[pixel] as number;
      // A pixel is some mm of the body: the reading is taken at the place that its middle sees.
      const meter = { ...meterAt(picture.view, pixel), receptor: "disc" } as const;
      const expected = (rho * readingAt(plan, meter).exposure) / set;
      const off = Math.log2((picture.luminance[pixel] as number) / expected);
      expect(Math.abs(off), `${name} ${off}`).toBeLessThan(0.1);
    }
    expect(seen).toBeGreaterThanOrEqual(3);
  }, 120_000);

  test("the same set-up gives the same bytes", () => {
    const again = look(plan, 140);
    expect(again.luminance).toEqual(picture.luminance);
    const options = { contours: true, tenCentimetres: 9 };
    expect(greysOf(again, options)).toEqual(greysOf(picture, options));
  }, 120_000);

  test("a mirrored set-up gives the mirrored picture", () => {
    const one = look(
      planOf({ subjects: [someone], set: setOf(wall), lights: [dish({ bearing: left(deg(40)) })] }),
    );
    const two = look(
      planOf({ subjects: [someone], set: setOf(wall), lights: [dish({ bearing: right(deg(40)) })] }),
    );
    let worst = 0;
    for (let row = 0; row < one.height; row++) {
      for (let column = 0; column < one.width; column++) {
        const a = one.luminance[row * one.width + column] as number;
        const b = two.luminance[row * two.width + one.width - 1 - column] as number;
        // What bounces is sampled, and lies within some hundredths of a white of its true value.
        worst = Math.max(worst, Math.abs(a - b));
      }
    }
    expect(worst).toBeLessThan(0.06);
    const middle = one.luminance.reduce((sum, value) => sum + value, 0) / one.luminance.length;
    expect(middle).toBeGreaterThan(0.02);
  }, 120_000);

  test("a half-shade in it is as wide as s g / D makes it, to a pixel", () => {
    const { recipe } = compile({ name: "edge.light", text: edgeText });
    if (recipe === null || recipe.kind !== "recipe") throw new Error("no recipe");
    const scene = buildScene(recipe, () => undefined);
    const found = look({ recipe, scene, light: sceneLight(scene) }, 360);
    const row = Math.floor(found.height / 2) * found.width;
    const line = [...found.luminance.subarray(row, row + found.width)];
    const dark = line.slice(0, -20).lastIndexOf(0);
    const full = line[dark + 30] as number;
    const crossing = (share: number): number => {
      const x = line.findIndex((value, at) => at >= dark && value >= share * full);
      const [a, b] = [line[x - 1] as number, line[x] as number];
      return x - 1 + (share * full - a) / (b - a);
    };
    // A disc of 20 cm, the root of 5 m from the edge and aimed at it, the wall 0.5 m behind: s g / D across the light, over its
    // cosine 2 / root 5 on the wall. Of a disc's edge 0.69 lies between 10 and 90 % (Hu, Brown and Nelson, 2004, and
    // the circular segment).
    const wide = ((0.2 * 0.5) / 2) * (Math.sqrt(5) / 2) * 0.687;
    const { camera: lens } = scene;
    const v = (0.085 * 4) / (4 - 0.085);
    const pixel = ((4 / v) * (lens?.frameWidth as number)) / 360;
    expect(Math.abs(crossing(0.9) - crossing(0.1) - wide / pixel)).toBeLessThan(1);
  }, 60_000);
});
