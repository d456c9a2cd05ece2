import type { Vec3 } from "../core/vector.js";
import { between, distance, length } from "../math/vector.js";
import type { Body } from "./types.js";

/** Middle of a body, and how far it reaches from there, m. */
export function ballRound(body: Body): readonly [Vec3, number] {
  switch (body.kind) {
    case "ellipsoid":
      return [body.centre, Math.max(...body.axes.map(length))];
    case "sphere":
      return [body.centre, body.radius];
    case "capsule":
      return [between(body.from, body.to, 0.5), distance(body.from, body.to) / 2 + body.radius];
    default:
      return body satisfies never;
  }
}
