import type { RoomModel } from "../../model/types.js";

/** A wall by its side. */
export type WallSide = "left" | "right" | "front" | "back";

/** Whether a wall has a window or door, through which a lamp may shine from outside and things outside are seen. */
export function hasOpening(room: RoomModel | null, wall: WallSide): boolean {
  return room?.parts.some((part) => part.block === "opening" && part.wall === wall) ?? false;
}
