import { describe, expect, test } from "vitest";
import { disc, fractionOfFull, off, output, sphere } from "../../src/model/make/lamps.js";
import { at, named, offset, tape, towards } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import type { LightModel } from "../../src/model/types.js";
import { cm, lmSeconds, m, number } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { shoot } from "../helpers/shoot.js";

const bulb = { shape: sphere(cm(8)), output: output(lmSeconds(1000)) };
const person = block("subject", null, { height: m(1.7) });
const camera = block("camera", null, { held: "upright", distance: tape(m(3)), height: m(1.4) });
const lamp = (name: string, x: number, fields: Partial<LightModel> = {}): LightModel =>
  block("light", name, { ...bulb, position: at(m(x), m(-2), m(2)), ...(fields as object) });

describe("the stations", () => {
  const { scene } = shoot({
    subjects: [person],
    camera,
    lights: [lamp("sun", -1)],
    set: block("set", null, {
      parts: [block("flat", "back", { size: size(m(2), m(2.4)), at: offset({ behind: m(1) }) })],
    }),
    points: [
      block("point", "vase", { at: at(m(1), m(0), m(1)), faces: towards(named("camera")) }),
      block("point", "mute", { up: m(1) }),
    ],
  });

  test("stand in a fixed order, points that look somewhere last", () => {
    expect(scene.stations.map((station) => `${station.name} ${station.receptor}`)).toEqual([
      "face disc",
      "face dome",
      "lit_cheek disc",
      "shaded_cheek disc",
      "chest disc",
      "knee disc",
      "shin disc",
      "floor disc",
      "back.left disc",
      "back disc",
      "back.right disc",
      "vase disc",
    ]);
    expect(scene.landmarks.get("mute")?.at).toEqual([0, 0, 1]);
  });

  test("look where they say, with unit vectors", () => {
    for (const { facing } of scene.stations) expect(Math.hypot(...facing)).toBeCloseTo(1, 12);
    const looks = new Map(
      scene.stations.map((station) => [`${station.name} ${station.receptor}`, station.looks]),
    );
    expect(looks.get("face disc")).toBe("towards sun");
    expect(looks.get("face dome")).toBe("towards camera");
    expect(looks.get("back disc")).toBe("along its surface");
    expect(looks.get("vase disc")).toBe("towards camera");
  });

  test("those of the cheeks are level, 45 degrees to either side of the nose, the lit one on the key's side", () => {
    const lit = scene.stations[2]?.facing;
    expect(lit).toEqual([expect.closeTo(-Math.SQRT1_2, 12), expect.closeTo(-Math.SQRT1_2, 12), 0]);
    const other = shoot({ subjects: [person], camera, lights: [lamp("sun", 1)] }).scene;
    expect(other.stations[2]?.name).toBe("lit_cheek");
    expect(other.stations[2]?.facing[0]).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test("a cheek lies where the head's surface looks as its disc does, so the head hides nothing before the disc", () => {
    const station = scene.stations[2];
    const head = scene.bodies[0];
    if (station === undefined || head?.kind !== "ellipsoid") throw new Error("no cheek, no head");
    const [x, y] = [0, 1].map((i) => (station.at[i] as number) - (head.centre[i] as number)) as [
      number,
      number,
    ];
    // Semi-axes of the head by the figure's table: 0.045 across, 0.057 ahead; the gradient of its equation.
    const [a, b] = [0.045 * 1.7, 0.057 * 1.7];
    expect((x * x) / (a * a) + (y * y) / (b * b)).toBeCloseTo(1, 12);
    expect(x / (a * a) / (y / (b * b))).toBeCloseTo((station.facing[0] ?? 0) / (station.facing[1] ?? 1), 12);
  });

  test("of several subjects carry their names", () => {
    const ana = block("subject", "ana", { at: offset({ left: cm(40) }) });
    const ben = block("subject", "ben", { at: offset({ right: cm(40) }) });
    const { scene: two } = shoot({ subjects: [ana, ben], lights: [lamp("sun", -1)] });
    expect(two.stations.map((station) => station.name).filter((name) => name.endsWith("face"))).toEqual([
      "ana.face",
      "ana.face",
      "ben.face",
      "ben.face",
    ]);
    expect(two.bodies[0]?.name).toBe("ana.head");
    expect(two.stations.filter((station) => station.name === "floor")).toHaveLength(1);
  });

  test("without a light or a camera look along the nose", () => {
    const { scene: alone } = shoot({ subjects: [person] });
    expect(alone.stations[0]).toMatchObject({ looks: "along the nose", facing: [0, -1, 0] });
    expect(alone.stations[1]).toMatchObject({ looks: "along the nose", receptor: "dome" });
  });
});

describe("the key", () => {
  const keyOf = (...lights: LightModel[]) => {
    const { scene } = shoot({ subjects: [person], lights });
    return scene.key === null ? null : scene.sources[scene.key]?.name;
  };

  test("is the light with the role, however weak", () => {
    expect(keyOf(lamp("a", -1), lamp("b", 1, { role: "key", power: fractionOfFull(number(1 / 64)) }))).toBe(
      "b",
    );
  });

  test("is else the light that gives the face most, not the strongest", () => {
    expect(
      keyOf(
        lamp("a", -1, { output: output(lmSeconds(3000)), position: at(m(0), m(-6), m(1.6)) }),
        lamp("b", 1),
      ),
    ).toBe("b");
    expect(keyOf(lamp("a", -1, { power: fractionOfFull(number(0.25)) }), lamp("b", 1))).toBe("b");
  });

  test("is else the light called key, however weak, unless it has another role or is off", () => {
    const quarter = { power: fractionOfFull(number(0.25)) };
    expect(keyOf(lamp("b", 1), lamp("key", -1, quarter))).toBe("key");
    expect(keyOf(lamp("b", 1), lamp("key", -1, { ...quarter, role: "rim" }))).toBe("b");
    expect(keyOf(lamp("b", 1), lamp("key", -1, { power: off }))).toBe("b");
    expect(keyOf(lamp("key", -1), lamp("b", 1, { ...quarter, role: "key" }))).toBe("b");
    const { assumed } = shoot({ subjects: [person], lights: [lamp("b", 1), lamp("key", -1)] }).scene;
    expect(assumed.filter((row) => row.what === "key")).toEqual([]);
  });

  test("is no light with another role while one without a role lights the face, however weak", () => {
    const weak = { power: fractionOfFull(number(1 / 64)) };
    for (const role of ["fill", "rim", "hair", "background", "practical"]) {
      expect(keyOf(lamp("strong", -1, { role }), lamp("plain", 1, weak)), role).toBe("plain");
    }
    // One that looks away lights no face.
    const away = { shape: disc(cm(20)), position: at(m(0), m(-2), m(1.6)), aim: at(m(0), m(-5), m(1.6)) };
    expect(keyOf(lamp("strong", -1, { role: "fill" }), lamp("plain", 1, away))).toBe("strong");
  });

  test("is no light from behind while a fill lights the face", () => {
    const weak = { power: fractionOfFull(number(1 / 64)) };
    for (const role of ["rim", "hair", "background"]) {
      expect(keyOf(lamp("strong", -1, { role }), lamp("fill", 1, { ...weak, role: "fill" })), role).toBe(
        "fill",
      );
      expect(keyOf(lamp("strong", -1, { role }))).toBe("strong");
    }
    const { assumed } = shoot({
      subjects: [person],
      lights: [lamp("back", -1, { role: "rim" }), lamp("soft", 1, { role: "fill" })],
    }).scene;
    expect(assumed).toContainEqual({
      what: "key",
      value:
        "soft, because it gives the face most of those that are not behind it and no light has the role key",
      matters: true,
    });
  });

  test("chosen by its light is said among what was assumed", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [lamp("a", -1, { power: fractionOfFull(number(0.25)) }), lamp("b", 1)],
    });
    expect(scene.assumed).toContainEqual({
      what: "key",
      value: "b, because it gives the face most and no light has the role key",
      matters: true,
    });
    const alone = shoot({ subjects: [person], lights: [lamp("a", -1)] }).scene.assumed;
    expect(alone).toContainEqual({ what: "key", value: "a, the only light", matters: false });
    const said = shoot({ subjects: [person], lights: [lamp("a", -1, { role: "key" })] }).scene.assumed;
    expect(said.filter((row) => row.what === "key")).toEqual([]);
  });

  test("is none where all lamps are off, or where there is no face", () => {
    expect(keyOf(lamp("a", -1, { power: off }))).toBeNull();
    expect(shoot({ lights: [lamp("a", -1)] }).scene.key).toBeNull();
  });
});
