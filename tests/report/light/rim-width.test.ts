import { describe, expect, test } from "vitest";
import { left, right, tape } from "../../../src/model/make/points.js";
import { rimWidth } from "../../../src/report/light/rim-width.js";
import type { SceneSubject, Source } from "../../../src/scene/types.js";
import { deg, m } from "../../../src/units/make.js";
import { camera, dish, planOf } from "../../helpers/plan.js";

const rim = (bearing: ReturnType<typeof left>, side: "left" | "right", lens = 30, lamp = 20) => {
  const at = { ...camera, distance: tape(m(lens)), height: m(1.5861) } as typeof camera;
  const lit = planOf({
    lights: [dish({ distance: tape(m(lamp)), bearing, height: m(1.5861) }, "rim")],
    camera: at,
  });
  const [subject, source] = [lit.scene.subjects[0] as SceneSubject, lit.scene.sources[0] as Source];
  return { lit, subject, source, ...rimWidth(lit, subject, source, side) };
};

describe("the width of a rim", () => {
  test("by hand from far away: a (1 - sin t), tan t = (a / b) cot(angle from straight behind)", () => {
    // Semi-axes across and front to back as shares of the stature; the lamp 45 deg off straight behind.
    const [a, b] = [0.045 * 1.7, 0.057 * 1.7];
    const t = Math.atan(a / b);
    const found = rim(right(deg(135)), "right");
    expect(found.reason).toBeNull();
    expect(Math.abs((found.width ?? 0) / (a * (1 - Math.sin(t))) - 1)).toBeLessThan(0.02);
    // 36 x 24 mm held upright at 85 mm: the frame is about 24 / 85 of the distance wide.
    expect((found.share ?? 0) / ((found.width ?? 1) / (30 * (24 / 85)))).toBeCloseTo(1, 1);
  });

  test("against rays sent from the lens, near to", () => {
    const { lit, subject, source, width } = rim(right(deg(120)), "right", 2, 1.5);
    const [a, b] = [0.045 * 1.7, 0.057 * 1.7];
    const [, hy, hz] = subject.head;
    const eye = -(lit.scene.camera?.at[1] ?? 0) + hy;
    let lit0 = 0;
    const steps = 20_000;
    for (let i = 0; i < steps; i++) {
      // A ray in the level plane of the head's middle to x in the plane of the head; nearest root on x^2/a^2 + y^2/b^2 = 1.
      const x = ((i + 0.5) / steps) * 0.09;
      const q = (x * x) / (a * a) + (eye * eye) / (b * b);
      const p = (eye * eye) / (b * b);
      const root = p * p - q * (p - 1);
      if (root < 0) continue;
      const s = (p - Math.sqrt(root)) / q;
      const [px, py] = [s * x, -eye + s * eye];
      const [lx, ly, lz] = source.centre;
      expect(Math.abs(lz - hz)).toBeLessThan(1e-3);
      if ((px / (a * a)) * (lx - px) + (py / (b * b)) * (ly - hy - py) > 0) lit0++;
    }
    expect(Math.abs((width ?? 0) - (lit0 * 0.09) / steps)).toBeLessThan(2e-5);
  });

  test("mirrored, and wider as the lamp comes round", () => {
    expect(rim(left(deg(135)), "left").width).toBeCloseTo(rim(right(deg(135)), "right").width ?? 0, 9);
    const wide = rim(right(deg(115)), "right").width ?? 0;
    expect(wide).toBeGreaterThan(rim(right(deg(135)), "right").width ?? 1);
  });

  test("why there is none", () => {
    expect(rim(right(deg(135)), "left").reason).toBe(
      "rim does not reach the left of the head that the lens sees",
    );
    expect(rim(right(deg(40)), "right").reason).toBe(
      "rim reaches past the middle of the head: it makes no rim",
    );
  });
});
