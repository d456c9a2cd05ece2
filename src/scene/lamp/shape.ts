import type { ShapeValue } from "../../model/values.js";
import type { Frame } from "../frame.js";
import type { Source } from "../types.js";

/** The lit opening of a lamp in metres. A tube that is no longer than wide is a sphere. */
export function lampShape(shape: ShapeValue): Source["shape"] {
  switch (shape.kind) {
    case "disc":
      return { kind: "disc", radius: shape.diameter.value / 2 };
    case "sphere":
      return { kind: "sphere", radius: shape.diameter.value / 2 };
    case "rectangle":
      return { kind: "rectangle", width: shape.width.value, height: shape.height.value };
    case "capsule": {
      const radius = shape.diameter.value / 2;
      const length = shape.length.value;
      return length > 2 * radius ? { kind: "capsule", length, radius } : { kind: "sphere", radius };
    }
    default:
      return shape satisfies never;
  }
}

/** Half the height of a lit opening as it hangs in the room, from its centre to its lowest point, m. */
export function halfHeight(shape: Source["shape"], axisUp: number, frame: Frame): number {
  switch (shape.kind) {
    case "sphere":
      return shape.radius;
    case "disc":
      return shape.radius * Math.sqrt(Math.max(0, 1 - axisUp * axisUp));
    case "rectangle":
      return (shape.width * Math.abs(frame.across[2]) + shape.height * Math.abs(frame.along[2])) / 2;
    case "capsule":
      return (shape.length / 2 - shape.radius) * Math.abs(frame.along[2]) + shape.radius;
    default:
      return shape satisfies never;
  }
}

/** The greatest half height that an opening can have however it hangs, m. */
export function greatestHalf(shape: Source["shape"]): number {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return shape.radius;
    case "rectangle":
      return Math.sqrt(shape.width * shape.width + shape.height * shape.height) / 2;
    case "capsule":
      return shape.length / 2;
    default:
      return shape satisfies never;
  }
}
