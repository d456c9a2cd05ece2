import { volume } from "../../src/model/make/sizes.js";
import type { RoomModel } from "../../src/model/types.js";
import { m, percent } from "../../src/units/make.js";
import { block } from "./models.js";

/** A surface of the room with a reflectance in per cent. */
export function reflect(
  part: "walls" | "ceiling" | "floor",
  share: number,
  more: object = {},
): RoomModel["parts"][number] {
  return block(part, null, { reflectance: percent(share), ...more } as never) as never;
}

/** A room of 5 x 7 x 3 m with these surfaces. */
export function roomOf(...parts: RoomModel["parts"]): RoomModel {
  return block("room", null, { size: volume(m(5), m(7), m(3)), parts }) as RoomModel;
}

/** One wall with a reflectance in per cent. */
export function reflectWall(
  name: "left" | "right" | "back" | "front",
  share: number,
): RoomModel["parts"][number] {
  return block("wall", name, { reflectance: percent(share) } as never) as never;
}
