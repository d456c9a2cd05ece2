import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Scene, Source } from "../../scene/types.js";
import { between } from "../geometry/crossing.js";
import { inFrame } from "../geometry/frame.js";
import { lightsOn } from "../plan.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Two per cent of the frame, in halves of it: what a slip of the camera shows. */
const MARGIN = 0.04;

/** The middle of an opening and its ends along width and height. */
function outline(source: Source): readonly Vec3[] {
  const { shape } = source;
  const [w, h] =
    shape.kind === "rectangle"
      ? [shape.width / 2, shape.height / 2]
      : shape.kind === "capsule"
        ? [shape.radius, shape.length / 2]
        : [shape.radius, shape.radius];
  const { centre, across, along } = source;
  return [
    centre,
    addScaled(centre, across, w),
    addScaled(centre, across, -w),
    addScaled(centre, along, h),
    addScaled(centre, along, -h),
  ];
}

function seen(scene: Scene, source: Source, margin: number): boolean {
  const { camera } = scene;
  if (camera === null) return false;
  return outline(source).some(
    (point) => inFrame(camera, point, margin) && between(scene, camera.at, point) === null,
  );
}

/** A lamp is in the picture. */
export const lampInFrame: Rule = {
  code: "lamp-in-frame",
  thresholds: [],
  safety: false,
  page: {
    when: "The middle of a lamp's opening or one of its ends lies inside the frame or within 2 % of it, and no piece of the set stands before it. A light with `role: practical` is meant to be seen. Stands, booms and cables are not looked at, nor is what the subject hides.",
    means: "The lamp is in the picture.",
    todo: "Move it out of the frame, hold the camera the other way, use a longer lens, or hide it.",
    source: "Projection through the lens, exact.",
  },
  check: ({ scene }) =>
    lightsOn(scene).flatMap((source): RuleFinding[] => {
      if (source.role === "practical" || !seen(scene, source, MARGIN)) return [];
      return [
        {
          severity: "stop",
          message: seen(scene, source, 0)
            ? `${source.name} is in the picture.`
            : `${source.name} is within 2 % of the edge of the picture.`,
          remedy: "Move it out of the frame, take a longer lens, or hide it behind the set or the subject.",
          about: source.name,
        },
      ];
    }),
};
