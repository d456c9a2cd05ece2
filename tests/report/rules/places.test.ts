import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { disc, sphere } from "../../../src/model/make/lamps.js";
import { at, offset } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import { tubeMeets } from "../../../src/report/geometry/solids.js";
import { cameraInside } from "../../../src/report/rules/camera-inside.rule.js";
import { lampInside } from "../../../src/report/rules/lamp-inside.rule.js";
import { samePlace } from "../../../src/report/rules/same-place.rule.js";
import { standInside } from "../../../src/report/rules/stand-inside.rule.js";
import { cm, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";

/** The lamp at a place, without the tape by which the dish stands. */
const lampAt = (x: number, y: number, z: number, more: object = {}) => {
  const {
    distance: _,
    bearing: __,
    height: ___,
    ...rest
  } = dish({
    position: at(m(x), m(y), m(z)),
    ...more,
  } as never);
  return rest as ReturnType<typeof dish>;
};
const flatAt = (name: string, y: number, width = 1) =>
  block("flat", name, { size: size(m(width), m(2)), at: at(m(0), m(y), m(0)) } as never);

describe("lamp-inside", () => {
  test("speaks for a lamp in a person: the trunk is an ellipsoid of 0.115 h by 0.075 h", () => {
    const bulb = { shape: sphere(cm(4)), aim: at(m(0), m(-3), m(1)) };
    // h = 1.7 m: its front is 12.75 cm before the mark at 0.67 h; the bulb reaches 2 cm back.
    const ahead = (y: number) => ({ lights: [lampAt(0, -y, 0.67 * 1.7, bulb)] });
    expect(finding(lampInside, ahead(0.145)).message).toBe("key stands inside the person.");
    expect(findings(lampInside, ahead(0.15))).toHaveLength(0);
  });

  test("offers no place behind what it stands in: the free one nearest to it would light the flat's back", () => {
    // 8 cm behind the flat the dish of 20 cm, tilted down to the face, still cuts it: free places lie either side.
    const cut = (y: number) => ({
      set: setOf(flatAt("screen", -1.5) as never),
      lights: [lampAt(0, y, 1.9)],
    });
    // Told by which side of the flat it is: the face is at y = -0.1 or so.
    const said = finding(lampInside, cut(-1.51)).remedy;
    const { scene } = planOf(cut(-1.51));
    const [face, lamp] = [scene.subjects[0]?.face, scene.sources[0]?.centre];
    if (face === undefined || lamp === undefined) throw new Error("no face or lamp");
    const metres = numberAfter(said, "to", "m");
    const share = metres / Math.hypot(lamp[0] - face[0], lamp[1] - face[1], lamp[2] - face[2]);
    expect(face[1] + (lamp[1] - face[1]) * share).toBeGreaterThan(-1.5);
    expect(findings(lampInside, cut(face[1] + (lamp[1] - face[1]) * share))).toHaveLength(0);
  });

  test("and names no place where the flat is against the face", () => {
    const close = {
      set: setOf(flatAt("screen", 0.05) as never),
      lights: [lampAt(0, 0.1, 1.75)],
    };
    expect(finding(lampInside, close).message).toContain("screen goes through");
    expect(finding(lampInside, close).remedy).toBe("Move one of the two.");
  });

  test("and names the person where there are several", () => {
    const two = {
      subjects: [
        block("subject", "ana", { at: offset({ left: m(1) }) }),
        block("subject", "ben", { at: offset({ right: m(1) }) }),
      ],
      lights: [lampAt(1, 0, 1.1)],
    };
    expect(finding(lampInside, two).message).toBe("key stands inside ben.");
  });

  test("speaks for a lamp in a box, and for a flat through its opening, from rim to rim", () => {
    const crate = block("box", "crate", {
      size: volume(m(1), m(1), m(1)),
      at: at(m(0), m(-2), m(0)),
    } as never);
    const inCrate = (z: number) => ({ set: setOf(crate as never), lights: [lampAt(0, -2, z)] });
    expect(finding(lampInside, inCrate(0.5)).message).toBe("key stands inside crate.");
    expect(findings(lampInside, inCrate(1.2))).toHaveLength(0);
    // The dish of 20 cm looks across the flat's plane, so it reaches 10 cm to either side of its middle.
    const across = (y: number) => ({
      set: setOf(flatAt("screen", -1.5) as never),
      lights: [lampAt(0, y, 1, { aim: at(m(3), m(y), m(1)) })],
    });
    expect(finding(lampInside, across(-1.59)).message).toBe("screen goes through the opening of key.");
    expect(findings(lampInside, across(-1.61))).toHaveLength(0);
    // A lamp whose middle lies in the plane itself.
    expect(findings(lampInside, across(-1.5))).toHaveLength(1);
    // A screen that ends short of it.
    const short = block("flat", "screen", {
      size: size(m(1), m(2)),
      at: at(m(0.51), m(-1.5), m(0)),
    } as never);
    expect(findings(lampInside, { ...across(-1.5), set: setOf(short as never) })).toHaveLength(0);
  });

  test("its own stand does not count", () => {
    expect(findings(lampInside, { lights: [dish({ parts: [block("stand", null, {})] } as never)] })).toEqual(
      [],
    );
  });

  test("the place that it names is free, and a centimetre less is not", () => {
    // Straight before the face, but aimed past it, so that the disc stands across the screen's plane.
    const turned = (y: number) => ({
      set: setOf(flatAt("screen", -1.5) as never),
      lights: [lampAt(0, y, 1.5861, { shape: disc(cm(40)), aim: at(m(2), m(y), m(1.5861)) })],
    });
    const { remedy } = finding(lampInside, turned(-1.6));
    // The face is 9.69 cm before the mark, and the disc has to be 20 cm from the plane: 1.7 m or 1.3 m from the mark.
    const away = numberAfter(remedy, "key to", "m");
    expect(away).toBe(1.61);
    expect(findings(lampInside, turned(-0.0969 - away))).toHaveLength(0);
    expect(findings(lampInside, turned(-0.0969 - away + 0.01))).toHaveLength(1);
  });
});

describe("same-place", () => {
  const pair = (a: ReturnType<typeof flatAt>, b: ReturnType<typeof flatAt>) => ({
    set: setOf(a as never, b as never),
  });

  test("speaks for two flats in one plane and on each other, and not a millimetre apart", () => {
    expect(finding(samePlace, pair(flatAt("one", 1), flatAt("two", 1, 0.5))).message).toBe(
      "one and two lie in the same place: it is not known which is in front.",
    );
    expect(findings(samePlace, pair(flatAt("one", 1), flatAt("two", 1.001)))).toHaveLength(0);
  });

  test("not where they only touch side by side", () => {
    const beside = (x: number) =>
      block("flat", "two", { size: size(m(1), m(2)), at: at(m(x), m(1), m(0)) } as never);
    expect(findings(samePlace, pair(flatAt("one", 1), beside(1)))).toHaveLength(0);
    expect(findings(samePlace, pair(flatAt("one", 1), beside(0.99)))).toHaveLength(1);
  });

  test("moved as it says they are apart", () => {
    const { remedy, about } = finding(samePlace, pair(flatAt("one", 1), flatAt("two", 1)));
    expect(about).toBe("two");
    const by = numberAfter(remedy, "Move two", "cm") / 100;
    // The flat's front faces the camera's side, so back is away from it.
    expect(findings(samePlace, pair(flatAt("one", 1), flatAt("two", 1 + by)))).toHaveLength(0);
    const three = setOf(flatAt("one", 1) as never, flatAt("two", 1) as never, flatAt("three", 1.01) as never);
    expect(samePlace.check(planOf({ set: three }))[0]?.remedy).toContain("Move two 2 cm back");
  });
});

describe("camera-inside", () => {
  const lens = (y: number, z: number) => ({
    camera: block("camera", null, {
      ...camera,
      distance: undefined,
      height: undefined,
      position: at(m(0), m(y), m(z)),
    } as never),
  });

  test("speaks for a lens in a person: the trunk is an ellipsoid of 0.115 h by 0.075 h", () => {
    // h = 1.7 m: the trunk's front is 12.75 cm before the mark at 0.67 h; the camera's ball reaches 5 cm back.
    expect(finding(cameraInside, lens(-0.17, 0.67 * 1.7)).message).toBe(
      "The camera stands inside the person.",
    );
    expect(findings(cameraInside, lens(-0.185, 0.67 * 1.7))).toHaveLength(0);
    const thin = { thresholds: [{ name: "camera_body", value: 0.02, unit: "m" as const, written: "" }] };
    expect(findings(cameraInside, { ...lens(-0.17, 0.67 * 1.7), ...thin })).toHaveLength(0);
  });

  test("names the place on the same line from which it stands free, and there it does", () => {
    const inside = lens(-0.02, 0.67 * 1.7);
    const away = numberAfter(finding(cameraInside, inside).remedy, "from", "cm") / 100;
    expect(away).toBeGreaterThan(0.15);
    expect(findings(cameraInside, lens(-away, 0.67 * 1.7))).toHaveLength(0);
    expect(findings(cameraInside, lens(-away + 0.05, 0.67 * 1.7))).toHaveLength(1);
  });

  test("speaks for a lens in a box, and for a flat through the camera", () => {
    const crate = block("box", "crate", {
      size: volume(m(1), m(1), m(1)),
      at: at(m(0), m(-2), m(0)),
    } as never);
    const boxed = (z: number) => ({ ...lens(-2, z), set: setOf(crate as never) });
    expect(finding(cameraInside, boxed(0.5)).message).toBe("The camera stands inside crate.");
    expect(findings(cameraInside, boxed(1.06))).toHaveLength(0);
    const screened = (y: number) => ({ ...lens(y, 1), set: setOf(flatAt("screen", -1.5) as never) });
    expect(finding(cameraInside, screened(-1.54)).message).toBe("screen goes through the camera.");
    expect(findings(cameraInside, screened(-1.56))).toHaveLength(0);
  });
});

describe("stand-inside", () => {
  const above = (y: number, more: object = {}) => ({
    lights: [
      lampAt(0, -y, 2.6, { aim: at(m(0), m(-y), m(0)), parts: [block("stand", null, more as never)] }),
    ],
  });

  test("speaks for a column through a person, and not for one that passes", () => {
    // h = 1.7 m: nothing of the figure reaches further than the trunk, 12.75 cm before the mark; the column has 1.5 cm.
    expect(finding(standInside, above(0)).message).toBe("The stand of key goes through the person.");
    expect(finding(standInside, above(0.14)).message).toContain("goes through the person");
    expect(findings(standInside, above(0.145))).toHaveLength(0);
  });

  test("speaks for a column through a prop, a flat or a box, by a centimetre and a half", () => {
    // The lamp looks straight down from 2.6 m over a place 1 m ahead of the mark; its column is 1.5 cm thick all round.
    const beside = (piece: unknown) => ({ ...above(1), set: setOf(piece as never) });
    const ball = (x: number) =>
      block("sphere", "ball", { diameter: cm(40), at: at(m(x), m(-1), m(1)) } as never);
    expect(finding(standInside, beside(ball(0.21))).message).toBe("The stand of key goes through ball.");
    expect(findings(standInside, beside(ball(0.216)))).toHaveLength(0);
    const crate = (x: number) =>
      block("box", "crate", { size: volume(m(1), m(1), m(1)), at: at(m(x), m(-1), m(0)) } as never);
    for (const x of [0, 0.4, 0.514]) expect(findings(standInside, beside(crate(x)))).toHaveLength(1);
    expect(findings(standInside, beside(crate(0.516)))).toHaveLength(0);
    const screen = (y: number) => flatAt("screen", y);
    expect(finding(standInside, beside(screen(-0.99))).message).toBe("The stand of key goes through screen.");
    expect(findings(standInside, beside(screen(-0.96)))).toHaveLength(0);
    const top = (z: number) =>
      block("table", "bench", { size: size(m(1), m(1)), height: m(z), at: at(m(0), m(-1), m(0)) } as never);
    expect(findings(standInside, beside(top(0.7)))).toHaveLength(1);
    expect(findings(standInside, beside(top(2.59)))).toHaveLength(0);
  });

  test("does not speak for a paper that lies under it", () => {
    const paper = block("paper", "roll", { width: m(2), run: m(4), at: at(m(0), m(0.5), m(0)) } as never);
    expect(findings(standInside, { ...above(1), set: setOf(paper as never) })).toHaveLength(0);
  });

  test("names a boom with which the column stands free", () => {
    const { remedy } = finding(standInside, above(0));
    const boom = numberAfter(remedy, "boom of", "cm") / 100;
    expect(boom).toBeGreaterThan(0.25);
    expect(findings(standInside, above(0, { boom: m(boom) }))).toHaveLength(0);
    expect(findings(standInside, above(0, { boom: m(0.1) }))).toHaveLength(1);
  });
});

describe("a tube and a solid", () => {
  const tube = (from: Vec3, to: Vec3, radius = 0.1) =>
    ({ kind: "capsule", of: "stand", name: "t", from, to, radius, reflectance: 0 }) as const;
  const upright = tube([0, 0, 0], [0, 0, 1]);

  test("meet where the nearest places of both axes are closer than both radii", () => {
    // Square across each other, end to side, parallel, end to end.
    expect(tubeMeets(upright, tube([-1, 0.19, 0.5], [1, 0.19, 0.5]))).toBe(true);
    expect(tubeMeets(upright, tube([-1, 0.21, 0.5], [1, 0.21, 0.5]))).toBe(false);
    expect(tubeMeets(upright, tube([0.19, 0, 0.5], [1, 0, 0.5]))).toBe(true);
    expect(tubeMeets(upright, tube([0.21, 0, 0.5], [1, 0, 0.5]))).toBe(false);
    expect(tubeMeets(upright, tube([0.19, 0, 0.9], [0.19, 0, 3]))).toBe(true);
    expect(tubeMeets(upright, tube([0.21, 0, 0.9], [0.21, 0, 3]))).toBe(false);
    expect(tubeMeets(upright, tube([0, 0, 1.19], [0, 0, 3]))).toBe(true);
    expect(tubeMeets(upright, tube([0, 0, 1.21], [0, 0, 3]))).toBe(false);
  });

  test("are measured for balls and ellipsoids by their own size", () => {
    const ball = { kind: "sphere", of: "piece", name: "b", radius: 0.3, reflectance: 0 } as const;
    expect(tubeMeets(upright, { ...ball, centre: [0.39, 0, 0.5] } as never)).toBe(true);
    expect(tubeMeets(upright, { ...ball, centre: [0.41, 0, 0.5] } as never)).toBe(false);
    const egg = {
      kind: "ellipsoid",
      of: "subject",
      name: "e",
      axes: [
        [0.2, 0, 0],
        [0, 0.5, 0],
        [0, 0, 0.3],
      ],
      reflectance: 0,
    };
    expect(tubeMeets(upright, { ...egg, centre: [0.29, 0, 0.5] } as never)).toBe(true);
    expect(tubeMeets(upright, { ...egg, centre: [0.31, 0, 0.5] } as never)).toBe(false);
    expect(tubeMeets(upright, { ...egg, centre: [0, 0.59, 0.5] } as never)).toBe(true);
    expect(tubeMeets(upright, { ...egg, centre: [0, 0.61, 0.5] } as never)).toBe(false);
  });
});
