import { describe, expect, test } from "vitest";
import { off, output, sphere } from "../../src/model/make/lamps.js";
import { at } from "../../src/model/make/points.js";
import { directOf, lightField } from "../../src/transport/light-field.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { cm, lmSeconds, m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { shoot } from "../helpers/shoot.js";

const lamp = (name: string, x: number, fields: object = {}) =>
  block("light", name, {
    shape: sphere(cm(8)),
    output: output(lmSeconds(1000)),
    position: at(m(x), m(-2), m(2)),
    ...fields,
  });
const person = block("subject", null, { height: m(1.7) });

describe("mixing lights", () => {
  const { scene } = shoot({ subjects: [person], lights: [lamp("a", -1), lamp("b", 1), lamp("c", 0.3)] });
  const field = lightField(scene);

  test("sums each light's share times its energy at every station", () => {
    const totals = mix(field, [100, 200, 0]);
    for (let i = 0; i < field.stations; i++) {
      const both = (j: number): number =>
        directOf(field, i, j) + (field.bounced?.[i * field.sources + j] ?? 0);
      expect(totals[i]).toBeCloseTo(100 * both(0) + 200 * both(1), 10);
    }
  });

  test("takes the energies of the scene in file order", () => {
    expect(energiesOf(scene)).toEqual([1000, 1000, 1000]);
  });

  test("of a lamp that is off changes no bit", () => {
    const { scene: more } = shoot({
      subjects: [person],
      lights: [
        lamp("a", -1),
        lamp("x", 0.5, { power: off, position: at(m(0), m(-1), m(3)) }),
        lamp("b", 1),
        lamp("c", 0.3),
      ],
    });
    expect(mix(lightField(more), energiesOf(more))).toEqual(mix(field, energiesOf(scene)));
  });

  test("without lights is dark everywhere", () => {
    const { scene: dark } = shoot({ subjects: [person] });
    expect([...mix(lightField(dark), [])].every((x) => x === 0)).toBe(true);
  });

  test("adds bounced light where a field has it", () => {
    const bounced = new Float64Array(field.direct.length).fill(0.001);
    const totals = mix({ ...field, bounced }, [100, 0, 0]);
    expect(totals[0]).toBeCloseTo(100 * (directOf(field, 0, 0) + 0.001), 12);
  });
});

test("one reading of the lamp itself comes back: metered f/8 at 2 m reads f/8 at 2 m", () => {
  for (const size of [5, 40, 120]) {
    const { scene } = shoot({
      lights: [
        block("light", "a", {
          shape: { kind: "disc", diameter: cm(size), written: "" },
          calibration: {
            kind: "metered",
            fNumber: { value: 8, unit: "f", written: "" },
            at: m(2),
            iso: { value: 100, unit: "ISO", written: "" },
            written: "",
          },
          position: at(m(0), m(-2), m(1)),
          aim: at(m(0), m(0), m(1)),
        }),
      ],
      points: [
        block("point", "meter", {
          at: at(m(0), m(0), m(1)),
          faces: { kind: "point", point: { kind: "named", path: ["a"], written: "a" }, written: "a" },
        }),
      ],
    });
    const index = scene.stations.findIndex((station) => station.name === "meter");
    const exposure = mix(lightField(scene), energiesOf(scene))[index] ?? 0;
    // ISO 2720: N^2 = H S / C.
    expect(Math.sqrt((exposure * 100) / 250)).toBeCloseTo(8, 10);
  }
});
