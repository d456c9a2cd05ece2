import type { Vec3 } from "../core/vector.js";
import { clipByPlane } from "../math/polygon.js";
import { dot, scale } from "../math/vector.js";
import type { Beam } from "./beam.js";
import { beamOpening } from "./beam-opening.js";
import { openingReading } from "./opening-reading.js";
import { sourceOutline } from "./source-outline.js";
import { type DiscSource, lowestPoint, type PolygonSource } from "./source-shape.js";

/** Corners for the outline of a disc that the surface's horizon cuts as well as the card. */
const OUTLINE = 180;

/** What a point of a surface gets past a card, in sr per unit of luminance: in all, what is seen, what the card takes. */
export interface PartedLight {
  readonly whole: () => number;
  readonly part: () => number;
  readonly hidden: () => number;
}

/**
 * Light of a flat source with a beam on a point of a surface, parted by a plane through the point, as `openingReading`
 * sums it.
 *
 * @param n - unit vector out of the surface
 * @param m - out of the plane that parts the light, to the side that is seen
 */
export function partedLight(
  source: DiscSource | PolygonSource,
  beam: Beam,
  point: Vec3,
  n: Vec3,
  m: Vec3,
): PartedLight {
  // From the points of one opening a table is looked into at nearly one angle: there its luminance is even.
  const round = beam.kind === "table" ? ({ kind: "lambert" } as const) : beam;
  const opening = beamOpening(aboveHorizon(source, point, n), round);
  const reading = (keep?: Vec3): number =>
    openingReading(opening, point[0], point[1], point[2], n[0], n[1], n[2], false, keep);
  return { whole: () => reading(), part: () => reading(m), hidden: () => reading(scale(m, -1)) };
}

function aboveHorizon(source: DiscSource | PolygonSource, point: Vec3, n: Vec3): DiscSource | PolygonSource {
  const level = dot(n, point);
  if (lowestPoint(source, n) >= level) return source;
  const corners = clipByPlane(sourceOutline(source, point, OUTLINE), n, level);
  return { kind: "polygon", corners, normal: source.normal };
}
