import type { Vec3 } from "../../core/vector.js";
import { scale } from "../../math/vector.js";
import type { Body, Scene, SceneCamera, SceneSubject } from "../../scene/types.js";
import { type SeenBody, seenFrom } from "../geometry/outline.js";
import { partName } from "../plan.js";

/** A side of the picture. */
export type Side = "left" | "right" | "top";

/** The head of a subject as the lens sees it, turned to one side of the picture; or why there is none. */
export interface HeadOutline {
  readonly camera: SceneCamera;
  readonly head: Extract<Body, { kind: "ellipsoid" }>;
  readonly seen: SeenBody;
}

/** The way to a side of the picture, as a unit vector. */
function wayTo(camera: SceneCamera, side: Side): Vec3 {
  if (side === "top") return camera.up;
  return side === "right" ? camera.right : scale(camera.right, -1);
}

/** The outline of a head from the lens; a text says why it cannot be had. */
export function headOutline(scene: Scene, subject: SceneSubject, side: Side): HeadOutline | string {
  const { camera } = scene;
  if (camera === null) return "there is no camera to see an outline";
  const name = partName(scene, subject, "head");
  const head = scene.bodies.find((body) => body.name === name);
  if (head?.kind !== "ellipsoid") return "the subject has no head";
  const seen = seenFrom(head, camera.at, wayTo(camera, side));
  return seen === null ? "the lens is too near to see an outline" : { camera, head, seen };
}

/** A side in words: `the left of the head`. */
export function sayHeadSide(side: Side): string {
  return side === "top" ? "the top of the head" : `the ${side} of the head`;
}
