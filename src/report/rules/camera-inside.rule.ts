import type { Vec3 } from "../../core/vector.js";
import { addScaled, normalise } from "../../math/vector.js";
import type { Scene, SceneCamera } from "../../scene/types.js";
import { alongFloor } from "../geometry/directions.js";
import { cameraIntrusion } from "../geometry/intrusion.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { freeFloor } from "./lamp-through-wall.rule.js";
import type { Rule } from "./rule.js";
import { insideWords } from "./who-is-met.js";

/** How fine, and how far, a free place is looked for along the floor, m. */
const STEP = 0.05;
const FURTHEST = 4;

/** The first free place of the camera further from the mark on the same line, in steps of 5 cm; null without one. */
function freed(scene: Scene, camera: SceneCamera, radius: number): number | null {
  const here = alongFloor([0, 0, 0], camera.at);
  const [x, y, z] = camera.at;
  const way = normalise([x, y, 0]) ?? [0, -1, 0];
  for (let i = Math.floor(here / STEP) + 1; i * STEP <= here + FURTHEST; i++) {
    const at: Vec3 = addScaled([0, 0, z], way, i * STEP);
    const { room } = scene;
    if (room !== null && freeFloor(room, at).some(([, free]) => free < radius)) return null;
    if (cameraIntrusion(scene, { ...camera, at }, radius) === null) return i * STEP;
  }
  return null;
}

/** The camera stands in a person or a piece of the set. */
export const cameraInside: Rule = {
  code: "camera-inside",
  thresholds: ["camera_body"],
  safety: false,
  page: {
    when: "The lens, or a ball of `camera_body` (5 cm) round it, reaches into a person or a solid piece of the set, or a flat, card, paper, panel or scrim goes through that ball. Lamps' stands do not count.",
    means: "It cannot be built, and the picture that is reported is one from within.",
    todo: "Look for a slip in a place or a distance; move the camera or the piece.",
    source: "None is needed; the size of a camera is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const { camera } = scene;
    if (camera === null) return [];
    const radius = threshold(recipe, "camera_body");
    const found = cameraIntrusion(scene, camera, radius);
    if (found === null) return [];
    const away = freed(scene, camera, radius);
    return [
      {
        severity: "stop",
        message: insideWords(scene, found, "The camera", "the camera"),
        remedy:
          away === null
            ? "Look for a slip in a place or a distance, and move one of the two."
            : `Look for a slip in a place or a distance; on the same line the lens is free from ${sayLength(away)} from the mark.`,
        about: null,
      },
    ];
  },
};
