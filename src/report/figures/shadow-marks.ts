import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { type Lens, pointInPicture, withinFrame } from "../frame/project.js";
import type { Report } from "../schema/report.js";
import { type AreaMark, area, type Mark, type Place } from "./drawing.js";
import { fromAbove, onSheet } from "./outlines.js";
import { extent } from "./pieces.js";

type Thrown = Report["thrown"];

/** A surface this low lies on the floor, m. */
const LOW = 0.02;

/** The shadows of people that lie on the floor or on what lies on it, seen from above. */
export function floorShadows({ shadows }: Thrown): readonly AreaMark[] {
  return shadows
    .filter(({ kind }) => kind === "subject")
    .flatMap(({ light, of, outlines }) =>
      outlines
        .filter(({ hole, ring }) => !hole && ring.every(([, , z]) => z < LOW))
        .map(({ ring }) =>
          area(
            "shadow",
            `shadow of ${of} by ${light}`,
            ring.map((place) => onSheet(fromAbove, place)),
          ),
        ),
    );
}

/** How much farther than all else shadows are drawn, as a share of what that takes, and at the least, m. */
const BEYOND = 0.4;
const LEAST_BEYOND = 1.5;

/** The shadows as far as the figure goes: a low lamp's would make all else too small to be read. */
export function shadowsNear(shadows: readonly AreaMark[], others: readonly Mark[]): readonly AreaMark[] {
  const places = extent(others);
  if (places.length === 0) return shadows;
  const bounds = [0, 1].map((axis) => {
    const along = places.map((place) => place[axis] as number);
    return [Math.min(...along), Math.max(...along)] as const;
  });
  const beyond = Math.max(LEAST_BEYOND, ...bounds.map(([least, most]) => BEYOND * (most - least)));
  return shadows.flatMap((shadow) => {
    let ring: readonly Vec3[] = shadow.outline.map(([x, y]) => [x, y, 0]);
    bounds.forEach(([least, most], axis) => {
      const normal: Vec3 = axis === 0 ? [1, 0, 0] : [0, 1, 0];
      ring = clipByPlane(ring, normal, least - beyond);
      ring = clipByPlane(ring, [-normal[0], -normal[1], 0], -most - beyond);
    });
    return ring.length < 3 ? [] : [{ ...shadow, outline: ring.map(([x, y]): Place => [x, y]) }];
  });
}

/**
 * The outlines of people's shadows as the lens sees them; the middle of each soft edge.
 *
 * @param put - From the picture, in halves of the frame, to the paper.
 */
export function shadowsInPicture(
  lens: Lens,
  { shadows }: Thrown,
  margin: number,
  put: (place: Place) => Place,
): readonly Mark[] {
  return shadows
    .filter(({ kind }) => kind === "subject")
    .flatMap(({ light, of, outlines }) =>
      outlines.flatMap(({ ring }) => {
        const seen = ring.map((place) => pointInPicture(lens, place as Vec3));
        if (!seen.every((place) => place !== null)) return [];
        return withinFrame(seen, margin).map((part) =>
          area("soft", `shadow of ${of} by ${light}`, part.map(put)),
        );
      }),
    );
}
