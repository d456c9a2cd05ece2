/**
 * Formulas for checking the examples by hand, written here and taken from nowhere: geometry, the inverse square, and
 * flat lamps cut into small squares, each a point that shines by Lambert's law. x to the camera's right, y away from
 * the camera's side, z up, metres.
 */

/** A point or a direction. */
export type Triple = readonly [number, number, number];

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const size = (a: Triple): number => Math.sqrt(dot(a, a));
const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** A direction of length 1 from one point to another. */
export function towards(from: Triple, to: Triple): Triple {
  const d = minus(to, from);
  const l = size(d);
  return [d[0] / l, d[1] / l, d[2] / l];
}

/** The straight distance between two points. */
export const apart = (a: Triple, b: Triple): number => size(minus(a, b));

/** The way along the floor between two points. */
export const alongFloor = (a: Triple, b: Triple): number => size([a[0] - b[0], a[1] - b[1], 0]);

/** The height of a point above another's horizon, in degrees. */
export const elevation = (from: Triple, to: Triple): number =>
  degrees(Math.atan((to[2] - from[2]) / alongFloor(from, to)));

/** The side angle of a point seen from another, from the camera's side, + to camera-right, in degrees. */
export const bearing = (from: Triple, to: Triple): number =>
  degrees(Math.atan2(to[0] - from[0], from[1] - to[1]));

/** A place on the front of a figure of stature h: shares of h ahead and up, metres of lift, and the way it faces. */
export function onFigure(
  h: number,
  ahead: number,
  up: number,
  lift = 0,
  facing = 0,
  at: readonly [number, number] = [0, 0],
): Triple {
  const a = radians(facing);
  return [at[0] + ahead * h * Math.sin(a), at[1] - ahead * h * Math.cos(a), up * h + lift];
}

/** Where a meter is held before a place of a body for a light: 8 cm the way the body looks, but square to the light. */
export function held(place: Triple, light: Triple, looks: Triple = [0, -1, 0]): Triple {
  const way = towards(place, light);
  const along = dot(way, looks);
  const moved = (i: 0 | 1 | 2): number => place[i] + 0.08 * (looks[i] - along * way[i]);
  return [moved(0), moved(1), moved(2)];
}

/**
 * Whether an upright ellipsoid, its semi-axes across (x), ahead (y) and up (z), stands in the line between two points:
 * whether the line comes within 1 of the middle once the ellipsoid is made a ball of radius 1.
 */
export function behind(middle: Triple, axes: Triple, a: Triple, b: Triple): boolean {
  const round = (p: Triple): Triple => [
    (p[0] - middle[0]) / axes[0],
    (p[1] - middle[1]) / axes[1],
    (p[2] - middle[2]) / axes[2],
  ];
  const [from, to] = [round(a), round(b)];
  const way = minus(to, from);
  const share = Math.min(1, Math.max(0, -dot(from, way) / dot(way, way)));
  return size([from[0] + share * way[0], from[1] + share * way[1], from[2] + share * way[2]]) < 1;
}

/** A lamp on a slant tape from a point, at a bearing in degrees (+ right) and a height. */
export function onTape(zero: Triple, slant: number, side: number, height: number): Triple {
  const rise = height - zero[2];
  const level = Math.sqrt(slant * slant - rise * rise);
  return [zero[0] + level * Math.sin(radians(side)), zero[1] - level * Math.cos(radians(side)), height];
}

/** Full angle of something of a size seen square on from a distance, in degrees. */
export const seen = (width: number, distance: number): number => degrees(2 * Math.atan(width / 2 / distance));

/** Full angle of a ball, in degrees. */
export const seenBall = (diameter: number, distance: number): number =>
  degrees(2 * Math.asin(diameter / 2 / distance));

/** Luminous exposure of an f-number, in lx s. */
export const exposureOf = (f: number, iso: number, c = 250): number => (c * f * f) / iso;

/** The f-number of a luminous exposure. */
export const fNumberOf = (exposure: number, iso: number, c = 250): number => Math.sqrt((exposure * iso) / c);

/** Stops by which a is more than b. */
export const stopsOver = (a: number, b: number): number => Math.log2(a / b);

/** A flat lamp: a disc of a diameter or a rectangle, its centre, the way it shines. */
export interface FlatLamp {
  readonly at: Triple;
  readonly axis: Triple;
  readonly width: number;
  /** Null for a disc. */
  readonly height: number | null;
}

const cuts = 120;

/**
 * What a flat receptor that looks along `normal` gets from a lamp of luminance 1, in sr: the lamp cut into small
 * squares, each by cosine at the lamp, cosine at the receptor and inverse square. `beam` weighs by the cosine at the
 * lamp; `dome` takes (1 + cos) / 2 at the receptor instead of the cosine; squares that are `hidden` give nothing.
 */
export function gathered(
  lamp: FlatLamp,
  at: Triple,
  normal: Triple,
  beam: (cosine: number) => number = () => 1,
  dome = false,
  hidden: (piece: Triple) => boolean = () => false,
): number {
  const [ax, ay] = lamp.axis;
  const level = Math.sqrt(ax * ax + ay * ay);
  const side: Triple = level < 1e-9 ? [1, 0, 0] : [-ay / level, ax / level, 0];
  const up: Triple = [
    lamp.axis[1] * side[2] - lamp.axis[2] * side[1],
    lamp.axis[2] * side[0] - lamp.axis[0] * side[2],
    lamp.axis[0] * side[1] - lamp.axis[1] * side[0],
  ];
  const tall = lamp.height ?? lamp.width;
  const area = (lamp.width * tall) / (cuts * cuts);
  let sum = 0;
  for (let i = 0; i < cuts; i++) {
    for (let j = 0; j < cuts; j++) {
      const u = ((i + 0.5) / cuts - 0.5) * lamp.width;
      const v = ((j + 0.5) / cuts - 0.5) * tall;
      if (lamp.height === null && u * u + v * v > (lamp.width * lamp.width) / 4) continue;
      const piece: Triple = [
        lamp.at[0] + u * side[0] + v * up[0],
        lamp.at[1] + u * side[1] + v * up[1],
        lamp.at[2] + u * side[2] + v * up[2],
      ];
      if (hidden(piece)) continue;
      const ray = minus(piece, at);
      const d = size(ray);
      const out = -dot(ray, lamp.axis) / d;
      const facing = dot(ray, normal) / d;
      const taken = dome ? (1 + facing) / 2 : Math.max(0, facing);
      if (out > 0) sum += (area * out * taken * beam(out)) / (d * d);
    }
  }
  return sum;
}

/** The same for a meter on the lamp's axis that looks at it. */
export function gatheredOnAxis(lamp: FlatLamp, distance: number): number {
  const [x, y, z] = lamp.axis;
  const at: Triple = [lamp.at[0] + x * distance, lamp.at[1] + y * distance, lamp.at[2] + z * distance];
  return gathered(lamp, at, [-x, -y, -z]);
}

/** What a grid lets through at a cosine off the axis; `full` is the whole angle to nothing, in degrees. */
export function gridded(full: number): (cosine: number) => number {
  const most = Math.tan(radians(full / 2));
  return (cosine) => Math.max(0, 1 - Math.sqrt(Math.max(0, 1 - cosine * cosine)) / cosine / most);
}

/** The exact f-number of a place in the series of third stops: 0 is f/1, 18 is f/8, 21 is f/11, 24 is f/16. */
export const thirds = (third: number): number => Math.exp((third / 6) * Math.LN2);

/** Stops lost by focusing at a distance along the axis: 2 log2(1 + m). */
export const closeLoss = (focal: number, distance: number): number =>
  2 * Math.log2(1 + focal / (distance - focal));
