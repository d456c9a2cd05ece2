import type { Vec3 } from "../core/vector.js";
import { figure } from "./figure-numbers.js";

/** The frame a figure is built in: shares of the stature to the side, to the front and up the body, made metres. */
export interface BodyFrame {
  readonly origin: Vec3;
  readonly stature: number;
  /** Unit vectors: across the body (+x for one who faces the camera), out of its front, and up the body. */
  readonly across: Vec3;
  readonly front: Vec3;
  readonly up: Vec3;
}

/** The frame of one who stands, sits or kneels on a place; `lift` is what the shoes add. */
export function uprightBody(place: Vec3, facing: Vec3, stature: number, lift: number): BodyFrame {
  return {
    origin: [place[0], place[1], place[2] + lift],
    stature,
    across: [-facing[1], facing[0], 0],
    front: facing,
    up: [0, 0, 1],
  };
}

/** The frame of one who lies on the back, the middle of the stature over the place and the feet towards `facing`. */
export function lyingBody(place: Vec3, facing: Vec3, stature: number): BodyFrame {
  const half = stature / 2;
  return {
    origin: [
      place[0] + facing[0] * half,
      place[1] + facing[1] * half,
      place[2] + figure.trunk.ahead * stature,
    ],
    stature,
    across: [-facing[1], facing[0], 0],
    front: [0, 0, 1],
    up: [-facing[0], -facing[1], 0],
  };
}

/** A place on the body from shares of the stature. */
export function onBody(frame: BodyFrame, across: number, front: number, up: number): Vec3 {
  const { origin: o, across: a, front: f, up: u, stature: h } = frame;
  return [
    o[0] + h * (across * a[0] + front * f[0] + up * u[0]),
    o[1] + h * (across * a[1] + front * f[1] + up * u[1]),
    o[2] + h * (across * a[2] + front * f[2] + up * u[2]),
  ];
}
