import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as n from "../../src/render/number.js";
import { exactShutter } from "../../src/units/nominal.js";

describe("rounding", () => {
  test.each([
    [n.fixed(0.125, 2), "0.13"],
    [n.fixed(-0.125, 2), "-0.13"],
    [n.fixed(1.005, 2), "1.01"],
    [n.fixed(2.5, 0), "3"],
    [n.fixed(-0.04, 1), "0.0"],
    [n.fixed(Number.NaN, 1), "-"],
    [n.fixed(null, 1), "-"],
    [n.significant(113.25, 3), "113"],
    [n.significant(85, 3), "85.0"],
    [n.shortest(85, 3), "85"],
    [n.shortest(100, 2), "100"],
    [n.significant(9.996, 3), "10.0"],
    [n.significant(0.0451, 2), "0.045"],
    [n.significant(0, 3), "0"],
    [n.significant(123456789, 3), "1.23e8"],
    [n.millimetres(9.94), "9.9 mm"],
    [n.millimetres(9.96), "10 mm"],
    [n.metres(2.405), "2.41 m"],
    [n.metres(null), "-"],
    [n.degrees(99.96), "100 deg"],
    [n.degrees(14.76), "14.8 deg"],
    [n.signedStops(0.72), "+0.7"],
    [n.signedStops(-0.04), "0.0"],
    [n.signedStops(-1.3), "-1.3"],
    [n.kelvin(5604), "5600 K"],
    [n.perCent(0.426), "43 %"],
    [n.shutterTime(0.008), "1/125 s"],
    [n.shutterTime(0.4), "0.4 s"],
    [n.shutterTime(2), "2 s"],
    [n.shutterTime(exactShutter(1 / 200)), "1/200 s"],
    [n.shutterTime(exactShutter(30)), "30 s"],
    [n.shutterTime(0), "-"],
    [n.centimetres(0.025), "2.5 cm"],
    [n.centimetres(0.1), "10 cm"],
  ])("%s", (shown, expected) => {
    expect(shown).toBe(expected);
  });

  test("is within half of the last digit, and never shows a minus before zero", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        (value, digits) => {
          const text = n.fixed(value, digits);
          const unit = Number(`1e-${digits}`);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5 * unit + 1e-9);
          expect(text).not.toMatch(/^-0(\.0*)?$/);
        },
      ),
    );
  });

  test("keeps at most so many digits, for numbers of any size", () => {
    const sizes = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.double({ min: 1e-4, max: 1e8, noNaN: true }),
    );
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 6 }), (value, digits) => {
        const text = n.significant(value, digits);
        expect(text).not.toMatch(/NaN|Infinity/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
          Math.abs(value) * 5.001 * Number(`1e-${digits}`),
        );
      }),
    );
  });

  test("exact numbers lose only the last bits", () => {
    expect(Object.is(n.exact(-0), 0)).toBe(true);
    expect(n.exact(0.1 + 0.2)).toBe(0.3);
    expect(n.exact(1 / 3)).toBe(0.333333333333);
  });
});
