import { dot, subtract } from "../../math/vector.js";
import type { Scene, SceneSubject } from "../../scene/types.js";
import { setTop } from "../geometry/set-top.js";
import type { Lens } from "./project.js";

/** How high a hand may go. */
export interface HandLimit {
  /** Above the floor, m. */
  readonly height: number;
  /** What ends there: the picture, or the piece of the set behind. */
  readonly by: "frame" | "set";
  /** The piece; null for the frame. */
  readonly piece: string | null;
}

/**
 * The height at which the upright line through a subject's head leaves the top of the picture, m: the plane through
 * the lens and that edge of the frame meets it. Null where it never does.
 */
export function frameTop({ camera, up, rise }: Lens, subject: SceneSubject): number | null {
  const [x, y] = subject.head;
  const foot = subtract([x, y, 0], camera.at);
  // up (foot + z e) . u = (1 + rise) (foot + z e) . forward, solved for z.
  const edge = 1 + rise;
  const slope = up * camera.up[2] - edge * camera.forward[2];
  const start = up * dot(foot, camera.up) - edge * dot(foot, camera.forward);
  return slope > 1e-9 ? -start / slope : null;
}

/**
 * The highest hand, straight above a subject's head, that stays inside the picture and before the set as the lens sees
 * it. Null where neither ends.
 */
export function handLimit(lens: Lens, scene: Scene, subject: SceneSubject): HandLimit | null {
  const top = setTop(scene, subject);
  const frame = frameTop(lens, subject);
  if (top !== null && (frame === null || top.visible < frame))
    return { height: top.visible, by: "set", piece: top.piece };
  return frame === null ? null : { height: frame, by: "frame", piece: null };
}
