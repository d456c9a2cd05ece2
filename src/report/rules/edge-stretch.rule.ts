import { addScaled, angleBetween, dot, subtract } from "../../math/vector.js";
import type { SceneCamera, SceneSubject } from "../../scene/types.js";
import { inFrame } from "../geometry/frame.js";
import { ceilTo, fixed, floorTo } from "../say/number.js";
import { sayLength, sayPercent } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";
import { whose } from "./set-top-words.js";

/** By what share a small round thing is drawn out at a place of the picture: 1 / cos of its angle off the axis. */
function stretchAt(camera: SceneCamera, subject: SceneSubject): number {
  return 1 / Math.cos(angleBetween(camera.forward, subtract(subject.head, camera.at))) - 1;
}

/** How far back the camera has to go along its axis, m, rounded up to 5 cm and tried. */
function backFor(camera: SceneCamera, subject: SceneSubject, most: number): number {
  const sight = subtract(subject.head, camera.at);
  const depth = dot(sight, camera.forward);
  const off = Math.sqrt(Math.max(0, dot(sight, sight) - depth * depth));
  const back = ceilTo(off / Math.sqrt((1 + most) * (1 + most) - 1) - depth, 0.05);
  const moved = { ...camera, at: addScaled(camera.at, camera.forward, -back) };
  return stretchAt(moved, subject) <= most + 1e-9 ? back : back + 0.05;
}

/** A head near the edge of the picture is drawn out. */
export const edgeStretch: Rule = {
  code: "edge-stretch",
  thresholds: ["edge_stretch"],
  safety: false,
  page: {
    when: "A head in the picture lies so far off the lens axis that a ball there is drawn longer than wide by more than `edge_stretch` (8 %): 1 / cos of the angle, less 1.",
    means:
      "A plain lens draws straight lines straight, and pays with round things near the edge: outer heads grow wide.",
    todo: "The person nearer to the middle, or a longer lens from farther back.",
    source:
      "Geometry of central projection, exact for a small ball; the threshold is common practice, no source.",
  },
  check: ({ scene, recipe }) => {
    const { camera } = scene;
    if (camera === null) return [];
    const most = threshold(recipe, "edge_stretch");
    return scene.subjects.flatMap((subject): readonly RuleFinding[] => {
      if (!inFrame(camera, subject.head)) return [];
      const stretch = stretchAt(camera, subject);
      if (stretch <= most + 1e-9) return [];
      const back = backFor(camera, subject, most);
      const depth = dot(subtract(subject.head, camera.at), camera.forward);
      const lens =
        camera.focalLength === null
          ? ""
          : ` with a lens of ${fixed(floorTo((camera.focalLength * (depth + back) * 1000) / depth, 1), 0)} mm for about the same picture`;
      return [
        {
          severity: "note",
          message: `Near the edge of the picture the head of ${whose(subject)} is drawn out by ${sayPercent(stretch)}.`,
          remedy: `Move ${whose(subject)} towards the middle, or the camera ${sayLength(back)} farther back${lens}.`,
          about: subject.name === "" ? null : subject.name,
        },
      ];
    });
  },
};
