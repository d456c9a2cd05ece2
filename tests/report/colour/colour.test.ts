import Color from "colorjs.io";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gel, gels } from "../../../src/model/make/lamps.js";
import { right } from "../../../src/model/make/points.js";
import type { Recipe } from "../../../src/model/types.js";
import { type Chromaticity, uvFromXy } from "../../../src/physics/chromaticity.js";
import { mixLights } from "../../../src/physics/colour-mixture.js";
import { planckChromaticity } from "../../../src/physics/planck.js";
import { reportColour } from "../../../src/report/colour/build.js";
import { mixtureError, mixtureOf } from "../../../src/report/colour/mixture.js";
import { readingAt } from "../../../src/report/light/reading.js";
import type { ReportColour } from "../../../src/report/schema/colour.js";
import { deg, kelvin, mired, stops } from "../../../src/units/make.js";
import { bulb, dish, planOf, room } from "../../helpers/plan.js";

function colourOf(parts: Partial<Recipe>): ReportColour {
  const found = reportColour(planOf(parts));
  if (found === null) throw new Error("no light");
  return found;
}

/** A colour of the kept colour library by chromaticity and luminance. */
const theirs = ({ x, y }: Chromaticity, amount: number): Color =>
  new Color("xyz-abs-d65", [(x / y) * amount, amount, ((1 - x - y) / y) * amount]);

describe("arithmetic against a colour library", () => {
  test("coordinates: its u', v' are ours with v = 2/3 v'", () => {
    for (const t of [2856, 4100, 5600, 9000]) {
      const colour = planckChromaticity(t);
      const [u, v] = theirs(colour, 40).uv as unknown as [number, number];
      const ours = uvFromXy(colour);
      expect(ours.u).toBeCloseTo(u, 9);
      expect(ours.v).toBeCloseTo((2 / 3) * v, 9);
    }
  });

  test("mixture: the sum of its tristimulus values", () => {
    const [a, b] = [planckChromaticity(3200), planckChromaticity(5600)];
    const [one, other] = [theirs(a, 30).coords, theirs(b, 50).coords];
    const sum = new Color(
      "xyz-abs-d65",
      one.map((value, i) => (value ?? 0) + (other[i] ?? 0)) as [number, number, number],
    );
    const [x, y] = sum.xy as unknown as [number, number];
    const ours = mixLights([
      { colour: a, amount: 30 },
      { colour: b, amount: 50 },
    ]);
    expect(ours?.x).toBeCloseTo(x, 9);
    expect(ours?.y).toBeCloseTo(y, 9);
  });
});

describe("the colours of a set-up", () => {
  test("one light is its own colour everywhere", () => {
    const found = colourOf({ lights: [dish({ colour: kelvin(4200) })], room });
    for (const { colour, duv } of found.stations.filter((row) => row.colour !== null)) {
      expect(colour).toBe(4200);
      expect(duv).toBe(0);
    }
    expect(found.lights[0]?.from_balance).toBeCloseTo(1e6 / 4200 - 1e6 / 5600, 9);
    expect(found.advice[0]).toContain("60 mired warm: set 4200 K");
  });

  test("two lights mix between them, nearer to the stronger; direct and bounced are told apart", () => {
    const fill = bulb({ colour: kelvin(3200), bearing: right(deg(50)) }, "fill");
    const plan = planOf({ lights: [dish(), fill], room });
    const found = reportColour(plan);
    const face = found?.stations.find((row) => row.name === "face" && row.receptor === "disc");
    const shaded = found?.stations.find((row) => row.name === "shaded_cheek");
    expect(face?.colour).toBeLessThan(5600);
    expect(shaded?.colour).toBeLessThan(face?.colour ?? 0);
    expect(shaded?.colour).toBeGreaterThan(3200);
    const station = plan.scene.stations.find((row) => row.name === "face");
    if (station === undefined) throw new Error();
    // The mixture of the fill alone is the fill.
    expect(mixtureOf(plan.scene, readingAt(plan, station, ["fill"]))?.kelvin).toBe(3200);
    expect(face?.direct).not.toBeCloseTo(face?.bounced ?? 0, 0);
  });

  test("mixing is not averaging mired values, but near it", () => {
    const both = mixLights([3200, 5600].map((t) => ({ colour: planckChromaticity(t), amount: 1 })));
    expect(both).toBeDefined();
    const { scene } = planOf({ lights: [dish(), bulb({ colour: kelvin(3200) }, "fill")] });
    const shares = ["key", "fill"].map((name) => ({ name, direct: 1, bounced: 0, error: 0 }));
    const mixed = mixtureOf(scene, { exposure: 2, error: 0, constant: 250, shares });
    const mean = (1e6 / 3200 + 1e6 / 5600) / 2;
    const off = 1e6 / (mixed?.kelvin ?? 1) - mean;
    expect(Math.abs(off)).toBeGreaterThan(1);
    expect(Math.abs(off)).toBeLessThan(15);
  });

  test("what is open of bounced light moves a mixture no further than its bound, and as far", () => {
    const { scene } = planOf({
      lights: [
        dish(),
        bulb({ colour: kelvin(3200) }, "fill"),
        bulb({ colour: kelvin(9000) }, "rim"),
        bulb({ colour: kelvin(4300) }, "lamp"),
      ],
    });
    const part = fc.double({ min: 0, max: 5, noNaN: true });
    const share = fc.record({ direct: part, bounced: part, error: part });
    const turn = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 });
    let reached = 0;
    fc.assert(
      fc.property(fc.array(share, { minLength: 4, maxLength: 4 }), turn, (parts, turns) => {
        const names = ["key", "fill", "rim", "lamp"];
        const shares = parts.map((row, i) => ({
          ...row,
          direct: row.direct + 0.01,
          error: Math.min(row.error, row.bounced),
          name: names[i] ?? "",
        }));
        const reading = { exposure: 1, error: 0, constant: 250, shares };
        const middle = mixtureOf(scene, reading)?.kelvin ?? 0;
        const bound = mixtureError(scene, reading, middle);
        const at = (signs: readonly number[]): number => {
          const moved = shares.map((row, i) => ({
            ...row,
            bounced: row.bounced + row.error * (signs[i] ?? 0),
          }));
          return Math.abs(
            1e6 / (mixtureOf(scene, { ...reading, shares: moved })?.kelvin ?? 0) - 1e6 / middle,
          );
        };
        expect(at(turns)).toBeLessThanOrEqual(bound + 1e-6);
        // All sixteen corners, of which one is the farthest.
        const corners = Array.from({ length: 16 }, (_, k) =>
          at([1, 2, 4, 8].map((bit) => (k & bit ? 1 : -1))),
        );
        expect(Math.max(...corners)).toBeCloseTo(bound, 6);
        reached += 1;
      }),
      { numRuns: 60 },
    );
    expect(reached).toBe(60);
  });

  test("gels: shifts add in mired and losses in stops; the gel that is advised meets the key", () => {
    const stacked = gels(gel("warm", mired(30), stops(0.25)), gel("warm", mired(60), stops(0.5)));
    const found = colourOf({ lights: [dish({ gel: stacked })] });
    expect(found.lights[0]).toMatchObject({ bare: 5600, loses: 0.75 });
    expect(found.lights[0]?.mired).toBeCloseTo(1e6 / 5600 + 90, 9);
    const two = colourOf({ lights: [dish(), bulb({ colour: kelvin(3200) }, "fill")] });
    const advice = two.advice.find((text) => text.includes("gel")) ?? "";
    const shift = Number(/cool gel of (\d+) mired/.exec(advice)?.[1]);
    expect(1e6 / (1e6 / 3200 - shift)).toBeCloseTo(5600, -2);
  });
});
