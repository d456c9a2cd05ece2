import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Beam } from "../../physics/beam.js";
import { rectangleSource, type SourceShape } from "../../physics/source-shape.js";
import type { Source } from "../types.js";

/** The lit opening of a source as the formulas of physics take it. */
export function sourceShape(
  source: Pick<Source, "shape" | "centre" | "axis" | "across" | "along">,
): SourceShape {
  const { shape, centre } = source;
  switch (shape.kind) {
    case "disc":
      return { kind: "disc", centre, normal: source.axis, radius: shape.radius };
    case "rectangle":
      return rectangleSource(centre, source.across, source.along, shape.width, shape.height);
    case "sphere":
      return { kind: "sphere", centre, radius: shape.radius };
    case "capsule": {
      const half = shape.length / 2 - shape.radius;
      const from: Vec3 = addScaled(centre, source.along, -half);
      return { kind: "capsule", from, to: addScaled(centre, source.along, half), radius: shape.radius };
    }
    default:
      return shape satisfies never;
  }
}

/** The beam of a source as the formulas of physics take it. */
export function sourceBeam(source: Pick<Source, "beam" | "across" | "along">): Beam {
  switch (source.beam.kind) {
    case "lambertian":
      return { kind: "lambert" };
    case "cosine-power":
      return { kind: "cosine-power", n: source.beam.exponent };
    case "grid":
      return { kind: "grid", cutoff: source.beam.cutoff };
    case "table":
      return { kind: "table", table: source.beam.table, across: source.across, along: source.along };
    default:
      return source.beam satisfies never;
  }
}
