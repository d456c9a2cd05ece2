import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CalcAnswer, calc, tenDigits } from "../../src/quantities/calc.js";
import { nearNames } from "../../src/quantities/near-names.js";
import type { QuantityInput } from "../../src/quantities/quantity.js";
import { nameWithoutUnit } from "../../src/quantities/read-number.js";
import { allQuantities } from "../../src/quantities/registry.js";
import { even } from "../helpers/light-shapes.js";
import { readRows, referenceTopics } from "../helpers/reference-rows.js";

function problem(name: string, ...args: readonly string[]): string {
  const answer = calc(name, args);
  return answer.ok ? `no problem: ${answer.text}` : answer.problem;
}

function text(name: string, ...args: readonly string[]): string {
  const answer = calc(name, args);
  return answer.ok ? answer.text : `problem: ${answer.problem}`;
}

function worked(name: string, ...args: readonly string[]): number {
  const answer = calc(name, args);
  return answer.ok ? Number(answer.value) : Number.NaN;
}

describe("what is written", () => {
  test("the table's unit, another unit, or the name without its unit", () => {
    const expected = "11.47834095 deg";
    expect(text("angular_diameter_sphere", "radius_m=0.1", "distance_m=1")).toBe(expected);
    expect(text("angular_diameter_sphere", "radius=10cm", "distance=1 m")).toBe(expected);
    expect(text("angular_diameter_sphere", "radius_m=10 cm", "distance=100cm")).toBe(expected);
    expect(text("angular_diameter_sphere", "distance=1000mm", "radius_m=1e-1")).toBe(expected);
    expect(text("illuminance_disc_on_axis", "luminance=5000 cd/m2", "radius=50cm", "distance=1m")).toBe(
      "3141.592654 lx",
    );
  });

  test("a bare 11 is 11, f/11 is the exact 11.31", () => {
    expect(worked("stops_between_f_numbers", "n1=8", "n2=11")).toBeCloseTo(0.9188632373, 9);
    expect(worked("stops_between_f_numbers", "n1=f/8", "n2=f/11")).toBeCloseTo(1, 12);
    expect(worked("sum_of_lights_in_f_number", "f_numbers=f/8, f/8")).toBeCloseTo(Math.sqrt(128), 12);
    expect(worked("sum_of_lights_in_f_number", "f_numbers=[8, 8]")).toBeCloseTo(Math.sqrt(128), 12);
    expect(worked("stops_between_iso", "iso1=ISO 100", "iso2=ISO 200")).toBeCloseTo(1, 12);
  });

  test("fractions, per cent, signs and exponents", () => {
    expect(worked("stops_between_times", "t1=1/200 s", "t2_s=1/100")).toBeCloseTo(1, 12);
    expect(worked("reflectance_stops_from_grey", "reflectance=18%")).toBeCloseTo(0, 12);
    expect(worked("distance_for_stop_change", "distance=2m", "stops_brighter=-1")).toBeCloseTo(
      2 * Math.SQRT2,
      12,
    );
    expect(worked("distance_for_stop_change", "distance=2m", "stops_brighter=+1e0 stop")).toBeCloseTo(
      Math.SQRT2,
      12,
    );
  });

  test("left-out inputs with a usual value have it", () => {
    expect(text("sunny16_illuminance")).toBe("64000 lx");
    expect(text("sunny16_illuminance", "C=340")).toBe("87040 lx");
  });

  test("points and lists are JSON", () => {
    expect(
      text(
        "illuminance_polygon_general",
        "luminance_cd_m2=5000",
        "vertices=[[-0.6,1.2,1.5],[0.6,1.2,1.5],[0.6,2.0,1.5],[-0.6,2.0,1.5]]",
        "point=[0,1.5,0]",
        "normal=[0,0,1]",
      ),
    ).toBe("1838.28586 lx");
  });

  test("files come through the reader", () => {
    const file = allQuantities().find((quantity) => quantity.inputs.some((input) => input.kind === "file"));
    if (file === undefined) throw new Error("no quantity reads a file");
    const args = [
      "file=lamp.ies",
      ...file.inputs.filter((i) => i.kind === "number").map((i) => `${i.name}=1`),
    ];
    expect(problem(file.name, ...args)).toBe("file: files can't be read here");
    const asked: string[] = [];
    calc(file.name, args, (path) => {
      asked.push(path);
      return { text: "" };
    });
    expect(asked).toEqual(["lamp.ies"]);
    const missing = calc(file.name, args, (path) => ({
      problem: `there is no ${path}`,
    }));
    expect(missing).toEqual({
      ok: false,
      problem: "file: there is no lamp.ies",
    });
  });
});

describe("what can't be", () => {
  test("names that do not exist, with those that are near", () => {
    expect(problem("angular_diamter_sphere")).toMatch(
      /^there is no quantity "angular_diamter_sphere"\. Did you mean angular_diameter_sphere, /,
    );
    expect(problem("umbra")).toMatch(/Did you mean umbra_length/);
    expect(problem("xyzzy")).toBe('there is no quantity "xyzzy".');
    expect(problem("umbra_length", "source_diametre_m=1")).toMatch(/Did you mean source_diameter_m/);
    expect(problem("constructor")).toMatch(/^there is no quantity/);
    expect(problem("umbra_length", "__proto__=1")).toMatch(/has no input "__proto__"/);
  });

  test("missing, doubled and shapeless arguments", () => {
    expect(problem("angular_diameter_sphere", "radius_m=1")).toBe(
      "distance_m is missing. Inputs: radius_m (m), distance_m (m)",
    );
    expect(problem("angular_diameter_sphere", "radius_m=1", "radius=2m")).toBe("radius_m is given twice");
    expect(problem("angular_diameter_sphere", "radius_m")).toMatch(/^"radius_m" is not name=value\./);
    expect(problem("angular_diameter_sphere", "=1")).toMatch(/^"=1" is not name=value\./);
  });

  test("numbers without their unit, with a wrong one, or that are none", () => {
    expect(problem("angular_diameter_sphere", "radius=0.1", "distance_m=1")).toBe(
      "0.1 has no unit: write 0.1 m, or radius_m=0.1",
    );
    expect(problem("angular_diameter_sphere", "radius_m=3 s")).toBe(
      `radius_m is in m; "3 s" can't be turned into that`,
    );
    expect(problem("angular_diameter_sphere", "radius_m=10%")).toMatch(/can't be turned into that/);
    expect(problem("stops_for_pops", "pops=2m")).toBe('pops is a plain number; "2m" has a unit');
    for (const word of ["NaN", "Infinity", "-Infinity", "", "ten", "1..2", "0x10", "1/0", "--1"]) {
      expect(problem("stops_for_pops", `pops=${word}`), word).toMatch(/^pops: ".*" is not a number$/);
    }
    expect(problem("stops_for_pops", "pops=1e999")).toMatch(/beyond the range of numbers/);
  });

  test("values outside their range, as sentences", () => {
    expect(problem("umbra_length", "source_diameter_m=-1")).toBe(
      "source_diameter_m must be greater than 0; -1 is not",
    );
    expect(problem("umbra_length", "source_diameter_m=0")).toBe(
      "source_diameter_m must be greater than 0; 0 is not",
    );
    expect(problem("penumbra_width_planar_source_oblique", "receiver_tilt_deg=90")).toBe(
      "receiver_tilt_deg must be less than 90; 90 is not",
    );
    expect(problem("stops_for_pops", "pops=2.5")).toBe("pops must be a whole number; 2.5 is not");
    expect(problem("stops_for_pops", "pops=0")).toBe("pops must be 1 or greater; 0 is not");
    expect(problem("transmittance_to_stops", "transmittance=1.1")).toBe(
      "transmittance must be 1 or less; 1.1 is not",
    );
    expect(problem("sum_of_lights_in_f_number", "f_numbers=[]")).toMatch(/needs at least one number/);
    expect(problem("sum_of_lights_in_f_number", "f_numbers=[8,-1]")).toMatch(
      /must be greater than 0; -1 is not/,
    );
    expect(problem("edge_10_90_fraction_of_full_width", "source=dics")).toMatch(/Did you mean disc\?$/);
    expect(problem("angular_diameter_sphere", "radius_m=2", "distance_m=1")).toMatch(
      /the point is inside the sphere/,
    );
    expect(
      problem(
        "illuminance_polygon_general",
        "luminance_cd_m2=1",
        "vertices=[[0,0]]",
        "point=[0,0,0]",
        "normal=[0,0,1]",
      ),
    ).toMatch(/^vertices must be/);
    expect(problem("illuminance_polygon_general", "vertices=[[0,0")).toMatch(/is not JSON/);
  });

  test("no end is null with the reason, not a number", () => {
    const answer = calc("umbra_length", [
      "source_diameter_m=0.1",
      "occluder_diameter_m=0.2",
      "source_to_occluder_m=1",
    ]);
    expect(answer).toMatchObject({ ok: true, value: null });
    expect(answer.ok && answer.text).toBe(
      "null (the source is no larger than the occluder: the full shadow has no end)",
    );
    expect(text("lighting_ratio_key_to_fill", "key_lx=1", "fill_lx=0")).toMatch(/^null \(/);
    expect(text("illuminance_at_ev100", "ev100=1e9")).toMatch(/^null \(/);
    expect(text("nd_density_to_stops", "density=1e308")).toMatch(/^null \(/);
  });
});

describe("what is printed", () => {
  test("ten significant digits, no exponent, no zeros behind", () => {
    expect(tenDigits(11.478340954533573)).toBe("11.47834095");
    expect(tenDigits(1.23456789012e-7)).toBe("0.000000123456789");
    expect(tenDigits(2.5e21)).toBe("2500000000000000000000");
    expect(tenDigits(-0)).toBe("0");
    expect(tenDigits(64_000)).toBe("64000");
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
        const rounded = Number(x.toPrecision(10)) + 0;
        expect(Number(tenDigits(x))).toBe(Number.isFinite(rounded) ? rounded : x);
        expect(tenDigits(x)).toMatch(/^-?\d+(\.\d+)?$/);
      }),
    );
  });

  test("a plain number has no unit behind it", () => {
    expect(text("calibrated_reflectance")).toBe("0.1570796327");
  });
});

describe("any input", () => {
  const numeric = allQuantities().filter((quantity) =>
    quantity.inputs.every((input) => input.kind === "number"),
  );

  test("gives a finite value, null with a reason, or a sentence; never throws, never NaN", () => {
    const word = fc.oneof(
      fc.double().map(String),
      even(-1000, 1000).map(String),
      fc.constantFrom(
        "0",
        "1",
        "-1",
        "1e308",
        "1e-308",
        "5e-324",
        "90",
        "180",
        "360",
        "f/8",
        "10cm",
        "3 ft 2 in",
        "x",
      ),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...numeric),
        fc.array(word, { minLength: 12, maxLength: 12 }),
        (quantity, words) => {
          const args = quantity.inputs.map((input, i) => `${input.name}=${words[i] ?? "1"}`);
          sound(calc(quantity.name, args));
        },
      ),
      { numRuns: 4000 },
    );
  });

  test("any text for any input of any quantity is answered", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...allQuantities()),
        fc.array(fc.string(), { maxLength: 4 }),
        (quantity, words) => {
          sound(calc(quantity.name, words));
          sound(
            calc(
              quantity.name,
              quantity.inputs.map((input, i) => `${input.name}=${words[i] ?? ""}`),
            ),
          );
        },
      ),
      { numRuns: 1000 },
    );
  });

  function sound(answer: CalcAnswer): void {
    if (!answer.ok) {
      expect(answer.problem.length).toBeGreaterThan(10);
      expect(answer.problem).not.toMatch(/undefined|\[object/);
      return;
    }
    if (answer.value === null) expect(answer.reason?.length ?? 0).toBeGreaterThan(5);
    if (typeof answer.value === "number") expect(Number.isFinite(answer.value)).toBe(true);
    expect(answer.text).not.toMatch(/NaN|Infinity|undefined/);
  }

  test("every row of the outside values can be asked for as arguments", () => {
    for (const row of referenceTopics().flatMap(readRows)) {
      if (row.inputs.has("file")) continue;
      const args = [...row.inputs].map(([name, value]) => `${name}=${JSON.stringify(value)}`);
      const answer = calc(row.quantity, args);
      expect(answer.ok, `${row.id} ${answer.ok ? "" : answer.problem}`).toBe(true);
    }
  });
});

test("a unit at the end of a name is dropped, and nothing else", () => {
  const input = (name: string, unit: string): QuantityInput => ({
    name,
    unit,
    kind: "number",
  });
  expect(nameWithoutUnit(input("radius_m", "m"))).toBe("radius");
  expect(nameWithoutUnit(input("luminance_cd_m2", "cd/m2"))).toBe("luminance");
  expect(nameWithoutUnit(input("efficacy_lms_per_J", "lm s/J"))).toBe("efficacy");
  expect(nameWithoutUnit(input("axial_cds", "cd s"))).toBe("axial");
  expect(nameWithoutUnit(input("iso", "ISO"))).toBe("iso");
  expect(nameWithoutUnit(input("m", "m"))).toBe("m");
});

test("near names come nearest first, and none when nothing is near", () => {
  expect(nearNames("radias", ["distance", "radius", "radium"])).toEqual(["radius", "radium"]);
  expect(nearNames("q", ["distance", "radius"])).toEqual([]);
  expect(nearNames("RADIUS", ["radius"])).toEqual(["radius"]);
});
