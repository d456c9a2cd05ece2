import type { Source } from "../../scene/types.js";

/** The greatest straight measure of an opening: diameter, length, or the longer side of a rectangle, in metres. */
export function greatestSide(source: Source): number {
  const { shape } = source;
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return 2 * shape.radius;
    case "capsule":
      return shape.length;
    case "rectangle":
      return Math.max(shape.width, shape.height);
    default:
      return shape satisfies never;
  }
}

/** The diagonal of a rectangle, else the greatest measure, in metres. */
export function diagonalOf(source: Source): number {
  const { shape } = source;
  return shape.kind === "rectangle"
    ? Math.sqrt(shape.width * shape.width + shape.height * shape.height)
    : greatestSide(source);
}
