import type { RoomModel } from "../model/types.js";
import type { MarkValue } from "../model/values.js";
import { assume, metres, placeOfBlock, report, type Site } from "./site.js";
import type { SceneRoom } from "./types.js";

/** How far below zero the room reaches along one axis, from the tapes of the two walls across it. */
function reach(site: Site, size: number, near: number | undefined, far: number | undefined): number {
  if (near !== undefined && far !== undefined && Math.abs(near + far - size) > 0.005) {
    report(site, "room.mark-twice", { one: metres(near), other: metres(far), size: metres(size) });
  }
  const tape = near ?? far;
  if (tape === undefined) return size / 2;
  if (tape > size) report(site, "room.mark-outside", { tape: metres(tape), size: metres(size) });
  return near ?? size - tape;
}

/** The room's walls in the scene's frame, which has its origin at the mark; null where its size is missing. */
export function roomSize(site: Site, room: RoomModel): SceneRoom | null {
  if (room.size === undefined) {
    site.place = placeOfBlock(room.origins);
    report(site, "scene.incomplete", { name: "room", what: "its size" });
    return null;
  }
  site.place = placeOfBlock(room.origins, "mark");
  const mark: MarkValue | undefined = room.mark;
  const width = room.size.width.value;
  const depth = room.size.depth.value;
  const left = reach(site, width, mark?.left?.value, mark?.right?.value);
  const front = reach(site, depth, mark?.front?.value, mark?.back?.value);
  if (room.ambient === undefined) assume(site, "room light", "0 lx", false);
  const sideways = mark?.left ?? mark?.right;
  const deep = mark?.front ?? mark?.back;
  if (mark === undefined) assume(site, "mark", "the middle of the room", true);
  else if (sideways === undefined || sideways === null) {
    assume(site, "mark", "half-way between the side walls", true);
  } else if (deep === undefined || deep === null) {
    assume(site, "mark", "half-way between front and back wall", true);
  }
  return {
    width,
    depth,
    height: room.size.height.value,
    left: -left,
    right: width - left,
    front: -front,
    back: depth - front,
    ambient: room.ambient?.value ?? 0,
  };
}
