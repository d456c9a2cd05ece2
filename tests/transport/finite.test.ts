import fc from "fast-check";
import { expect, test } from "vitest";
import {
  capsule,
  cosinePower,
  dial,
  dialNumber,
  disc,
  fractionOfFull,
  guideNumber,
  metered,
  output,
  rectangle,
  setTo,
  sphere,
} from "../../src/model/make/lamps.js";
import { at, left, right, tape } from "../../src/model/make/points.js";
import type { LightModel } from "../../src/model/types.js";
import { sceneToJson } from "../../src/scene/export.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { deg, fNumber, iso, lm, lmSeconds, m, number, stops, ws } from "../../src/units/make.js";
import { freeField } from "../helpers/free-field.js";
import { block } from "../helpers/models.js";
import { shoot } from "../helpers/shoot.js";

/** Values from the least to the greatest that the vocabulary allows, both ends often. */
const range = (low: number, high: number): fc.Arbitrary<number> =>
  fc.oneof(fc.constantFrom(low, high), fc.double({ min: low, max: high, noNaN: true }));
const length = (low: number, high: number) => range(low, high).map(m);
const place = fc
  .tuple(range(-100, 100), range(-100, 100), range(0, 50))
  .map(([x, y, z]) => at(m(x), m(y), m(z)));
const bearing = fc
  .tuple(fc.boolean(), range(0, 180))
  .map(([is, angle]) => (is ? left(deg(angle)) : right(deg(angle))));

const shape = fc.oneof(
  length(0.001, 30).map(disc),
  length(0.001, 30).map(sphere),
  fc.tuple(length(0.001, 30), length(0.001, 30)).map(([w, h]) => rectangle(w, h)),
  fc.tuple(length(0.001, 30), length(0.001, 30)).map(([l, d]) => capsule(l, d)),
);
const knownBy = fc.oneof(
  range(0, 1e9).map((x) => ({ output: output(lmSeconds(x)) })),
  range(0, 1e9).map((x) => ({ output: output(lm(x)) })),
  fc
    .tuple(range(0.5, 128), length(0.05, 100), range(1, 1e7))
    .map(([n, d, s]) => ({ calibration: metered(fNumber(n), d, iso(s)) })),
  fc.tuple(length(0.1, 2000), range(1, 1e7)).map(([gn, s]) => ({ calibration: guideNumber(gn, iso(s)) })),
);
const standing = fc.oneof(
  place.map((position) => ({ position })),
  fc
    .tuple(length(0.02, 200), bearing, length(0, 50))
    .map(([d, b, h]) => ({ distance: tape(d), bearing: b, height: h })),
  fc
    .tuple(length(0, 200), bearing, range(-85, 90))
    .map(([d, b, e]) => ({ floor_distance: tape(d), bearing: b, elevation: deg(e) })),
  fc
    .tuple(length(0.02, 200), bearing, length(0, 50))
    .map(([d, b, h]) => ({ distance: tape(d), bearing: b, bottom_edge: h })),
);
const spread = fc.oneof(
  fc.constant({}),
  range(0.1, 200).map((n) => ({ beam: cosinePower(number(n)) })),
  range(2, 170).map((angle) => ({ grid: deg(angle), grid_loses: stops(8) })),
);
const setting = fc.oneof(
  range(0, 1).map((x) => ({ power: fractionOfFull(number(x)) })),
  range(0.001, 1e6).map((x) => ({ power: setTo(ws(x)), full_power: ws(0.1) })),
  fc
    .tuple(range(0, 100), range(0.01, 10))
    .map(([x, step]) => ({ power: dialNumber(number(x)), dial: dial(number(10), number(step)) })),
);

const anyLight: fc.Arbitrary<LightModel> = fc
  .tuple(shape, knownBy, standing, spread, setting, bearing)
  .map(([lit, known, stands, beam, set, feather]) =>
    block("light", "lamp", { shape: lit, ...known, ...stands, ...beam, ...set, feather } as never),
  );

test("whatever the vocabulary allows, no number of scene or light is lost", () => {
  fc.assert(
    fc.property(
      anyLight,
      range(0.3, 2.6),
      fc.constantFrom("standing", "seated", "kneeling", "lying"),
      (light, height, pose) => {
        const { scene } = shoot({
          subjects: [block("subject", null, { height: m(height), pose, seat: m(height) })],
          lights: [light],
        });
        const walk = (value: unknown): void => {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
          else if (value !== null && typeof value === "object")
            for (const inner of Object.values(value)) walk(inner);
        };
        walk(sceneToJson(scene));
        walk(scene.sources);
        for (const total of mix(freeField(scene), energiesOf(scene))) {
          expect(Number.isFinite(total) && total >= 0).toBe(true);
        }
      },
    ),
  );
});
