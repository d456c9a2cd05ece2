import type { Scene, SceneSubject } from "../../scene/types.js";
import { edgeForVisible, lensForVisible, type SetTop } from "../geometry/set-top.js";
import { ceilTo } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";

/** What the subject is called in a sentence. */
export function whose(subject: SceneSubject): string {
  return subject.name === "" ? "the subject" : subject.name;
}

/**
 * Ways to bring the visible top of the set to a height in the subject's plane: how high the set must end where it
 * stands, and, where that is within reach, how high the lens.
 */
export function raiseWords(scene: Scene, top: SetTop, wanted: number): string {
  const lens = scene.camera?.at[2] ?? 0;
  const edge = ceilTo(edgeForVisible(top, lens, wanted), 0.01);
  const isWall = ownerOf(top.piece).startsWith("wall ");
  const base = isWall
    ? "a tighter crop, since the wall ends at the ceiling"
    : `a set that ends at ${sayLength(edge)} where ${top.piece} stands`;
  const higher = lensForVisible(top, wanted);
  if (higher === null || higher <= lens || higher > lens + 0.6) return base;
  return `${base}, or the lens at ${sayLength(ceilTo(higher, 0.01))}`;
}
