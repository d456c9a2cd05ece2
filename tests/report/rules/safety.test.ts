import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { fractionOfFull } from "../../../src/model/make/lamps.js";
import { at } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import { nearestOn } from "../../../src/report/geometry/near.js";
import { circuitLoad } from "../../../src/report/rules/circuit-load.rule.js";
import { flashRate } from "../../../src/report/rules/flash-rate.rule.js";
import { heatNear } from "../../../src/report/rules/heat-near.rule.js";
import { looseFlat } from "../../../src/report/rules/loose-flat.rule.js";
import { wayOut } from "../../../src/report/rules/way-out.rule.js";
import type { ScenePolygon } from "../../../src/scene/types.js";
import { m, number, s } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, finding, findings, numberAfter, setOf } from "../../helpers/plan.js";

const watts = (value: number) => ({ value, unit: "W", written: `${value} W` }) as const;
const energy = (value: number) => ({ value, unit: "Ws", written: `${value} Ws` }) as const;
const burst = (interval: number) => ({ camera: block("camera", null, { ...camera, interval: s(interval) }) });

describe("flash-rate", () => {
  test("three flashes in a second are borne, more are not", () => {
    expect(findings(flashRate, burst(1 / 3))).toHaveLength(0);
    const { message, remedy, severity } = finding(flashRate, burst(0.333));
    expect(severity).toBe("stop");
    expect(message).toContain("key flashes 3 times");
    const slower = numberAfter(remedy, "Leave", "s");
    expect(findings(flashRate, burst(slower))).toHaveLength(0);
    expect(findings(flashRate)).toHaveLength(0);
  });

  test("what burns does not flash", () => {
    expect(findings(flashRate, { ...burst(0.1), lights: [dish({ kind: "steady" } as never)] })).toHaveLength(
      0,
    );
  });
});

describe("circuit-load", () => {
  /** 390 Ws in 0.6 s through a charger that wastes 35 %: 390 / 0.6 / 0.65 = 1000 W. */
  const flash = (name: string, more: object = {}) =>
    dish({ full_power: energy(390), recycles: s(0.6), ...more } as never, name);
  const fed = (circuit: number | null, ...lights: ReturnType<typeof dish>[]) => ({
    lights,
    room: block("room", null, {
      size: volume(m(5), m(7), m(2.8)),
      ...(circuit === null ? {} : { circuit: watts(circuit) }),
    } as never),
  });

  test("80 % of the circuit is borne, more is not", () => {
    expect(findings(circuitLoad, fed(1250, flash("key")))).toHaveLength(0);
    const { message, severity } = finding(circuitLoad, fed(1249, flash("key")));
    expect(severity).toBe("stop");
    expect(message).toContain("1000 W");
  });

  test("the setting of the dial changes nothing of a head that is fired as fast as it fills", () => {
    const low = flash("key", { power: fractionOfFull({ ...number(0.25), written: "1/4" }) });
    expect(finding(circuitLoad, fed(1000, low)).message).toContain("1000 W");
  });

  test("a slow burst takes less: half of 390 Ws every 3 s", () => {
    const slow = { ...fed(100, flash("key")), ...burst(3) };
    expect(finding(circuitLoad, slow).message).toContain("take 100 W");
  });

  test("modelling lamps and burning lamps count; a hot one that is not told as 150 W", () => {
    const lamps = [
      flash("key", { draws: watts(250) }),
      flash("rim", { modelling_lamp: "hot" }),
      dish({ kind: "steady", draws: watts(600) } as never, "fill"),
    ];
    // The steady lamp stands at half.
    expect(finding(circuitLoad, fed(1000, ...lamps)).message).toContain(`take ${1250 + 1150 + 300} W`);
  });

  test("what is fed from elsewhere is enough, and no more is", () => {
    const lamps = [flash("key"), flash("rim", { draws: watts(100) }), flash("hair", { draws: watts(50) })];
    const { remedy } = finding(circuitLoad, fed(3000, ...lamps));
    expect(remedy).toContain("Feed rim from");
    expect(numberAfter(remedy, "circuit:", "W")).toBe(2050);
    expect(findings(circuitLoad, fed(3000, ...lamps.filter(({ name }) => name !== "rim")))).toHaveLength(0);
  });

  test("an unknown circuit is asked about only where much is taken", () => {
    expect(findings(circuitLoad, fed(null, flash("key"), flash("rim")))).toHaveLength(0);
    const more = [flash("key"), flash("rim"), dish({ draws: watts(1) } as never, "fill")];
    const { severity, message } = finding(circuitLoad, fed(null, ...more));
    expect(severity).toBe("note");
    expect(message).toContain("What fill takes is not known");
  });
});

describe("heat-near", () => {
  /** A dish of 20 cm that looks along +y, so far before a cloth across the way. */
  const near = (gap: number, more: object = {}) => ({
    lights: [
      dish({
        modelling_lamp: "hot",
        distance: undefined,
        bearing: undefined,
        height: undefined,
        position: at(m(1.5), m(-gap), m(1.5)),
        aim: at(m(1.5), m(5), m(1.5)),
        ...more,
      } as never),
    ],
    set: setOf(block("scrim", "silk", { size: size(m(1), m(2)), at: at(m(1.5), m(0), m(1.5)) } as never)),
  });

  test("half a metre is enough, less is not", () => {
    expect(findings(heatNear, near(0.501))).toHaveLength(0);
    const { severity, message, about } = finding(heatNear, near(0.3));
    expect(severity).toBe("stop");
    expect(message).toContain("30 cm from silk");
    expect(about).toBe("key");
    expect(findings(heatNear, near(0.3, { modelling_lamp: "cool" }))).toHaveLength(0);
  });

  test("so far away as it says nothing is too near", () => {
    const by = numberAfter(finding(heatNear, near(0.32)).remedy, "Move it", "cm") / 100;
    expect(by).toBeCloseTo(0.18, 9);
    expect(findings(heatNear, near(0.32 + by))).toHaveLength(0);
  });

  test("a gel on a hot lamp is to be looked at", () => {
    const gel = { items: [{ tint: "warm", shift: number(60), loses: number(0.3) }], written: "warm" };
    expect(finding(heatNear, near(2, { gel })).severity).toBe("check");
  });

  test("the nearest place of a square: over it, beside an edge, beyond a corner", () => {
    const square = {
      vertices: [
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [0, 1, 0],
      ],
      normal: [0, 0, 1],
    } as unknown as ScenePolygon;
    const cases: readonly (readonly [Vec3, Vec3])[] = [
      [
        [0.3, 0.4, 2],
        [0.3, 0.4, 0],
      ],
      [
        [3, 0.4, -1],
        [1, 0.4, 0],
      ],
      [
        [-2, -3, 1],
        [0, 0, 0],
      ],
    ];
    for (const [from, to] of cases) expect(nearestOn(square, from)).toEqual(to);
  });
});

describe("loose-flat", () => {
  const leaf = (height: number, secured?: string) => ({
    set: setOf(
      block("flat", "back", {
        size: size(m(1.2), m(height)),
        at: at(m(0), m(0.6), m(0)),
        ...(secured === undefined ? {} : { secured }),
      } as never),
    ),
  });

  test("up to 1.8 m nothing is asked; above it a loose one is a stop, an unsaid one a note", () => {
    expect(findings(looseFlat, leaf(1.8, "no"))).toHaveLength(0);
    expect(finding(looseFlat, leaf(1.81, "no")).severity).toBe("stop");
    expect(finding(looseFlat, leaf(1.81)).severity).toBe("note");
    expect(findings(looseFlat, leaf(1.8))).toHaveLength(0);
    expect(findings(looseFlat, leaf(2.4, "weighed_down"))).toHaveLength(0);
    expect(findings(looseFlat, leaf(2.4, "fixed"))).toHaveLength(0);
  });
});

describe("way-out", () => {
  /** A room of 5 x 7 m; the door is in the front wall, in its middle. */
  const hall = (door: object = {}) =>
    block("room", null, {
      size: volume(m(5), m(7), m(2.8)),
      parts: [
        block("opening", "door", {
          wall: "front",
          size: size(m(0.9), m(2.1)),
          at: at(m(0), m(-3.5), m(0)),
          ...door,
        } as never),
      ],
    } as never);
  const wall = (name: string, x: number, y: number, width: number) =>
    block("flat", name, { size: size(m(width), m(2)), at: at(m(x), m(y), m(0)) } as never);

  test("a wall of flats with a gap of 1 m lets through, one of 80 cm does not", () => {
    const flats = (gap: number) => ({
      room: hall(),
      set: setOf(
        wall("one", -1.25 - gap / 4, -2, 2.5 - gap / 2),
        wall("two", 1.25 + gap / 4, -2, 2.5 - gap / 2),
      ),
    });
    expect(findings(wayOut, flats(1))).toHaveLength(0);
    const { severity, remedy, about } = finding(wayOut, flats(0.8));
    expect(severity).toBe("stop");
    expect(about).toBe("door");
    expect(remedy).toContain("Move one and two, either of them");
  });

  test("what stands right before the door blocks it, and is named", () => {
    const { remedy } = finding(wayOut, {
      room: hall(),
      set: setOf(wall("one", 0, -3.2, 1.6), wall("two", 2, 1, 0.5)),
    });
    expect(remedy).toBe("Move one: without it the way is free.");
    expect(findings(wayOut, { room: hall(), set: setOf(wall("one", 0, -2.3, 1.6)) })).toHaveLength(0);
  });

  test("a window is no door, and without a door nothing is said", () => {
    const blocked = setOf(wall("one", 0, -2, 5));
    expect(finding(wayOut, { room: hall(), set: blocked }).severity).toBe("stop");
    expect(findings(wayOut, { room: hall({ at: at(m(0), m(-3.5), m(0.4)) }), set: blocked })).toHaveLength(0);
    expect(findings(wayOut, { room: hall({ size: size(m(0.5), m(2)) }), set: blocked })).toHaveLength(0);
  });

  test("a door beside a corner can be reached in an empty room", () => {
    expect(findings(wayOut, { room: hall({ at: at(m(-2.05), m(-3.5), m(0)) }) })).toHaveLength(0);
  });

  test("a stand takes the room of its feet", () => {
    const stood = (feet: number) => ({
      room: hall(),
      lights: [
        dish({
          parts: [block("stand", null, { feet: m(feet) } as never)],
          distance: undefined,
          bearing: undefined,
          height: undefined,
          position: at(m(0), m(-2), m(2)),
        } as never),
      ],
      set: setOf(wall("one", -1.8, -2, 1.4), wall("two", 1.8, -2, 1.4)),
    });
    // The gap is 2.2 m wide: 90 cm stay free beside feet of 20 cm, not beside feet of 50 cm.
    expect(findings(wayOut, stood(0.15))).toHaveLength(0);
    expect(finding(wayOut, stood(0.5)).severity).toBe("stop");
  });
});
