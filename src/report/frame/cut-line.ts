import type { Vec3 } from "../../core/vector.js";
import { dot, subtract } from "../../math/vector.js";
import type { Lens } from "./project.js";

/** Nothing nearer to the lens than this is drawn, m. */
const NEAR = 0.001;

/**
 * The part of a straight line that lies inside the frame, as shares of the way from `a` to `b`; null where none does.
 * Each side of the frame is a plane through the lens (Liang and Barsky, 1984).
 */
export function inFrameShare(lens: Lens, a: Vec3, b: Vec3): readonly [number, number] | null {
  const start = insideOf(lens, a);
  const end = insideOf(lens, b);
  let from = 0;
  let to = 1;
  for (let i = 0; i < start.length; i++) {
    const here = start[i] as number;
    const there = end[i] as number;
    if (here < 0 && there < 0) to = -1;
    else if (here < 0) from = Math.max(from, here / (here - there));
    else if (there < 0) to = Math.min(to, here / (here - there));
  }
  return to > from ? [from, to] : null;
}

/** How far a point lies inside of each of the planes. */
function insideOf({ camera, across, up, rise }: Lens, point: Vec3): readonly number[] {
  const sight = subtract(point, camera.at);
  const x = dot(sight, camera.right);
  const y = dot(sight, camera.up);
  const z = dot(sight, camera.forward);
  return [z - NEAR, z + across * x, z - across * x, (1 - rise) * z + up * y, (1 + rise) * z - up * y];
}
