import { describe, expect, test } from "vitest";
import { disc, output } from "../../../src/model/make/lamps.js";
import { at, named, offset, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { ambient, ambientUnder } from "../../../src/report/rules/ambient.rule.js";
import { flare } from "../../../src/report/rules/flare.rule.js";
import { outOfFocus } from "../../../src/report/rules/out-of-focus.rule.js";
import { syncBand } from "../../../src/report/rules/sync-band.rule.js";
import { tooClose } from "../../../src/report/rules/too-close.rule.js";
import { cm, deg, fNumber, lm, lx, m, mm, percent, shutterOneOver, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import {
  bulb,
  camera,
  dish,
  finding,
  findings,
  numberAfter,
  planOf,
  room,
  setOf,
} from "../../helpers/plan.js";

const lit = (lux: number, more: object = {}) => ({
  room: block("room", null, { ...room, ambient: lx(lux) }),
  camera: block("camera", null, { ...camera, ...more }),
});
/** What f/8, 1/125 s and ISO 200 ask for: N2 C / (t S), with the exact 1/128 s. */
const asked = (64 * 250 * 128) / 200;

describe("ambient", () => {
  test("speaks less than 5 stops under and stops less than 3 under", () => {
    expect(ambientUnder(planOf(lit(asked / 32)).scene, 1 / 128)).toBeCloseTo(5, 9);
    expect(findings(ambient, lit(asked / 33))).toHaveLength(0);
    expect(finding(ambient, lit(asked / 31)).severity).toBe("check");
    expect(finding(ambient, lit(asked / 7.9)).severity).toBe("stop");
    expect(finding(ambient, lit(asked / 16)).message).toContain("4.0 stop under");
  });

  describe("where only steady lamps are on", () => {
    // A disc of 20 cm and 2000 lm at half power, 2.4 m away: E = Phi / (pi (r2 + d2)) = 1000 / (pi 5.77) = 55.17 lx on
    // its axis; the meter, held 4.9 cm off it, gets 0.06 % less.
    const lux = (1000 / (Math.PI * 5.77)) * 0.9994;
    const lamp = dish({ calibration: undefined, output: output(lm(2000)), kind: "steady" } as never);
    // A black room, so that nothing but the lamp and the room's own light comes to the face.
    const black = (ambience: number) =>
      block("room", null, {
        ...room,
        ambient: lx(ambience),
        parts: ["walls", "ceiling", "floor"].map((part) =>
          block(part as "walls", null, { reflectance: percent(0) } as never),
        ),
      } as never);
    const steady = (ambience: number, shutter = 125) => ({
      ...lit(ambience, { shutter: shutterOneOver(shutter) }),
      room: black(ambience),
      lights: [lamp],
    });

    test("the room is held against what they give the face: a note under 5 stops, a check under 3", () => {
      expect(findings(ambient, steady(lux / 33))).toHaveLength(0);
      expect(finding(ambient, steady(lux / 31)).severity).toBe("note");
      expect(finding(ambient, steady(lux / 8.1)).severity).toBe("note");
      expect(finding(ambient, steady(lux / 7.9)).severity).toBe("check");
      expect(finding(ambient, steady(2 * lux)).message).toContain("1.0 stop over");
    });

    test("whatever the shutter, which lets in as much of both", () => {
      expect(finding(ambient, steady(lux / 16, 1000)).message).toBe(
        finding(ambient, steady(lux / 16)).message,
      );
      expect(finding(ambient, steady(lux / 16)).remedy).not.toContain("1/");
    });

    test("says what it adds, the reading with it, and a room that is silent", () => {
      const { message, remedy } = finding(ambient, steady(lux / 4));
      expect(message).toContain("2.0 stop under the 55 lx");
      // log2(1 + 1 / 4) = 0.32.
      expect(numberAfter(message, "it adds", "stop")).toBe(0.32);
      // N = sqrt(1.25 x 55.13 lx / 128 x 200 / 250) = 0.656: f/0.5 and 0.8 stop.
      expect(remedy).toContain("reads f/0.5 +0.8");
      expect(findings(ambient, steady(numberAfter(remedy, "room to", "lx")))).toHaveLength(0);
    });

    test("but beside a flash against the exposure, as ever", () => {
      const both = { ...steady(asked / 16), lights: [lamp, dish({}, "flash")] };
      expect(finding(ambient, both).message).toContain("4.0 stop under the exposure");
    });
  });

  test("the shutter and the darker room it names are silent", () => {
    const { remedy } = finding(ambient, lit(asked / 24));
    const n = Number(/1\/(\d+) s/.exec(remedy)?.[1]);
    expect(findings(ambient, lit(asked / 24, { shutter: shutterOneOver(n) }))).toHaveLength(0);
    expect(findings(ambient, lit(numberAfter(remedy, "room to", "lx")))).toHaveLength(0);
  });

  test("does not name a shutter beyond the sync time", () => {
    const { remedy } = finding(ambient, lit(asked / 8, { sync: shutterOneOver(200) }));
    expect(remedy).toContain("1/200 s (room light then is 3.7 stop under)");
    expect(finding(ambient, lit(asked / 8, { sync: shutterOneOver(125) })).remedy).not.toContain("1/");
  });
});

describe("sync-band", () => {
  const at_ = (n: number, sync = 160) => ({
    camera: block("camera", null, { ...camera, shutter: shutterOneOver(n), sync: shutterOneOver(sync) }),
  });

  test("speaks for a shutter faster than the sync time", () => {
    expect(findings(syncBand, at_(200))).toHaveLength(1);
    expect(findings(syncBand, at_(160))).toHaveLength(0);
    expect(findings(syncBand, { camera })).toHaveLength(0);
    expect(finding(syncBand, at_(320)).message).toContain("50 %");
  });

  test("at the time it names it is silent", () => {
    const n = Number(/Set 1\/(\d+) s/.exec(finding(syncBand, at_(320)).remedy)?.[1]);
    expect(findings(syncBand, at_(n))).toHaveLength(0);
  });
});

describe("out-of-focus", () => {
  const row = (behind: number, aperture = 4) => ({
    camera: block("camera", null, { ...camera, aperture: fNumber(aperture), focus: named("ana", "face") }),
    subjects: [
      block("subject", "ana", { height: m(1.7) }),
      block("subject", "ben", { height: m(1.7), at: offset({ right: m(0.4), behind: m(behind) }) }),
    ],
  });
  // Far limit s (H - f) / (H - s) with H = f2 / (N c) + f, c = 43.267 mm / 1500.
  const s = 3.5 - 0.0969;
  const h = (0.085 * 0.085) / (4 * (0.043267 / 1500)) + 0.085;
  const far = (s * (h - 0.085)) / (h - s);

  test("speaks for a face beyond the far limit", () => {
    expect(findings(outOfFocus, row(far - s + 0.01))).toHaveLength(1);
    expect(findings(outOfFocus, row(far - s - 0.01))).toHaveLength(0);
  });

  test("at the aperture it names it is silent", () => {
    const { remedy, about } = finding(outOfFocus, row(0.4));
    expect(about).toBe("ben");
    const n = Number(/f\/([\d.]+)/.exec(remedy)?.[1]);
    expect(n).toBeGreaterThan(4);
    expect(findings(outOfFocus, row(0.4, n))).toHaveLength(0);
  });
});

describe("too-close", () => {
  const from = (distance: number, focal: number, height = 1.5) => ({
    camera: block("camera", null, {
      ...camera,
      distance: tape(m(distance)),
      focal_length: mm(focal),
      height: m(height),
    }),
  });

  test("asks 1.5 m for a head and 2.5 m for a whole figure", () => {
    expect(findings(tooClose, from(1.5, 85))).toHaveLength(1);
    expect(findings(tooClose, from(1.6, 85))).toHaveLength(0);
    expect(findings(tooClose, from(2.45, 28, 1.2))).toHaveLength(1);
    expect(findings(tooClose, from(2.6, 28, 1.2))).toHaveLength(0);
  });

  test("the distance and lens it names are silent", () => {
    const { remedy } = finding(tooClose, from(1.2, 50));
    const back = numberAfter(remedy, "back to", "m");
    expect(findings(tooClose, from(back + 0.0969, numberAfter(remedy, "about", "mm")))).toHaveLength(0);
  });
});

describe("flare", () => {
  // Half the diagonal angle of view: atan(21.633 mm / v), v the image distance for the face 3.4031 m away.
  const image = (85 * 3403.1) / (3403.1 - 85);
  const most = (Math.atan(21.633 / image) * 180) / Math.PI + 20;
  const rim = (degrees: number, more: object = {}) => ({
    lights: [
      dish(),
      bulb(
        {
          position: at(m(4 * Math.tan((degrees * Math.PI) / 180)), m(0.5), m(1.3)),
          distance: undefined,
          ...more,
        } as never,
        "rim",
      ),
    ],
  });

  test("speaks within the view and 20 deg more", () => {
    expect(findings(flare, rim(most - 0.3))).toHaveLength(1);
    expect(findings(flare, rim(most + 0.3))).toHaveLength(0);
    expect(numberAfter(finding(flare, rim(20)).remedy, "beyond", "deg")).toBe(Math.round(most));
  });

  test("a grid keeps from the lens what leaves beyond its cutoff", () => {
    // 30 deg full: nothing more than 15 deg off the axis. The dish of 20 cm is 4.4 m from the lens and reaches 1.3 deg.
    const sight = Math.atan2(-4, -4 * Math.tan((25 * Math.PI) / 180));
    const [x, y] = [4 * Math.tan((25 * Math.PI) / 180), 0.5];
    const gridded = (off: number, grid: object) => {
      const angle = sight + (off * Math.PI) / 180;
      const aim = at(m(x + Math.cos(angle)), m(y + Math.sin(angle)), m(1.3));
      return rim(25, { shape: disc(cm(20)), aim, ...grid });
    };
    const grid = { grid: deg(30), grid_loses: stops(1) };
    expect(findings(flare, gridded(13, grid))).toHaveLength(1);
    expect(findings(flare, gridded(17, grid))).toHaveLength(0);
    expect(findings(flare, gridded(17, {}))).toHaveLength(1);
  });

  test("a card between lamp and lens flags it, and a dish turned away does not flare", () => {
    const card = block("card", "flag", {
      size: size(m(0.5), m(0.5)),
      at: at(m((4 * Math.tan((25 * Math.PI) / 180)) / 2), m(-1.5), m(1.3)),
    });
    expect(findings(flare, rim(25))).toHaveLength(1);
    expect(findings(flare, { ...rim(25), set: setOf(card as never) })).toHaveLength(0);
    expect(findings(flare)).toHaveLength(0);
  });
});
