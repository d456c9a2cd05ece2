import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { SceneRoom } from "../../scene/types.js";

/** A way along the room, as one says it. */
export interface WayOut {
  readonly words: string;
  /** How far, m. */
  readonly by: number;
}

const ways: readonly (readonly [words: string, way: Vec3])[] = [
  ["to camera-left", [-1, 0, 0]],
  ["to camera-right", [1, 0, 0]],
  ["towards the camera's side", [0, -1, 0]],
  ["away from the camera's side", [0, 1, 0]],
  ["up", [0, 0, 1]],
  ["down", [0, 0, -1]],
];

/** How fine, and how far at most, a free place is looked for, m. */
const STEP = 0.01;
const FURTHEST = 3;

/**
 * The shortest straight way by which something becomes free, in steps of a centimetre; of ways as short, sideways before
 * forward before upward. Null where none of up to 3 m does.
 *
 * @param isFree - Whether it is free when it is moved by a vector.
 */
export function shortestWay(
  isFree: (by: Vec3) => boolean,
  {
    level = false,
    from = 0,
  }: {
    /** True for what stays at its height. */
    readonly level?: boolean;
    /** What is known to be too little, m. */
    readonly from?: number;
  } = {},
): WayOut | null {
  const open = level ? ways.slice(0, 4) : ways;
  for (let i = Math.max(1, Math.floor(from / STEP)); i * STEP <= FURTHEST; i++) {
    const by = i / 100;
    for (const [words, way] of open) if (isFree(addScaled([0, 0, 0], way, by))) return { words, by };
  }
  return null;
}

/** Whether a place is in the room; without a room, above the floor. */
export function isInRoom(room: SceneRoom | null, [x, y, z]: Vec3): boolean {
  if (room === null) return z >= 0;
  return x >= room.left && x <= room.right && y >= room.front && y <= room.back && z >= 0 && z <= room.height;
}
