import type { Vec3 } from "../core/vector.js";
import { dot, length, subtract } from "../math/vector.js";
import type { SourceShape } from "./source-shape.js";

/**
 * Extent across an edge of a rectangle that faces it; the edge runs at an angle (radians) from the direction of the
 * width: w |sin| + h |cos|.
 */
export function rectangleExtent(width: number, height: number, edgeAngle: number): number {
  return width * Math.abs(Math.sin(edgeAngle)) + height * Math.abs(Math.cos(edgeAngle));
}

/** Extent of a source along a unit direction: how long its shadow is on a line along it. */
export function extentAlong(source: SourceShape, direction: Vec3): number {
  switch (source.kind) {
    case "sphere":
      return 2 * source.radius;
    case "disc": {
      const c = dot(source.normal, direction);
      return 2 * source.radius * Math.sqrt(Math.max(0, (1 - c) * (1 + c)));
    }
    case "capsule": {
      const axis = subtract(source.to, source.from);
      return 2 * source.radius + (length(axis) > 0 ? Math.abs(dot(axis, direction)) : 0);
    }
    case "polygon": {
      const places = source.corners.map((corner) => dot(corner, direction));
      return places.length > 0 ? Math.max(...places) - Math.min(...places) : 0;
    }
    default:
      return source satisfies never;
  }
}
