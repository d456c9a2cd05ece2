import type { Scene } from "../../scene/types.js";
import { frameTop } from "../frame/hands.js";
import { lensOf } from "../frame/project.js";
import { setTop } from "./set-top.js";

/** Set that the picture shows above a head. */
export interface Headroom {
  /** m; negative where the set or the picture ends below the top of the head. */
  readonly metres: number | null;
  readonly reason: string | null;
}

/**
 * The least room between the top of a head and the visible top of the set behind it, or the top of the picture where that
 * is lower, over all subjects.
 */
export function headroom(scene: Scene): Headroom {
  if (scene.camera === null) return { metres: null, reason: "there is no camera" };
  if (scene.subjects.length === 0) return { metres: null, reason: "there is no subject" };
  const lens = lensOf(scene.camera);
  let least: number | null = null;
  for (const subject of scene.subjects) {
    const top = setTop(scene, subject);
    if (top === null) continue;
    const frame = lens === null ? null : frameTop(lens, subject);
    const room = Math.min(top.visible, frame ?? top.visible) - subject.top;
    least = least === null ? room : Math.min(least, room);
  }
  return {
    metres: least,
    reason: least === null ? "no piece of the set stands behind a head" : null,
  };
}
