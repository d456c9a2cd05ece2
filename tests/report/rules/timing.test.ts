import { describe, expect, test } from "vitest";
import { fractionOfFull, output } from "../../../src/model/make/lamps.js";
import { pixels } from "../../../src/model/make/sizes.js";
import { halfDuration, tailStops } from "../../../src/report/frame/timing.js";
import { burstTooFast } from "../../../src/report/rules/burst-too-fast.rule.js";
import { motionBlur } from "../../../src/report/rules/motion-blur.rule.js";
import { tailCut } from "../../../src/report/rules/tail-cut.rule.js";
import { lm, m, number, s, shutterOneOver } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, finding, findings, numberAfter } from "../../helpers/plan.js";

describe("the tail of a flash", () => {
  // An exponential decay: above a tenth for ln 10 time constants, above a half for ln 2 of them.
  test("t0.1 is 3.32 times t0.5", () => {
    expect(0.01 / halfDuration(0.01)).toBeCloseTo(Math.LN10 / Math.LN2, 12);
  });

  test("a frame that is open for t0.1 misses a tenth of the light, for twice that a hundredth", () => {
    expect(tailStops(0.003, 0.003)).toBeCloseTo(-Math.log2(0.9), 12);
    expect(tailStops(0.003, 0.006)).toBeCloseTo(-Math.log2(0.99), 12);
    expect(tailStops(0.003, 0)).toBeNull();
  });
});

describe("tail-cut", () => {
  const long = (lasts: number, shutter = 160, sync = 200) => ({
    camera: block("camera", null, {
      ...camera,
      shutter: shutterOneOver(shutter),
      sync: shutterOneOver(sync),
    }),
    lights: [dish({ lasts: s(lasts) } as never)],
  });
  // Exact series times: 2^-7.333 s and 2^-7.667 s. Open: shutter - 0.75 sync - 0.5 ms.
  const open = 1 / Math.exp((22 / 3) * Math.LN2) - 0.75 / Math.exp((23 / 3) * Math.LN2) - 0.0005;

  test("speaks when the flash lasts longer than the frame is open", () => {
    expect(findings(tailCut, long(open * 1.01))).toHaveLength(1);
    expect(findings(tailCut, long(open * 0.99))).toHaveLength(0);
    expect(finding(tailCut, long(open * 1.0001)).message).toContain("cut by 0.2 stop");
  });

  test("is silent where lasts or sync are not known, and where the band is another warning's", () => {
    expect(findings(tailCut, { lights: [dish({ lasts: s(1) } as never)] })).toHaveLength(0);
    expect(findings(tailCut, { camera: long(0.1).camera })).toHaveLength(0);
    expect(findings(tailCut, long(0.01, 250, 200))).toHaveLength(0);
  });

  test("at the shutter it names it is silent, at the next faster one not", () => {
    const n = Number(/Set 1\/(\d+) s/.exec(finding(tailCut, long(1 / 300, 200)).remedy)?.[1]);
    expect(n).toBe(125);
    expect(findings(tailCut, long(1 / 300, n))).toHaveLength(0);
    expect(findings(tailCut, long(1 / 300, 160))).toHaveLength(1);
  });
});

describe("motion-blur", () => {
  const moving = (moves: string, lasts: number | null, more: object = {}) => ({
    subjects: [block("subject", null, { height: m(1.7), moves } as never)],
    camera: block("camera", null, { ...camera, pixels: pixels(6000, 4000), ...more }),
    lights: [dish((lasts === null ? {} : { lasts: s(lasts) }) as never)],
  });
  // The face is 3.4031 m away; 85 mm; magnification v / s with v = f s / (s - f); a pixel is 36 mm / 6000 = 6 um.
  const scale = 0.085 / (3.4031 - 0.085);
  const limit = (2 * 6e-6) / (4 * scale);

  test("speaks when a jump of 4 m/s is longer than 2 pixels", () => {
    expect(findings(motionBlur, moving("jumps", limit * 1.01))).toHaveLength(1);
    expect(findings(motionBlur, moving("jumps", limit * 0.99))).toHaveLength(0);
    expect(findings(motionBlur, moving("still", 1))).toHaveLength(0);
    expect(findings(motionBlur, moving("jumps", null))).toHaveLength(0);
  });

  test("without pixels the circle of confusion holds", () => {
    const coarse = (0.04326661531 / 1500 / (4 * scale)) * 1.01;
    const bare = { pixels: undefined };
    expect(findings(motionBlur, moving("jumps", coarse, bare))).toHaveLength(1);
    expect(findings(motionBlur, moving("jumps", coarse * 0.98, bare))).toHaveLength(0);
  });

  test("steady light acts for the shutter time, a flash no longer than that", () => {
    const steady = {
      ...moving("turns", null),
      lights: [
        dish({ calibration: undefined, output: output(lm(9000)), kind: "steady", power: undefined } as never),
      ],
    };
    // 0.5 m/s over 1/128 s: 3.9 mm on the subject, 0.1 mm on the sensor.
    expect(finding(motionBlur, steady).message).toContain("3.9 mm");
    expect(finding(motionBlur, moving("throws", 1)).message).toContain("1/125 s");
  });

  test("the duration it names is short enough, and the next longer one is not", () => {
    const { remedy } = finding(motionBlur, moving("throws", 1 / 800));
    const n = Number(/1\/(\d+) s or less/.exec(remedy)?.[1]);
    expect(findings(motionBlur, moving("throws", 1 / n))).toHaveLength(0);
    expect(findings(motionBlur, moving("throws", 1 / (n - 1)))).toHaveLength(1);
  });
});

describe("burst-too-fast", () => {
  const burst = (interval: number, power = 1) => ({
    camera: block("camera", null, { ...camera, interval: s(interval) }),
    lights: [
      dish({
        recycles: s(1.2),
        power: fractionOfFull({ ...number(power), written: String(power) }),
      } as never),
    ],
  });

  test("speaks when the next flash is more than 0.05 stop under, a half in half the time", () => {
    expect(findings(burstTooFast, burst(1.2))).toHaveLength(0);
    expect(findings(burstTooFast, burst(1.2 / Math.exp(0.04 * Math.LN2)))).toHaveLength(0);
    expect(findings(burstTooFast, burst(1.2 / Math.exp(0.06 * Math.LN2)))).toHaveLength(1);
    expect(finding(burstTooFast, burst(0.6)).message).toContain("1.0 stop under");
    expect(findings(burstTooFast, { lights: burst(0.1).lights })).toHaveLength(0);
  });

  test("a quarter of the power fills up in a quarter of the time", () => {
    expect(findings(burstTooFast, burst(0.3, 0.25))).toHaveLength(0);
    expect(finding(burstTooFast, burst(0.15, 0.25)).message).toContain("1.0 stop under");
  });

  test("the interval it names is silent", () => {
    const wait = numberAfter(finding(burstTooFast, burst(0.5)).remedy, "Leave", "s");
    expect(findings(burstTooFast, burst(wait))).toHaveLength(0);
  });
});
