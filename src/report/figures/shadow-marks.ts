import type { Vec3 } from "../../core/vector.js";
import { type Lens, pointInPicture, withinFrame } from "../frame/project.js";
import type { Report } from "../schema/report.js";
import { area, type Mark, type Place } from "./drawing.js";
import { fromAbove, onSheet } from "./outlines.js";

type Thrown = Report["thrown"];

/** A surface this low lies on the floor, m. */
const LOW = 0.02;

/** The shadows of people that lie on the floor or on what lies on it, seen from above. */
export function floorShadows({ shadows }: Thrown): readonly Mark[] {
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
