import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import type { Body, Source } from "../../scene/types.js";
import type { Place } from "./drawing.js";

/** A way of looking from far away: every place of the scene has its place on the paper, straight lines stay straight. */
export interface Sheet {
  /** The place of the scene at the paper's zero. */
  readonly zero: Vec3;
  /** Unit vectors that run to the right and up on the paper. */
  readonly right: Vec3;
  readonly up: Vec3;
}

/** From above, the camera's side at the bottom. */
export const fromAbove: Sheet = { zero: [0, 0, 0], right: [1, 0, 0], up: [0, 1, 0] };
/** From camera-right, level, the camera's side on the left. */
export const fromRight: Sheet = { zero: [0, 0, 0], right: [0, 1, 0], up: [0, 0, 1] };

/** Where a place of the scene lies on the paper. */
export function onSheet({ zero, right, up }: Sheet, place: Vec3): Place {
  const from = subtract(place, zero);
  return [dot(from, right), dot(from, up)];
}

/** Corners of a drawn round. */
const CORNERS = 48;
const turnsOf = (corners: number): readonly number[] =>
  Array.from({ length: corners }, (_, i) => (2 * Math.PI * i) / corners);
const turns = turnsOf(CORNERS);

/** A circle as so many corners. */
export const circle = ([x, y]: Place, radius: number, corners = CORNERS): readonly Place[] =>
  turnsOf(corners).map((t) => [x + radius * Math.cos(t), y + radius * Math.sin(t)]);

/** A stadium: what two equal circles and the lines that touch both enclose. */
function stadium(a: Place, b: Place, radius: number): readonly Place[] {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const long = Math.sqrt(x * x + y * y);
  if (long < 1e-9) return circle(a, radius);
  const start = Math.atan2(y, x) - Math.PI / 2;
  const half = Array.from({ length: CORNERS / 2 + 1 }, (_, i) => start + (2 * Math.PI * i) / CORNERS);
  return [
    ...half.map((t): Place => [b[0] + radius * Math.cos(t), b[1] + radius * Math.sin(t)]),
    ...half.map((t): Place => [a[0] - radius * Math.cos(t), a[1] - radius * Math.sin(t)]),
  ];
}

/**
 * The outline of a body seen from far away. Of an ellipsoid with semi-axes a, b, c: the ellipse whose width in the
 * direction u is the root of (a.u)^2 + (b.u)^2 + (c.u)^2.
 */
export function bodyOutline(sheet: Sheet, body: Body): readonly Place[] {
  switch (body.kind) {
    case "sphere":
      return circle(onSheet(sheet, body.centre), body.radius);
    case "capsule":
      return stadium(onSheet(sheet, body.from), onSheet(sheet, body.to), body.radius);
    case "ellipsoid": {
      const [x, y] = onSheet(sheet, body.centre);
      const flat = body.axes.map((axis): Place => [dot(axis, sheet.right), dot(axis, sheet.up)]);
      return turns.map((t) => {
        const u = Math.cos(t);
        const v = Math.sin(t);
        let px = 0;
        let py = 0;
        let size = 0;
        for (const [ax, ay] of flat) {
          const part = ax * u + ay * v;
          px += part * ax;
          py += part * ay;
          size += part * part;
        }
        const width = Math.sqrt(size);
        return width > 0 ? [x + px / width, y + py / width] : [x, y];
      });
    }
    default:
      return body satisfies never;
  }
}

/** The outline of a lamp's lit opening, or of any opening of that shape, seen from far away. */
export function openingOutline(
  sheet: Sheet,
  { shape, centre, across, along }: Pick<Source, "shape" | "centre" | "across" | "along">,
): readonly Place[] {
  const corner = (s: number, t: number): Place =>
    onSheet(sheet, addScaled(addScaled(centre, across, s), along, t));
  switch (shape.kind) {
    case "sphere":
      return circle(onSheet(sheet, centre), shape.radius);
    case "capsule": {
      const half = shape.length / 2 - shape.radius;
      return stadium(corner(0, -half), corner(0, half), shape.radius);
    }
    case "disc":
      return turns.map((t) => corner(shape.radius * Math.cos(t), shape.radius * Math.sin(t)));
    case "rectangle": {
      const { width, height } = shape;
      return [
        corner(-width / 2, -height / 2),
        corner(width / 2, -height / 2),
        corner(width / 2, height / 2),
        corner(-width / 2, height / 2),
      ];
    }
    default:
      return shape satisfies never;
  }
}
