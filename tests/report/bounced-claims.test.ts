import { describe, expect, test } from "vitest";
import { reportOf } from "../helpers/worked.js";

const set = (walls: number, claim = ""): string => `
room {
  size: 4 x 5 x 2.8 m
  walls { reflectance: ${walls} % }
  ceiling { reflectance: ${walls} % }
  floor { reflectance: ${walls} % }
}
set { flat back { size: 3 x 2.4 m, at: offset(behind: 80 cm), front: ${walls} % } }
subject { height: 1.7 m }
light key { shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }
camera { held: upright, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 2.2 m, height: 1.4 m, focal_length: 50 mm }
${claim}`;

describe("a claim and what bounced light leaves open", () => {
  const base = reportOf(set(70));
  const cheek = base.stations.find((row) => row.name === "shaded_cheek");
  const exposure = cheek?.exposure.total ?? Number.NaN;
  const error = cheek?.exposure.error ?? Number.NaN;
  const outcome = (off: number): string | undefined =>
    reportOf(
      set(70, `expect exposure(shaded_cheek) < ${(exposure * Math.exp(off * Math.LN2)).toFixed(9)} lx s`),
    ).expectations[0]?.outcome;

  test("is not decidable where its limit lies within the error, and decided beyond it", () => {
    expect(error).toBeGreaterThan(0.001);
    expect(outcome(0.5 * error)).toBe("undecidable");
    expect(outcome(-0.5 * error)).toBe("undecidable");
    expect(outcome(2 * error)).toBe("passed");
    expect(outcome(-2 * error)).toBe("failed");
  });
});

describe("shadows", () => {
  test("are deeper in a dark room, and their edge is the same: depth and edge are two things", () => {
    const [dark, light] = [5, 80].map((walls) =>
      reportOf(set(walls)).shadows.find((row) => row.surface === "back"),
    );
    expect((dark?.depth ?? 0) - (light?.depth ?? 0)).toBeGreaterThan(1);
    expect(dark?.edge).toBeCloseTo(light?.edge ?? Number.NaN, 9);
    // Depth is what lies between light and shadow.
    expect((light?.in_light ?? 0) - (light?.in_shadow ?? 0)).toBeCloseTo(light?.depth ?? Number.NaN, 12);
  });

  test("a surface in the light of the key comes out with its own tone", () => {
    const back = reportOf(set(80)).stations.find((row) => row.name === "back");
    // CIE 15: L* = 116 (Y)^(1/3) - 16, Y the reflectance times the light over that of the key.
    const y = 0.8 * Math.exp((back?.from_key ?? Number.NaN) * Math.LN2);
    expect(back?.tone?.reflectance).toBe(0.8);
    expect(back?.tone?.lightness).toBeCloseTo(116 * Math.cbrt(y) - 16, 9);
  });

  test("a shaded cheek names the surfaces it lives on, the greatest first", () => {
    const cheek = reportOf(set(70)).stations.find((row) => row.name === "shaded_cheek");
    const given = cheek?.contributors ?? [];
    expect(given.length).toBeGreaterThan(1);
    expect([...given].sort((a, b) => b.takes - a.takes)).toEqual(given);
    for (const { takes, stops } of given) {
      const total = cheek?.exposure.total ?? Number.NaN;
      expect(stops).toBeCloseTo(Math.log2(total / (total - takes)), 6);
    }
  });
});
