import type { SceneRoom } from "../scene/types.js";
import type { Occluder } from "./hiding/occluder.js";
import type { ShadedSource } from "./hiding/shaded.js";

/**
 * What can hide a source from a meter in the room: everything, but floor, ceiling and walls only where the source does
 * not lie wholly inside the room.
 */
export function occludersFor(
  occluders: readonly Occluder[],
  room: SceneRoom | null,
  { centre, bound }: Pick<ShadedSource, "centre" | "bound">,
): readonly Occluder[] {
  if (room === null) return occluders;
  const [x, y, z] = centre;
  const inside =
    x - bound >= room.left &&
    x + bound <= room.right &&
    y - bound >= room.front &&
    y + bound <= room.back &&
    z - bound >= 0 &&
    z + bound <= room.height;
  return inside ? occluders.filter(isInRoom) : occluders;
}

const isInRoom = (occluder: Occluder): boolean => occluder.kind !== "polygon" || !occluder.shell;
