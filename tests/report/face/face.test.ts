import { describe, expect, test } from "vitest";
import { sphere } from "../../../src/model/make/lamps.js";
import { along, at, left, right } from "../../../src/model/make/points.js";
import { anglesFrom, placeAt } from "../../../src/report/face/angles.js";
import {
  catchlight,
  catchlightOffset,
  catchlightWidth,
  cornea,
} from "../../../src/report/face/catchlight.js";
import { glareOf } from "../../../src/report/face/glasses.js";
import { noseShadow } from "../../../src/report/face/nose.js";
import { patternGaps, patternOf } from "../../../src/report/face/pattern.js";
import { sideOfFace } from "../../../src/report/face/side.js";
import type { SceneCamera, SceneSubject, Source } from "../../../src/scene/types.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, camera, planOf } from "../../helpers/plan.js";

const mm = (metres: number | undefined): number => (metres ?? Number.NaN) * 1000;

describe("angles to the nose line", () => {
  test("are bearing and elevation for one who faces the camera, and turn with the head", () => {
    const facing = (turn: number): SceneSubject => {
      const { scene } = planOf({
        subjects: [
          block("subject", null, {
            height: m(1.7),
            facing: along(turn < 0 ? left(deg(-turn)) : right(deg(turn))),
          }),
        ],
      });
      return scene.subjects[0] as SceneSubject;
    };
    const straight = facing(0);
    const place = placeAt(straight, { azimuth: 35, elevation: 27 }, 2);
    expect(anglesFrom(straight, place)).toEqual({
      azimuth: expect.closeTo(35, 9),
      elevation: expect.closeTo(27, 9),
    });
    // To camera-right of the middle of the face, before it and above it.
    expect(place[0]).toBeGreaterThan(0.9);
    expect(place[2] - straight.face[2]).toBeCloseTo(2 * Math.sin((27 * Math.PI) / 180), 9);
    const turned = facing(20);
    const far = placeAt(straight, { azimuth: 35, elevation: 0 }, 1e6);
    expect(anglesFrom(turned, far)?.azimuth).toBeCloseTo(15, 3);
    expect(anglesFrom(facing(-20), far)?.azimuth).toBeCloseTo(55, 3);
  });

  test("lying, what is straight up stands on the nose line", () => {
    const { scene } = planOf({ subjects: [block("subject", null, { height: m(1.7), pose: "lying" })] });
    const subject = scene.subjects[0] as SceneSubject;
    const above = anglesFrom(subject, [subject.face[0], subject.face[1], subject.face[2] + 2]);
    expect(above).toEqual({ azimuth: expect.closeTo(0, 9), elevation: expect.closeTo(0, 9) });
  });
});

describe("the shadow of a nose 25 mm proud", () => {
  test("falls 25 tan a to the side and 25 tan e / cos a down", () => {
    // By hand: 25 * 0.7002 = 17.5 and 25 * 0.5095 / 0.8192 = 15.5 mm; from 26.6 deg up 25 * 0.5008 / 0.8192 = 15.3 mm.
    const found = noseShadow({ azimuth: 35, elevation: 27 });
    expect(mm(found?.side)).toBeCloseTo(17.51, 2);
    expect(mm(found?.drop)).toBeCloseTo(15.55, 2);
    expect(mm(noseShadow({ azimuth: -35, elevation: 26.6 })?.drop)).toBeCloseTo(15.28, 2);
    expect(noseShadow({ azimuth: 100, elevation: 20 })).toBeNull();
  });

  test("is where the ray past the tip meets the face", () => {
    const { scene } = planOf();
    const subject = scene.subjects[0] as SceneSubject;
    const light = placeAt(subject, { azimuth: -40, elevation: 30 }, 1e6);
    const tip = subject.face.map((x, k) => x + 0.025 * (subject.nose[k] ?? 0));
    const way = tip.map((x, k) => x - (light[k] ?? 0));
    const slope = way.reduce((sum, w, k) => sum + w * (subject.nose[k] ?? 0), 0);
    const hit = tip.map((x, k) => x - (0.025 / slope) * (way[k] ?? 0));
    const found = noseShadow({ azimuth: -40, elevation: 30 });
    expect(Math.abs((hit[0] ?? 0) - subject.face[0])).toBeCloseTo(found?.side ?? 0, 6);
    expect(subject.face[2] - (hit[2] ?? 0)).toBeCloseTo(found?.drop ?? 0, 6);
  });
});

describe("patterns", () => {
  test("the trade's ranges, to either side alike", () => {
    const at = (azimuth: number, elevation: number): string => {
      const found = patternOf({ azimuth, elevation });
      return found.off === 0 ? found.name : "between";
    };
    expect([at(5, 35), at(-35, 30), at(35, 30), at(50, 40), at(-90, 10), at(140, 20), at(0, 5)]).toEqual([
      "butterfly",
      "loop",
      "loop",
      "rembrandt",
      "split",
      "rim",
      "flat",
    ]);
    expect([at(70, 20), at(18, 35), at(50, 20), at(180, 20)]).toEqual(Array(4).fill("between"));
  });

  test("a light at the end of a range stands in it, whatever rounding makes of its angle", () => {
    expect(patternOf({ azimuth: -40, elevation: 20 - 4e-15 })).toEqual({
      name: "loop",
      azimuth: 0,
      elevation: 0,
      off: 0,
    });
    expect(patternGaps({ azimuth: -40, elevation: 19.9 })[0]?.elevation).toBeCloseTo(0.1, 9);
  });

  test("how far and which way the next one is", () => {
    const gaps = patternGaps({ azimuth: -35, elevation: 30 });
    // From loop to Rembrandt: 10 deg further round and 5 deg up.
    expect(gaps[1]).toEqual({ name: "rembrandt", azimuth: 10, elevation: 5, off: Math.sqrt(125) });
  });
});

test("short and broad: the side turned from the camera, the side turned to it", () => {
  const at = (azimuth: number) => ({ azimuth, elevation: 20 });
  expect(sideOfFace(at(40), at(-20))).toBe("short");
  expect(sideOfFace(at(40), at(20))).toBe("broad");
  expect(sideOfFace(at(-40), at(-20))).toBe("broad");
  expect(sideOfFace(at(40), at(3))).toContain("lens");
  expect(sideOfFace(at(4), at(20))).toContain("nose line");
  expect(sideOfFace(at(40), null)).toContain("no camera");
});

describe("catchlights", () => {
  test("a box 60 cm wide from 1.3 m is 15 % of the iris, 1.2 m from 2 m 19 %, 2 m from 1.5 m 39 %", () => {
    // The mirror's image is half the radius times the angle: 3.9 mm for a radian, against an iris of 11.7 mm.
    const share = (wide: number, away: number): number =>
      catchlightWidth((2 * Math.atan(wide / 2 / away) * 180) / Math.PI) / cornea.iris;
    expect(share(0.6, 1.3)).toBeCloseTo(0.15, 2);
    expect(share(1.2, 2)).toBeCloseTo(0.19, 2);
    expect(share(2, 1.5)).toBeCloseTo(0.39, 2);
    expect(share(0.08, 5)).toBeCloseTo(0.0053, 4);
  });

  test("30, 45 and 60 deg off the lens it lies 35, 51 and 67 % of the radius of the iris out", () => {
    for (const [angle, share] of [
      [30, 0.35],
      [45, 0.51],
      [60, 0.67],
    ] as const)
      expect(catchlightOffset(angle) / (cornea.iris / 2)).toBeCloseTo(share, 2);
  });

  test("lies on the side of the light, as on a clock, and obeys the mirror law on the eye", () => {
    const { scene } = planOf();
    const subject = scene.subjects[0] as SceneSubject;
    const lens = scene.camera as SceneCamera;
    const hour = (azimuth: number, elevation: number): number | null => {
      const source = { ...(scene.sources[0] as Source), centre: placeAt(subject, { azimuth, elevation }, 3) };
      return (
        catchlight(subject, lens, { ...source, shape: { kind: "sphere", radius: 0.04 } }, 55, 80)?.hour ??
        null
      );
    };
    expect([hour(0, 40), hour(40, -4.8), hour(-40, -4.8)]).toEqual([12, 3, 9]);
    // 35 deg to the side and 20 up: 0.54 to the side and, seen from a lens 5 deg lower, 0.41 up, 53 deg from the top.
    expect([hour(-35, 20), hour(35, 20)]).toEqual([10, 2]);
    const source = {
      ...(scene.sources[0] as Source),
      centre: placeAt(subject, { azimuth: 0, elevation: 56 }, 3),
    };
    const bulbed = { ...source, shape: { kind: "sphere", radius: 0.04 } } as const;
    // The lens is 0.286 m lower at 3.403 m: the lamp 56 deg up is 60.8 deg above the line of sight.
    const lift = 56 + (Math.atan2(subject.face[2] - lens.at[2], 3.4031) * 180) / Math.PI;
    expect(catchlight(subject, lens, bulbed, lift - 0.1, 80)?.reason).toContain("lid");
    expect(catchlight(subject, lens, bulbed, lift + 0.1, 80)?.seen).toBe(true);
  });
});

describe("spectacles", () => {
  const lens = (height: number) => ({ ...camera, height: m(height) });
  const glare = (tilt: number, lamp: readonly [number, number, number], height = 1.5861) => {
    const { scene } = planOf({
      camera: lens(height),
      lights: [
        bulb({
          shape: sphere(cm(8)),
          distance: undefined as never,
          bearing: undefined as never,
          height: undefined as never,
          position: at(m(lamp[0]), m(lamp[1]), m(lamp[2])),
        }),
      ],
    });
    return glareOf(
      scene.subjects[0] as SceneSubject,
      scene.camera as SceneCamera,
      scene.sources[0] as Source,
      tilt,
    );
  };

  test("upright glasses mirror a lens at eye height back to itself; a lean of 10 deg mirrors it 20 deg down", () => {
    const straight = glare(0, [0, -3, 1.5861]);
    expect(straight?.off).toBeCloseTo(0, 4);
    const leaning = glare(10, [0, -3, 1.5861]);
    expect(leaning?.off).toBeCloseTo(20, 4);
    expect((leaning?.mirrored[2] ?? 0) < 0).toBe(true);
    expect(leaning?.mirrored[2]).toBeCloseTo(-Math.sin((20 * Math.PI) / 180), 5);
  });

  test("a lens below the eyes is mirrored as far above them", () => {
    // 20 cm lower at 3.4 m: the lamp that shows stands as much higher.
    const face = -0.0969;
    const level = 3.5 + face;
    const up = 1.5861 + ((1.5861 - 1.3861) / level) * (3 + face);
    expect(glare(0, [0, -3, up], 1.3861)?.off).toBeLessThan(0.1);
  });
});
