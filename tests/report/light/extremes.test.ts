import { describe, expect, test } from "vitest";
import { offset, tape } from "../../../src/model/make/points.js";
import type { Recipe } from "../../../src/model/types.js";
import { backgroundPoints } from "../../../src/report/geometry/background-points.js";
import { extremesAmong } from "../../../src/report/light/extremes.js";
import { readingAt } from "../../../src/report/light/reading.js";
import type { Plan } from "../../../src/report/plan.js";
import type { Meter } from "../../../src/transport/meter.js";
import { cm, m } from "../../../src/units/make.js";
import { dish, flat, planOf, room, setOf } from "../../helpers/plan.js";

const lit: Partial<Recipe> = {
  room,
  set: setOf({ ...flat, at: offset({ behind: m(1.2) }) }),
  lights: [dish(), dish({ role: "fill", distance: tape(m(3)) }, "fill")],
  camera: null,
};

function metersOf(plan: Plan): readonly Meter[] {
  const back = plan.scene.stations.find(({ name }) => name === "back");
  if (back === undefined) throw new Error("no background");
  return backgroundPoints(plan.scene, back).map(({ meter }) => meter);
}

/** The plan, with a count of the readings in full that were asked for. */
function counted(plan: Plan): { readonly plan: Plan; readonly reads: () => number } {
  const asked = new Set<Meter>();
  return {
    plan: {
      ...plan,
      light: {
        ...plan.light,
        reach: (source, meter) => {
          asked.add(meter);
          return plan.light.reach(source, meter);
        },
      },
    },
    reads: () => asked.size,
  };
}

describe("the brightest and the darkest of many meters", () => {
  const plan = planOf(lit);
  const meters = metersOf(plan);
  const all = meters.map((meter) => readingAt(plan, meter).exposure);
  const [most, least] = [Math.max(...all), Math.min(...all)];

  test("are those that reading every one of them finds, and few are read", () => {
    const { plan: watched, reads } = counted(plan);
    const found = extremesAmong(watched, meters);
    expect(found?.bright.index).toBe(all.indexOf(most));
    expect(found?.dark.index).toBe(all.indexOf(least));
    // A glance of half a per cent of the reading may stand for a light that does little there.
    expect(Math.abs((found?.bright.reading.exposure ?? 0) / most - 1)).toBeLessThan(0.01);
    expect(Math.abs((found?.dark.reading.exposure ?? 0) / least - 1)).toBeLessThan(0.01);
    expect(reads()).toBeGreaterThan(0);
    expect(reads()).toBeLessThan(meters.length / 2);
  });

  test("are not looked for where they surely differ by no more than is allowed", () => {
    const spread = Math.log2(most / least);
    expect(extremesAmong(plan, meters, spread - 0.01)).not.toBeNull();
    const { plan: watched, reads } = counted(plan);
    expect(extremesAmong(watched, meters, spread + 0.5)).toBeNull();
    expect(reads()).toBe(0);
  });

  test("are found though a glance is wrong by as much as it says", () => {
    // Every second meter is seen too bright, the others too dark, by all that the glance allows itself.
    const skewed: Plan = {
      ...plan,
      light: {
        ...plan.light,
        glance: (source, meter) => {
          const { direct, bounced } = plan.light.reach(source, meter);
          const error = 0.1 * (direct + bounced);
          const sign = meters.indexOf(meter) % 2 === 0 ? 1 : -1;
          return { direct, bounced: bounced + sign * error, error };
        },
      },
    };
    const found = extremesAmong(skewed, meters);
    expect([found?.bright.index, found?.dark.index]).toEqual([all.indexOf(most), all.indexOf(least)]);
  });

  test("are none where nothing gets light", () => {
    const dark = planOf({
      ...lit,
      lights: [dish({ distance: tape(cm(240)), power: { kind: "off" } } as never)],
    });
    expect(extremesAmong(dark, meters)).toBeNull();
  });
});
