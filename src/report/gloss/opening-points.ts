import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Source } from "../../scene/types.js";

/** How far from the middle of an opening its outer points are looked at, as a share of the way to the rim. */
const OUT = 0.95;

/** The middle of an opening and eight points near its rim: along its width and height, or round it. */
export function openingPoints({ shape, centre, across, along }: Source): readonly Vec3[] {
  const [width, height] = halves(shape);
  const round = shape.kind !== "rectangle";
  const points: Vec3[] = [centre];
  for (let k = 0; k < 8; k += 1) {
    const turn = (k * Math.PI) / 4;
    const [c, s] = round
      ? [Math.cos(turn), Math.sin(turn)]
      : [Math.sign(Math.round(Math.cos(turn) * 10)), Math.sign(Math.round(Math.sin(turn) * 10))];
    points.push(addScaled(addScaled(centre, across, OUT * width * c), along, OUT * height * s));
  }
  return points;
}

function halves(shape: Source["shape"]): readonly [number, number] {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return [shape.radius, shape.radius];
    case "capsule":
      return [shape.radius, shape.length / 2];
    case "rectangle":
      return [shape.width / 2, shape.height / 2];
    default:
      return shape satisfies never;
  }
}
