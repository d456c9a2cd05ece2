import { degrees } from "../../math/rotation.js";
import { floorShadowLength } from "../../physics/floor-shadow.js";
import type { Scene, Source } from "../../scene/types.js";
import { alongFloor, plainZero } from "../geometry/directions.js";
import { firstSubject } from "../plan.js";

/** The shadow of the first subject on a level floor. */
export interface FloorShadow {
  /** From the subject's place to the end of the shadow of its highest point, m. */
  readonly length: number | null;
  /** Where it falls seen from above, deg from away-from-camera, + to camera-right. */
  readonly direction: number | null;
  readonly reason: string | null;
}

/** Length and direction of the first subject's shadow from one light, walls and pieces of the set not considered. */
export function floorShadow(scene: Scene, source: Source): FloorShadow {
  const subject = firstSubject(scene);
  if (subject === null) return { length: null, direction: null, reason: "there is no subject" };
  if (subject.pose === "lying")
    return {
      length: null,
      direction: null,
      reason: "the subject lies, and its highest place is not over its mark",
    };
  const away = alongFloor(subject.place, source.centre);
  const x = subject.place[0] - source.centre[0];
  const y = subject.place[1] - source.centre[1];
  const direction = away < 1e-9 ? null : plainZero(degrees(Math.atan2(x, y)));
  const length = floorShadowLength(subject.top, away, source.centre[2]);
  return length === undefined
    ? {
        length: null,
        direction,
        reason: "the lamp is not above the top of the head, so the shadow has no end",
      }
    : { length, direction, reason: null };
}
