import { dot, subtract } from "../../math/vector.js";
import { farLimit, nearLimit } from "../../physics/depth-of-field.js";
import type { SceneCamera, SceneSubject } from "../../scene/types.js";
import { inFrame } from "../geometry/frame.js";
import { closeFocus } from "../light/close-focus.js";
import { apertureAtLeast } from "../say/nominal.js";
import { sayCentimetres } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";
import { whose } from "./set-top-words.js";

/** How far a depth lies outside what is sharp at an f-number, m; 0 inside. */
function outside(camera: SceneCamera, focal: number, fNumber: number, focus: number, depth: number): number {
  const near = nearLimit(focal, fNumber, camera.circleOfConfusion, focus) ?? focus;
  const far = farLimit(focal, fNumber, camera.circleOfConfusion, focus);
  return Math.max(0, near - depth, far === undefined ? 0 : depth - far);
}

/** The first aperture of the series, from the set one on, at which a depth is sharp; null up to f/22. */
function apertureFor(
  camera: SceneCamera,
  focal: number,
  set: number,
  focus: number,
  depth: number,
): string | null {
  for (let n = set; n < 23; n *= 1.122_462_048_309_373) {
    const row = apertureAtLeast(n);
    if (row !== null && row.exact < 23 && outside(camera, focal, row.exact, focus, depth) === 0)
      return row.text;
  }
  return null;
}

function depthOf(camera: SceneCamera, subject: SceneSubject): number {
  return dot(subtract(subject.face, camera.at), camera.forward);
}

/** A face is not in the depth of field. */
export const outOfFocus: Rule = {
  code: "out-of-focus",
  thresholds: [],
  safety: false,
  page: {
    when: "A subject's face that is in the frame lies nearer or further than the depth of field at the set aperture, focus and circle of confusion.",
    means: "The face is visibly blurred.",
    todo: "Stop down, focus between the faces, turn the row square to the lens, or step back.",
    source:
      "Depth of field of a thin lens: Ray, Applied Photographic Optics (2002); Conrad, Depth of Field in Depth (2006).",
  },
  check: ({ scene }) => {
    const { camera } = scene;
    const focus = closeFocus(scene);
    if (camera === null || focus === null) return [];
    const { focalLength, aperture } = camera;
    if (focalLength === null || aperture === null) return [];
    return scene.subjects.flatMap((subject): RuleFinding[] => {
      if (!inFrame(camera, subject.face)) return [];
      const depth = depthOf(camera, subject);
      const off = outside(camera, focalLength, aperture, focus.distance, depth);
      if (!(off > 1e-9)) return [];
      const stop = apertureFor(camera, focalLength, aperture, focus.distance, depth);
      const down = stop === null ? "" : `Stop down to ${stop}, or `;
      return [
        {
          severity: "stop",
          message: `The face of ${whose(subject)} is ${sayCentimetres(off)} outside the depth of field.`,
          remedy: `${down}${stop === null ? "Focus" : "focus"} between the faces, or step back.`,
          about: subject.name === "" ? null : subject.name,
        },
      ];
    });
  },
};
