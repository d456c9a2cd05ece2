import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { distance, dot, length, subtract } from "../../src/math/vector.js";
import { output, sphere } from "../../src/model/make/lamps.js";
import { at, left, offset, right, tape } from "../../src/model/make/points.js";
import type { LightModel, SubjectModel } from "../../src/model/types.js";
import { buildScene } from "../../src/scene/build.js";
import { discTowards, heldAt } from "../../src/scene/held-meter.js";
import type { Scene, Station } from "../../src/scene/types.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { cm, deg, lmSeconds, m } from "../../src/units/make.js";
import { block, recipe } from "../helpers/models.js";

const bulb = { shape: sphere(cm(4)), output: output(lmSeconds(1000)) };
const light = (fields: object): LightModel =>
  block("light", "key", { ...bulb, role: "key", ...(fields as object) });
const person = (fields: object = {}): SubjectModel => block("subject", null, { height: m(1.7), ...fields });
const sceneOf = (subject: SubjectModel, lamp: LightModel | null): Scene =>
  buildScene(recipe({ subjects: [subject], lights: lamp === null ? [] : [lamp] }), () => undefined);

function station(scene: Scene, name: string, receptor = "disc"): Station {
  const found = scene.stations.find((row) => row.name === name && row.receptor === receptor);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

/** Share of the light of the key that comes straight to a place of the body, of what comes with nobody there. */
function straight(scene: Scene, name: string): number {
  const meter = station(scene, name);
  const key = scene.sources[0];
  if (key === undefined) throw new Error("no key");
  // A bulb gives a disc that looks at it I / d^2 from its centre.
  const d = distance(meter.at, key.centre);
  const open = 1 / (4 * Math.PI * d * d);
  return sceneLight(scene).direct(key, meter) / open;
}

describe("a meter held before a body", () => {
  const body = { at: [0, -0.1, 1.6] as Vec3, ahead: [0, -1, 0] as Vec3 };

  test("moves square to the way to the light, the less the more the light is ahead", () => {
    for (const degrees of [0, 20, 45, 90, 130]) {
      const angle = (degrees * Math.PI) / 180;
      const lamp: Vec3 = [2 * Math.sin(angle), -0.1 - 2 * Math.cos(angle), 1.6];
      const place = heldAt(body, lamp);
      const moved = subtract(place, body.at);
      expect(dot(moved, subtract(lamp, body.at))).toBeCloseTo(0, 12);
      expect(length(moved)).toBeCloseTo(0.08 * Math.sin(angle), 12);
      expect(dot(moved, body.ahead)).toBeGreaterThan(-1e-12);
    }
  });

  test("without a light, or with one at the very place, is where the body is", () => {
    expect(heldAt(body, null)).toEqual(body.at);
    expect(heldAt(body, body.at)).toEqual(body.at);
  });

  test("keeps the tape's distance: 2 m stay 2 m within 1.6 mm, and the reading within 0.01 stop", () => {
    const straightAhead = sceneOf(person(), light({ distance: tape(m(2)), height: m(1.5861) }));
    const exposure = (scene: Scene): number => {
      const key = scene.sources[0];
      return key === undefined ? 0 : sceneLight(scene).direct(key, station(scene, "face"));
    };
    for (const degrees of [45, 90, 130]) {
      const scene = sceneOf(
        person(),
        light({ distance: tape(m(2)), height: m(1.5861), bearing: left(deg(degrees)) }),
      );
      const away = distance(station(scene, "face").at, scene.sources[0]?.centre ?? [0, 0, 0]);
      expect(away).toBeGreaterThanOrEqual(2);
      expect(away).toBeLessThanOrEqual(2.0016 + 1e-6);
      expect(Math.abs(Math.log2(exposure(scene) / exposure(straightAhead)))).toBeLessThan(0.01);
    }
  });
});

describe("the person hides the light from the meter", () => {
  const around = (degrees: number, height: number) =>
    light({ distance: tape(m(2)), height: m(height), bearing: right(deg(degrees)) });

  test("at the face not before the light is well behind: free at 0 to 140 deg, hidden at 170", () => {
    for (const degrees of [0, 45, 90, 110, 130, 140]) {
      expect(straight(sceneOf(person(), around(degrees, 1.5861)), "face"), `${degrees} deg`).toBeCloseTo(
        1,
        3,
      );
      expect(straight(sceneOf(person(), around(degrees, 2.2)), "face"), `${degrees} deg up`).toBeCloseTo(
        1,
        3,
      );
    }
    expect(straight(sceneOf(person(), around(170, 1.5861)), "face")).toBe(0);
  });

  test("at chest, knee and shin not from the side", () => {
    for (const degrees of [0, 45, 90, 110]) {
      const scene = sceneOf(person(), around(degrees, 1.5861));
      for (const name of ["chest", "knee", "shin"]) {
        expect(straight(scene, name), `${name} at ${degrees} deg`).toBeCloseTo(1, 3);
      }
    }
    expect(straight(sceneOf(person(), around(170, 1.5861)), "chest")).toBe(0);
  });

  test("as it does by hand: the outline of the head against the way from the meter", () => {
    // Seen from above, the meter stands (0.0969 + 0.08) sin(t) off the line through the head's middle to the light; the
    // head, semi-axes 0.0765 and 0.0969, reaches sqrt((0.0969 sin t)^2 + (0.0765 cos t)^2). Both are the same at 152 deg.
    const free = (degrees: number): number => {
      const [s, c] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
      return (0.0969 + 0.08) * s - Math.hypot(0.0969 * s, 0.0765 * c);
    };
    expect(free(151)).toBeGreaterThan(0);
    expect(free(153)).toBeLessThan(0);
    const far = (degrees: number) =>
      light({
        position: at(
          m(60 * Math.sin((degrees * Math.PI) / 180)),
          m(-0.0969 - 60 * Math.cos((degrees * Math.PI) / 180)),
          m(1.5861),
        ),
      });
    expect(straight(sceneOf(person(), far(151)), "face")).toBeCloseTo(1, 2);
    expect(straight(sceneOf(person(), far(153)), "face")).toBeCloseTo(0, 2);
  });
});

describe("which meters are held", () => {
  const lamp = light({ position: at(m(1.5), m(-1), m(2)) });

  test("face, chest, knee and shin, the dome where the disc is; not the cheeks; places stay", () => {
    const scene = sceneOf(person(), lamp);
    expect(station(scene, "face", "dome").at).toEqual(station(scene, "face").at);
    for (const name of ["face", "chest", "knee", "shin"]) {
      const place = scene.landmarks.get(name)?.at ?? [0, 0, 0];
      expect(station(scene, name).before).toEqual({ at: place, ahead: [0, -1, 0] });
      expect(station(scene, name).at).toEqual(heldAt({ at: place, ahead: [0, -1, 0] }, [1.5, -1, 2]));
    }
    expect(scene.subjects[0]?.face).toEqual(scene.landmarks.get("face")?.at);
    for (const name of ["lit_cheek", "shaded_cheek", "floor"]) {
      expect(station(scene, name).before).toBeUndefined();
    }
    const dark = sceneOf(person(), null);
    expect(station(dark, "face").at).toEqual(dark.landmarks.get("face")?.at);
  });

  test("out of the body as it lies and kneels", () => {
    const lying = sceneOf(person({ pose: "lying" }), lamp);
    for (const name of ["face", "chest", "knee", "shin"]) {
      expect(station(lying, name).before?.ahead).toEqual([0, 0, 1]);
    }
    const kneeling = sceneOf(person({ pose: "kneeling" }), lamp);
    expect(station(kneeling, "shin").before?.ahead).toEqual([0, 0, 1]);
    expect(station(kneeling, "knee").before?.ahead).toEqual([0, -1, 0]);
    expect(station(sceneOf(person({ pose: "seated" }), lamp), "knee").before?.ahead).toEqual([0, -1, 0]);
  });

  test("a disc towards another point is held for that point; at a place of no body it is at the place", () => {
    const scene = sceneOf(person({ at: offset({ left: cm(30) }) }), lamp);
    const face = scene.landmarks.get("face")?.at ?? [0, 0, 0];
    const rim: Vec3 = [-2, 1, 2];
    const disc = discTowards(scene.stations, face, rim);
    expect(disc?.at).toEqual(heldAt({ at: face, ahead: [0, -1, 0] }, rim));
    expect(dot(disc?.facing ?? rim, subtract(rim, disc?.at ?? rim))).toBeCloseTo(
      distance(rim, disc?.at ?? rim),
      12,
    );
    expect(discTowards(scene.stations, [0, 0, 0], rim)?.at).toEqual([0, 0, 0]);
    expect(discTowards(scene.stations, face, face)).toBeNull();
  });
});
