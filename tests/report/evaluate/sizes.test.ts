import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import type { Expr } from "../../../src/model/values.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { intervalOf } from "../../../src/report/evaluate/spread.js";
import type { Plan } from "../../../src/report/plan.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";

/** The numbers of the set-up below, each with how far it may be off in its own unit. */
const middle = {
  stature: [1.7, 0.03],
  wide: [3.3, 0.12],
  deep: [4.6, 0.12],
  high: [2.5, 0.12],
  mark: [1.3, 0.1],
  width: [1.1, 0.06],
  tall: [2.1, 0.06],
  behind: [0.9, 0.1],
  opening: [115, 8],
  across: [70, 8],
  upright: [95, 8],
  right: [55, 6],
  ball: [44, 4],
  lens: [60, 2],
  away: [3, 0.05],
  skin: [35, 8],
  loses: [0.5, 0.15],
  at: [2, 0.06],
} as const;
type Name = keyof typeof middle;
const names = Object.keys(middle) as Name[];

/** The set-up by its numbers; `off` says what stands behind one. All else is as good as sure. */
function textOf(n: Readonly<Record<Name, number>>, off: (name: Name) => string): string {
  return `halfshade 1
recipe "Sizes"
tolerances {
  tape: 0.001 mm, height: 0.001 mm, angle: 0.0001 deg, stature: 0.001 mm, size: 0.00001, dial: 0.00001 stop
  board: 0.001 mm, hinge: 0.0001 deg, lens: 0.000001, reflectance: 0.000001, assumed_reflectance: 0.000001
}
room {
  size: ${n.wide} x ${n.deep} x ${n.high} m${off("high")}
  mark: from(right: ${n.mark} m${off("mark")}, back: 1.7 m)
  ceiling { reflectance: 70 % }
  walls { reflectance: 50 % }
  floor { reflectance: 25 % }
}
subject { height: ${n.stature} m${off("stature")}, skin: ${n.skin} %${off("skin")}, cloth: 25 % }
set {
  flat back { size: ${n.width} x ${n.tall} m${off("width")}, at: offset(behind: ${n.behind} m${off("behind")}) }
  flat wing { size: 0.6 x 2.2 m, hinge: left_edge(back), opening: ${n.opening} deg${off("opening")} }
  card white {
    size: ${n.across} x ${n.upright} cm${off("across")}
    at: offset(right: ${n.right} cm${off("right")}, ahead: 35 cm, up: 1.5 m)
    faces: face
    front: 85 %
  }
  sphere ball {
    diameter: ${n.ball} cm${off("ball")}
    at: offset(left: 75 cm, behind: 45 cm, up: 80 cm)
    reflectance: 30 %
  }
}
camera {
  held: level, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200
  focal_length: ${n.lens} mm${off("lens")}
  distance: ${n.away} m${off("away")}
  height: 1.3 m
}
light key {
  role: key
  shape: disc(20 cm)
  calibration: metered(f/11 +- 0.00001 stop, at: ${n.at} m${off("at")}, ISO 100)
  loses: ${n.loses} stop${off("loses")}
  distance: 1.8 m
  bearing: left(40 deg)
  height: 1.9 m
}
expect exposure(shaded_cheek) > 0 lx s
expect stops(face.disc(towards: key), shaded_cheek) > 0 stop
expect exposure(back) > 0 lx s
expect coverage > 0
expect subject_share > 0
`;
}

const units: Partial<Record<Name, string>> = {
  opening: "deg",
  across: "cm",
  right: "cm",
  ball: "cm",
  lens: "mm",
  skin: "%",
  loses: "stop",
};
const written = (name: Name): string => ` +- ${middle[name][1]} ${units[name] ?? "m"}`;
const asPlanned = Object.fromEntries(names.map((name) => [name, middle[name][0]])) as Record<Name, number>;

function planOf(text: string): Plan {
  const { recipe, diagnostics } = compile({ name: "sizes.light", text });
  if (recipe === null || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics));
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

/** Numbers from 0 to 1 that look like chance: a linear congruence (Numerical Recipes, from memory). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
}

describe("tolerances written behind sizes and places of room, set, figure and lens", () => {
  const plan = planOf(textOf(asPlanned, written));
  const inputs = measuredInputs(plan);
  const claims = plan.recipe.expectations.map(({ claims: [claim] }) => claim?.value as Expr);
  const amount = (at: Plan, value: Expr): number => {
    const found = evaluate({ plan: at, alarms: null }, value);
    return found.type === "exposure" ? Math.log2(found.value as number) : (found.value as number);
  };

  test("cover about 95 of 100 set-ups that are drawn and worked out whole, and half of each about 68", () => {
    const next = chance(5);
    const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const DRAWS = 150;
    const draws = Array.from({ length: DRAWS }, () => {
      const drawn = names.map((name) => [name, middle[name][0] + (middle[name][1] / 1.96) * normal()]);
      return planOf(textOf(Object.fromEntries(drawn) as Record<Name, number>, () => ""));
    });
    for (const value of claims) {
      const before = amount(plan, value);
      const limit = intervalOf({ plan, alarms: null }, inputs, ({ plan: there }) => amount(there, value));
      const shares = draws.map((there) => {
        const by = amount(there, value) - before;
        return Math.abs(by) / (by > 0 ? (limit?.above ?? 0) : (limit?.below ?? 0));
      });
      const within = (most: number): number => shares.filter((share) => share <= most).length / DRAWS;
      const said = `${value.kind === "result" ? value.name : ""}: ${within(1)} ${within(0.5)}`;
      // Of 150 free draws 95 % is known to 1.8, 68 % to 3.8 in a standard error.
      expect(within(1), said).toBeGreaterThan(0.88);
      expect(within(0.5), said).toBeGreaterThan(0.56);
      expect(within(0.5), said).toBeLessThan(0.8);
    }
  });
});

describe("which numbers are inputs", () => {
  const text = `halfshade 1
recipe "Inputs"
room {
  size: 5 x 7 x 2.8 m
  mark: from(left: 2 m, back: 3 m)
  opening pane { wall: left, size: 1 x 2 m, at: offset(left: 2 m, up: 50 cm) }
}
subject { height: 1.7 m, heels: 5 cm, at: offset(left: 10 cm), skin: 35 %, point ear { up: 1.6 m, right: 8 cm } }
set {
  flat back { size: 1.2 x 2.2 m, at: offset(behind: 1.5 m), thickness: 2 cm }
  flat wing { size: 0.6 x 2.2 m, hinge: left_edge(back), opening: 115 deg }
  paper roll { width: 1.35 m, run: 2 m, hangs: 2.4 m, curve: 20 cm, at: offset(right: 1 m) }
  scrim silk { size: 1 x 1.2 m, at: offset(left: 1.5 m, up: 1.5 m), loses: 1 stop }
  box crate { size: 30 x 40 x 50 cm, at: offset(right: 1 m, ahead: 50 cm) }
  sphere ball { diameter: 30 cm, at: offset(right: 1 m, up: 1 m) }
}
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, balance: 5600 K, distance: 3.2 m, height: 1.3 m }
light key {
  role: key, shape: disc(20 cm), calibration: metered(f/11, at: 2 m, ISO 100), power: full - 1 stop, distance: 2 m
  bearing: left(35 deg), height: 2.1 m, feather: left(5 deg), roll: 10 deg, loses: 1/2 stop, colour: 5500 K
  gel: warm(60 mired, loses: 1/3 stop), stand { boom: 1 m }
}
light side { shape: rectangle(60 x 90 cm), output: 900 lm s, power: 1/2, position: (1.5 m, -1 m, 2 m), aim: offset(up: 1 m) }
meter { flat_constant: 250 }
`;
  const rowsOf = (changed: string) => measuredInputs(planOf(changed));
  const sizeOf = (before: string, after: string, what: string): number => {
    expect(text).toContain(before);
    return rowsOf(text.replace(before, after)).find((row) => row.what === what)?.size ?? Number.NaN;
  };

  test.each([
    ["2.8 m\n", "2.8 m +- 4 cm\n", "room depth", 0.04],
    ["left: 2 m, back", "left: 2 m +- 7 cm, back", "room left", 0.07],
    ["1 x 2 m", "1 x 2 m +- 3 cm", "pane width", 0.03],
    ["up: 50 cm", "up: 50 cm +- 4 cm", "pane up", 0.04],
    ["heels: 5 cm", "heels: 5 cm +- 1 cm", "the subject heels", 0.01],
    ["skin: 35 %", "skin: 35 % +- 10 %", "the subject skin", 0.1],
    ["right: 8 cm", "right: 8 cm +- 1 cm", "ear right", 0.01],
    ["1.2 x 2.2 m", "1.2 x 2.2 m +- 1 %", "back height", 0.022],
    ["thickness: 2 cm", "thickness: 2 cm +- 5 mm", "back thickness", 0.005],
    ["115 deg", "115 deg +- 3 deg", "wing opening", 3],
    ["width: 1.35 m", "width: 1.35 m +- 2 cm", "roll width", 0.02],
    ["hangs: 2.4 m", "hangs: 2.4 m +- 6 cm", "roll hangs", 0.06],
    ["curve: 20 cm", "curve: 20 cm +- 5 cm", "roll curve", 0.05],
    ["1 x 1.2 m", "1 x 1.2 m +- 2 cm", "silk width", 0.02],
    ["loses: 1 stop", "loses: 1 stop +- 0.3 stop", "silk loses", 0.3],
    ["30 x 40 x 50 cm", "30 x 40 x 50 cm +- 10 %", "crate depth", 0.04],
    ["diameter: 30 cm", "diameter: 30 cm +- 2 cm", "ball diameter", 0.02],
    ["85 mm", "85 mm +- 5 %", "camera focal length", 0.00425],
    ["f/8", "f/8 +- 0.2 stop", "camera aperture", 0.2],
    ["ISO 200", "ISO 200 +- 0.1 stop", "camera sensitivity", 0.1],
    ["5600 K", "5600 K +- 12 mired", "camera balance", 12],
    ["at: 2 m, ISO", "at: 2 m +- 6 cm, ISO", "key calibration at", 0.06],
    ["f/11,", "f/11 +- 0.1 stop,", "key output", 0.1],
    ["900 lm s", "900 lm s +- 10 %", "side output", Math.log2(1.1)],
    ["full - 1 stop", "full - 1 stop +- 0.2 stop", "key dial", 0.2],
    ["power: 1/2", "power: 1/2 +- 5 %", "side dial", Math.log2(1.05)],
    ["power: 1/2", "power: 1/2 +- 1/3 stop", "side dial", 1 / 3],
    ["900 lm s", "900 lm s +- 0.4 stop", "side output", 0.4],
    ["f/11,", "f/11 +- 0.7 stop,", "key output", 0.7],
    ["left(5 deg)", "left(5 deg +- 4 deg)", "key feather", 4],
    ["roll: 10 deg", "roll: 10 deg +- 6 deg", "key roll", 6],
    ["loses: 1/2 stop", "loses: 1/2 stop +- 0.1 stop", "key loses", 0.1],
    ["5500 K", "5500 K +- 30 mired", "key colour", 30],
    ["60 mired,", "60 mired +- 8 mired,", "key gel shift", 8],
    ["loses: 1/3 stop", "loses: 1/3 stop +- 0.1 stop", "key gel loses", 0.1],
    ["boom: 1 m", "boom: 1 m +- 10 cm", "key stand boom", 0.1],
    ["60 x 90 cm", "60 x 90 cm +- 2 cm", "size of side", 0.02],
    ["-1 m, 2 m)", "-1 m, 2 m +- 9 cm)", "side z", 0.09],
    ["aim: offset(up: 1 m)", "aim: offset(up: 1 m +- 5 cm)", "side aim up", 0.05],
    ["flat_constant: 250", "flat_constant: 250 +- 10", "meter flat constant", 10],
  ])("%s as %s is %s by %d", (before, after, what, size) => {
    expect(sizeOf(before, after, what)).toBeCloseTo(size, 12);
  });

  test("flats, their hinges and the lens are off by a standing tolerance, other furniture is as it is written", () => {
    const by = (what: string): number => rowsOf(text).find((row) => row.what === what)?.size ?? Number.NaN;
    expect(by("back width")).toBeCloseTo(0.01, 12);
    expect(by("wing height")).toBeCloseTo(0.01, 12);
    expect(by("wing opening")).toBeCloseTo(5, 12);
    expect(by("camera focal length")).toBeCloseTo(0.03 * 0.085, 12);
    expect(by("roll hangs")).toBeCloseTo(0.03, 12);
    for (const what of ["silk width", "crate depth", "ball diameter", "roll width", "back thickness"]) {
      expect(by(what)).toBeNaN();
    }
  });

  test("the room's sizes are off by a tape where the picture shows it, it has a window or a lamp shines into it", () => {
    const rooms = (changed: string): readonly number[] =>
      rowsOf(changed).flatMap(({ what, size }) => (what.startsWith("room ") ? [size] : []));
    const window = / {2}opening pane .*\n/;
    expect(rooms(text)).toEqual([0.02, 0.02, 0.03, 0.02, 0.02]);
    expect(rooms(text.replace(window, ""))).toEqual([]);
    expect(rooms(text.replace(window, "  floor { belongs_to: set }\n"))).toHaveLength(5);
    expect(rooms(text.replace(window, "").replace("role: key,", "role: key, into: ceiling,"))).toHaveLength(
      5,
    );
  });

  test("`+- 0` makes a number sure", () => {
    const sure = text.replace("85 mm", "85 mm +- 0 mm").replace("1.2 x 2.2 m", "1.2 x 2.2 m +- 0 %");
    const names = rowsOf(sure).map(({ what }) => what);
    expect(names).toContain("wing width");
    expect(names).not.toContain("back width");
    expect(names).not.toContain("camera focal length");
  });

  test.each([
    ["f/8", "f/8 +- 0.2 stop", "camera aperture", "stops_from_aperture(face.disc(towards: key))", 0.2],
    [
      "ISO 200",
      "ISO 200 +- 0.3 stop",
      "camera sensitivity",
      "stops_from_aperture(face.disc(towards: key))",
      0.3,
    ],
    [
      "loses: 1/2 stop",
      "loses: 1/2 stop +- 0.1 stop",
      "key loses",
      "stops_from_aperture(face.disc(towards: key, only: key))",
      0.1,
    ],
    [
      "900 lm s",
      "900 lm s +- 0.4 stop",
      "side output",
      "stops_from_aperture(face.disc(towards: side, only: side))",
      0.4,
    ],
    [
      "power: 1/2",
      "power: 1/2 +- 1/3 stop",
      "side dial",
      "stops_from_aperture(face.disc(towards: side, only: side))",
      1 / 3,
    ],
    // Twice as many stops as the number, whose square the light goes with.
    [
      "metered(f/11, at: 2 m, ISO 100)",
      "guide_number(32 m +- 10 %)",
      "key output",
      "stops_from_aperture(face.disc(towards: key, only: key))",
      2 * Math.log2(1.1),
    ],
    // The light goes with d^2 + r^2: at 1.94 m 3.7736 against 4.01, which is the greater of the two sides.
    [
      "at: 2 m, ISO",
      "at: 2 m +- 6 cm, ISO",
      "key calibration at",
      "stops_from_aperture(face.disc(towards: key, only: key))",
      Math.log2(4.01 / 3.7736),
    ],
    ["5600 K", "5600 K +- 12 mired", "camera balance", "warmth(face.disc(towards: key))", 12],
  ])("%s as %s: %s moves %s%s by as much", (before, after, what, result, by) => {
    const wanted = result.startsWith("warmth") ? `${result} < 900 mired` : `${result} > -90 stop`;
    const plan = planOf(`${text.replace(before, after)}expect ${wanted}\n`);
    const value = plan.recipe.expectations[0]?.claims[0]?.value as Expr;
    const input = measuredInputs(plan).filter((row) => row.what === what);
    expect(input).toHaveLength(1);
    const found = intervalOf({ plan, alarms: null }, input, (there) => evaluate(there, value).value);
    expect(Math.max(found?.above ?? 0, found?.below ?? 0)).toBeCloseTo(by, 3);
  });
});
