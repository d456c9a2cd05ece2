import { expect, test } from "vitest";
import { calc } from "../../src/quantities/calc.js";

/** The number that `calc` works out. */
function worked(name: string, ...args: readonly string[]): number {
  const answer = calc(name, args);
  if (!answer.ok) throw new Error(answer.problem);
  return Number(answer.value);
}

/** A value to the digits in which it was published. */
function shown(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}

test("EV 10 is 2560 lx at C = 250 and 128 cd/m2 at K = 12.5 (published table for ISO 100)", () => {
  expect(worked("illuminance_at_ev100", "ev100=10", "C=250")).toBe(2560);
  expect(worked("luminance_at_ev100", "ev100=10", "K=12.5")).toBe(128);
});

test("the meters agree at 15.7 % for K = 12.5 and at 17.6 % for K = 14, C = 250 (published)", () => {
  expect(shown(worked("calibrated_reflectance", "K=12.5", "C=250"), 3)).toBe(0.157);
  expect(shown(worked("calibrated_reflectance", "K=14", "C=250"), 3)).toBe(0.176);
});

test("at five times the largest size the inverse square is within 1 % (ANSI/IES LS-1, 9.1.1)", () => {
  expect(worked("point_source_error_disc", "distance_over_diameter=5")).toBeCloseTo(0.01, 12);
  expect(worked("point_source_error_square_by_diagonal", "distance_over_diagonal=5")).toBeLessThan(0.01);
  expect(worked("point_source_error_square_by_side", "distance_over_side=5")).toBeGreaterThan(0.01);
});

test("full sun is EV 15 at ISO 100 within a third of a stop (published table; 82 klx is EV 15 at C = 250)", () => {
  expect(worked("ev100_from_illuminance", "illuminance=82klx")).toBeCloseTo(15, 1);
});

test("f/16 at 1/ISO stands for 64 klx at C = 250 (common practice, no source)", () => {
  expect(worked("sunny16_illuminance")).toBe(64_000);
  expect(worked("ev100_from_settings", "f_number=f/16", "time_s=1/100", "iso=100")).toBeCloseTo(
    worked("ev100_from_illuminance", "illuminance_lx=64000"),
    12,
  );
});
