import { describe, expect, test } from "vitest";
import { left, offset, right, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { separation } from "../../../src/report/light/separation.js";
import type { Plan } from "../../../src/report/plan.js";
import type { SceneSubject } from "../../../src/scene/types.js";
import { cm, deg, m, percent } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, planOf, setOf } from "../../helpers/plan.js";

const matt = (share: number) => ({ name: null, reflectance: percent(share), written: `${share} %` });
const wall = (share: number) =>
  block("flat", "back", { size: size(m(6), m(4)), at: offset({ behind: cm(60) }), reflectance: matt(share) });
const back = wall(2);
const person = block("subject", null, {
  height: m(1.7),
  skin: percent(0),
  cloth: percent(0),
  hair: percent(8),
});
/** The lens is 30 m away at the height of the head, so that the outline is seen along parallel lines. */
const far = { ...camera, distance: tape(m(30)), height: m(1.5861) } as typeof camera;
const plan = (way = right(deg(60)), set: ReturnType<typeof setOf> | undefined = setOf(back)): Plan =>
  planOf({
    subjects: [person],
    lights: [dish({ distance: tape(m(20)), bearing: way, height: m(1.5861) })],
    camera: far,
    ...(set === undefined ? {} : { set }),
  });
const head = (lit: Plan) => lit.scene.subjects[0] as SceneSubject;

describe("an outline against what lies behind it", () => {
  test("by hand: reflectance times cosine over the square of the distance on both sides", () => {
    const lit = plan();
    const found = separation(lit, head(lit), "hair", "right", "back");
    // Semi-axes of the head as shares of the stature (the figure's own page); nose to the lens, -y.
    const [a, b, c] = [0.045 * 1.7, 0.057 * 1.7, 0.067 * 1.7];
    const [hx, hy, hz] = head(lit).head;
    const turn = Math.PI / 3;
    const lamp = [20 * Math.sin(turn), head(lit).face[1] - 20 * Math.cos(turn), 1.5861] as const;
    const light = (p: readonly number[], n: readonly number[]): number => {
      const d = lamp.map((x, i) => x - (p[i] as number));
      const way = Math.hypot(...d);
      return d.reduce((sum, x, i) => sum + x * (n[i] as number), 0) / (way * way * way);
    };
    let edge = 0;
    let behind = 0;
    for (const t of [-0.35, 0, 0.35]) {
      const u = [0.95 * Math.cos(t), -Math.sqrt(1 - 0.95 * 0.95), 0.95 * Math.sin(t)] as const;
      const out = [u[0] / a, u[1] / b, u[2] / c];
      const size = Math.hypot(...out);
      edge += light(
        [hx + a * u[0], hy + b * u[1], hz + c * u[2]],
        out.map((x) => x / size),
      );
      behind += light([hx + 1.05 * a * Math.cos(t), 0.6, hz + 1.05 * c * Math.sin(t)], [0, -1, 0]);
    }
    expect(found.reason).toBeNull();
    expect(Math.abs((found.stops ?? 9) - Math.log2((8 * edge) / (2 * behind)))).toBeLessThan(0.02);
  });

  test("twice the reflectance behind is one stop less", () => {
    const grey = plan(right(deg(60)), setOf(wall(4)));
    const one = separation(plan(), head(grey), "hair", "right", null).stops ?? 0;
    const two = separation(grey, head(grey), "hair", "right", null).stops ?? 0;
    expect(Math.abs(one - two - 1)).toBeLessThan(0.02);
  });

  test("the mirror image has its sides changed over", () => {
    const [one, two] = [plan(right(deg(60))), plan(left(deg(60)))];
    const a = separation(one, head(one), "hair", "right", null).stops ?? 0;
    const b = separation(two, head(two), "hair", "left", null).stops ?? 1;
    expect(a).toBeCloseTo(b, 2);
  });

  test("the side away from the lamp lives on what the wall throws back: darker by stops", () => {
    const lit = plan();
    const lamp = separation(lit, head(lit), "hair", "right", "back").stops ?? 0;
    expect(separation(lit, head(lit), "hair", "left", "back").stops ?? 0).toBeLessThan(lamp - 4);
  });

  test("why there is none", () => {
    const open = plan(right(deg(60)), setOf());
    expect(separation(open, head(open), "hair", "right", null).reason).toBe(
      "behind the right of the head the lens sees nothing but the dark",
    );
    const lit = plan();
    expect(separation(lit, head(lit), "hair", "right", "floor").reason).toBe(
      "behind the right of the head the lens sees back, not floor",
    );
    const black = separation(lit, head(lit), "face", "right", "back");
    expect([black.stops, black.reason]).toEqual([
      null,
      "the right of the head gets no light, straight or bounced, or reflects none",
    ]);
    const blind = planOf({ camera: null });
    expect(separation(blind, head(blind), "hair", "left", null).reason).toContain("no camera");
  });
});
