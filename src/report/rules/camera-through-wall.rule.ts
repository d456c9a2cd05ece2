import { alongFloor } from "../geometry/directions.js";
import { ceilTo, fixed, floorTo } from "../say/number.js";
import { sayCentimetres, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { freeFloor } from "./lamp-through-wall.rule.js";
import type { Rule } from "./rule.js";

/** There is no room behind the camera. */
export const cameraThroughWall: Rule = {
  code: "camera-through-wall",
  thresholds: ["camera_room"],
  safety: false,
  page: {
    when: "The lens is nearer to the front wall than `camera_room` (70 cm), or beyond a wall.",
    means: "There is no room for the camera and the person behind it.",
    todo: "Go nearer with a shorter lens, which changes the perspective; or turn the set in the room.",
    source: "Common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const { camera, room } = scene;
    if (camera === null || room === null) return [];
    const needed = threshold(recipe, "camera_room");
    const worst = freeFloor(room, camera.at)
      .map(([wall, free]) => ({
        wall,
        free,
        needed: wall === "front" ? needed : 0,
      }))
      .filter((row) => row.free < row.needed - 1e-9)
      .sort((a, b) => a.free - a.needed - (b.free - b.needed))[0];
    if (worst === undefined) return [];
    const away = alongFloor([0, 0, 0], camera.at);
    const atMark = freeFloor(room, [0, 0, 0]).find(([wall]) => wall === worst.wall)?.[1] ?? 0;
    const share = (atMark - worst.needed) / (atMark - worst.free);
    const there = floorTo(away * share, 0.01);
    const lens =
      camera.focalLength === null || !(there > 0.3)
        ? ""
        : ` with ${fixed(floorTo(((camera.focalLength * there) / away) * 1000, 1), 0)} mm for about the same frame`;
    const remedy =
      there > 0.3
        ? `Put the lens at ${sayLength(there)} from the mark${lens}; the perspective changes with the distance.`
        : "Turn the set in the room.";
    const message =
      worst.free < 0
        ? `The camera is ${sayCentimetres(-worst.free)} beyond the ${worst.wall} wall.`
        : `The lens is ${sayCentimetres(worst.free)} from the ${worst.wall} wall; behind it ${sayLength(ceilTo(worst.needed, 0.01))} are needed.`;
    return [{ severity: "stop", message, remedy, about: null }];
  },
};
