import { PerspectiveCamera, Vector3 } from "three";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { cross, normalise, subtract } from "../../../src/math/vector.js";
import {
  bodyInPicture,
  heightOf,
  lensOf,
  outlineOf,
  pointInPicture,
  polygonInPicture,
} from "../../../src/report/frame/project.js";
import { areaOf, boxOf, shareOf } from "../../../src/report/frame/region.js";
import { framed } from "../../../src/report/geometry/frame.js";
import type { SceneCamera } from "../../../src/scene/types.js";

/** A camera at a place that looks at another, held upright, its lens raised by `shift` m. */
function cameraAt(at: Vec3, aim: Vec3, focal: number, shift = 0, focus: Vec3 | null = null): SceneCamera {
  const forward = normalise(subtract(aim, at)) ?? [0, 1, 0];
  const right = normalise(cross(forward, [0, 0, 1])) ?? [1, 0, 0];
  return {
    at,
    forward,
    right,
    up: cross(right, forward),
    frameWidth: 0.024,
    frameHeight: 0.036,
    focalLength: focal,
    shift,
    focus,
    aperture: 8,
    shutter: 0.01,
    iso: 100,
    sync: null,
    interval: null,
    balance: 5600,
    circleOfConfusion: 0.00003,
    pixels: null,
  };
}

function lens(camera: SceneCamera) {
  const made = lensOf(camera);
  if (made === null) throw new Error("no lens");
  return made;
}

/** The same camera in a library for drawing in space; its image distance and shift by hand. */
function outside(camera: SceneCamera, image: number): PerspectiveCamera {
  const eye = new PerspectiveCamera(
    (2 * Math.atan(camera.frameHeight / 2 / image) * 180) / Math.PI,
    camera.frameWidth / camera.frameHeight,
    0.01,
    100,
  );
  eye.up.set(0, 0, 1);
  eye.position.set(...camera.at);
  eye.lookAt(
    camera.at[0] + camera.forward[0],
    camera.at[1] + camera.forward[1],
    camera.at[2] + camera.forward[2],
  );
  // A raised lens moves the frame up by shift / height of the picture: an off-centre part of a larger view.
  const tall = 1000;
  eye.setViewOffset(
    (tall * camera.frameWidth) / camera.frameHeight,
    tall,
    0,
    (-tall * camera.shift) / camera.frameHeight,
    (tall * camera.frameWidth) / camera.frameHeight,
    tall,
  );
  eye.updateMatrixWorld();
  eye.updateProjectionMatrix();
  return eye;
}

const spots: readonly Vec3[] = [
  [0, 0, 1.6],
  [0.4, 0.7, 0.2],
  [-0.8, 2.1, 2.4],
  [1.3, -1.2, 0.9],
];

describe("a point", () => {
  const cameras: readonly (readonly [string, SceneCamera, number])[] = [
    ["level", cameraAt([0, -4, 1.2], [0, 0, 1.2], 0.05), 0.05],
    ["tilted and to the side", cameraAt([1.5, -3, 2.2], [0, 0.2, 1], 0.035), 0.035],
    ["raised lens", cameraAt([0, -4, 1.2], [0, 0, 1.2], 0.05, 0.006), 0.05],
    // Focused 2 m away, 85 mm: v = f s / (s - f).
    ["focused near", cameraAt([0, -2, 1.2], [0, 0, 1.2], 0.085, 0, [0, 0, 1.2]), (0.085 * 2) / (2 - 0.085)],
  ];

  test.each(cameras)("lies where three's PerspectiveCamera puts it: %s", (_, camera, image) => {
    const eye = outside(camera, image);
    for (const spot of spots) {
      const there = new Vector3(...spot).project(eye);
      const here = pointInPicture(lens(camera), spot);
      expect(here?.[0]).toBeCloseTo(there.x, 9);
      expect(here?.[1]).toBeCloseTo(there.y, 9);
      const also = framed(camera, spot);
      expect(also?.x).toBeCloseTo(there.x, 9);
      expect(also?.y).toBeCloseTo(there.y, 9);
    }
  });

  test("behind the lens has no place", () => {
    expect(pointInPicture(lens(cameraAt([0, -4, 1], [0, 0, 1], 0.05)), [0, -5, 1])).toBeNull();
  });
});

describe("a flat piece", () => {
  const camera = cameraAt([0, -4, 1.2], [0, 0, 1.2], 0.05);

  test("that reaches behind the lens is cut in space: a floor fills the frame below its horizon", () => {
    const floor: readonly Vec3[] = [
      [-500, -500, 0],
      [500, -500, 0],
      [500, 5000, 0],
      [-500, 5000, 0],
    ];
    expect(shareOf(polygonInPicture(lens(camera), floor))).toBeCloseTo(0.5, 3);
    // A lens raised by a quarter of the frame's height puts the horizon a quarter lower, a lowered one higher.
    expect(shareOf(polygonInPicture(lens({ ...camera, shift: 0.009 }), floor))).toBeCloseTo(0.25, 3);
    expect(shareOf(polygonInPicture(lens({ ...camera, shift: -0.009 }), floor))).toBeCloseTo(0.75, 3);
    const ceiling = floor.map(([x, y]): Vec3 => [x, y, 2.4]);
    expect(shareOf(polygonInPicture(lens({ ...camera, shift: 0.009 }), ceiling))).toBeCloseTo(0.75, 3);
  });

  test("edge on takes nothing", () => {
    const edge: readonly Vec3[] = [
      [0, 0, 0],
      [0, 3, 0],
      [0, 3, 2],
      [0, 0, 2],
    ];
    expect(areaOf(polygonInPicture(lens(camera), edge))).toBeCloseTo(0, 9);
  });
});

describe("a round body", () => {
  const camera = cameraAt([0, -3, 1.2], [0, 0, 1.2], 0.03);

  test("a sphere on the axis is a circle of radius f tan(asin(r / d))", () => {
    const ball = { kind: "sphere", name: "ball", centre: [0, 0, 1.2], radius: 0.3, reflectance: 0 } as const;
    const radius = (0.03 * 0.3) / Math.sqrt(9 - 0.09);
    const area = Math.PI * radius * radius;
    expect(shareOf(bodyInPicture(lens(camera), ball))).toBeCloseTo(area / (0.024 * 0.036), 7);
    expect(heightOf(lens(camera), ball)?.high).toBeCloseTo(radius / 0.018, 9);
  });

  // Between two planes through the lens that touch it the ball at angle a off the axis lies: f tan(a +- asin(r / d)).
  test("a sphere off the axis is drawn out to its tangents", () => {
    const ball = { kind: "sphere", name: "ball", centre: [0, 0, 2.2], radius: 0.3, reflectance: 0 } as const;
    const [off, half] = [Math.atan2(1, 3), Math.asin(0.3 / Math.sqrt(10))];
    const found = heightOf(lens(camera), ball);
    expect(found?.high).toBeCloseTo((0.03 * Math.tan(off + half)) / 0.018, 9);
    expect(found?.low).toBeCloseTo((0.03 * Math.tan(off - half)) / 0.018, 9);
  });

  test("an ellipsoid's outline is that of its touching lines, one by one", () => {
    const body = {
      kind: "ellipsoid",
      name: "egg",
      centre: [0.3, 0.4, 1.6],
      axes: [
        [0.2, 0.05, 0],
        [-0.03, 0.12, 0],
        [0, 0, 0.4],
      ],
      reflectance: 0,
    } as const;
    const ring = outlineOf(lens(camera), body) ?? [];
    const box = boxOf([ring]);
    // Every point of the surface lies inside, and some reach every side.
    const most = { left: 9, right: -9, bottom: 9, top: -9 };
    for (let i = 0; i < 300; i++) {
      for (let j = 0; j < 300; j++) {
        const [a, b] = [(Math.PI * (i + 0.5)) / 300, (2 * Math.PI * j) / 300];
        const u = [Math.sin(a) * Math.cos(b), Math.sin(a) * Math.sin(b), Math.cos(a)] as const;
        const spot = body.centre.map((c: number, k) =>
          body.axes.reduce((sum: number, axis, n) => sum + (axis[k] ?? 0) * (u[n] ?? 0), c),
        ) as unknown as Vec3;
        const [x, y] = pointInPicture(lens(camera), spot) ?? [0, 0];
        most.left = Math.min(most.left, x);
        most.right = Math.max(most.right, x);
        most.bottom = Math.min(most.bottom, y);
        most.top = Math.max(most.top, y);
      }
    }
    expect(box?.left).toBeCloseTo(most.left, 2);
    expect(box?.right).toBeCloseTo(most.right, 2);
    expect(heightOf(lens(camera), body)?.high).toBeCloseTo(most.top, 3);
    expect(heightOf(lens(camera), body)?.low).toBeCloseTo(most.bottom, 3);
  });

  test("a capsule square to the axis is a band with round ends", () => {
    const post = {
      kind: "capsule",
      name: "post",
      from: [0, 0, 0.9],
      to: [0, 0, 1.5],
      radius: 0.001,
      reflectance: 0,
    } as const;
    const width = (2 * 0.001 * 0.03) / 3;
    const length = (0.6 * 0.03) / 3;
    expect(shareOf(bodyInPicture(lens(camera), post)) * 0.024 * 0.036).toBeCloseTo(width * length, 7);
    expect((shareOf(bodyInPicture(lens(camera), post)) * 0.024 * 0.036) / (width * length)).toBeCloseTo(1, 2);
  });

  test("one that reaches the plane of the lens is left out", () => {
    const round = {
      kind: "sphere",
      name: "ball",
      centre: [0, -3, 1.2],
      radius: 0.3,
      reflectance: 0,
    } as const;
    expect(bodyInPicture(lens(camera), round)).toEqual([]);
  });
});
