import { COVER } from "./patch-grid.js";
import type { Place } from "./place.js";
import type { World } from "./world.js";

/** Boxes along the axes round what may lie on a surface: least and greatest x, y, z of each. */
export interface Covers {
  readonly count: number;
  readonly boxes: Float64Array;
}

/**
 * What may cover parts of a thing: whatever comes near its box. A closed box counts by the box round all its sides,
 * since a place may be inside of it.
 */
export function coversOf(world: World, thing: number): Covers {
  const found: number[] = [];
  const b = world.boxes;
  let group = -1;
  for (let i = 0; i < world.count; i++) {
    if (i === thing || world.present[i] !== 1 || world.inShell[i] === 1) continue;
    if (!near(b, 6 * i, 6 * thing)) continue;
    if (world.closed[i] === 1 && group >= 0 && i - group < 6) continue;
    if (world.closed[i] === 1) group = i;
    const at = found.length;
    for (let k = 0; k < 6; k++) found.push(b[6 * i + k] as number);
    if (world.closed[i] !== 1) continue;
    // The other sides of the same box follow each other.
    for (let j = Math.max(0, i - 5); j < Math.min(world.count, i + 6); j++) {
      if (world.closed[j] !== 1 || j === thing) continue;
      for (let k = 0; k < 6; k += 2) {
        found[at + k] = Math.min(found[at + k] as number, b[6 * j + k] as number);
        found[at + k + 1] = Math.max(found[at + k + 1] as number, b[6 * j + k + 1] as number);
      }
    }
  }
  return { count: found.length / 6, boxes: Float64Array.from(found) };
}

function near(b: Float64Array, i: number, j: number): boolean {
  for (let k = 0; k < 6; k += 2) {
    if ((b[i + k] as number) > (b[j + k + 1] as number) + COVER) return false;
    if ((b[i + k + 1] as number) < (b[j + k] as number) - COVER) return false;
  }
  return true;
}

/** True for a place in or next to one of the boxes. */
export function underCover({ count, boxes }: Covers, { x, y, z }: Place): boolean {
  for (let k = 0; k < 6 * count; k += 6) {
    if (
      x > (boxes[k] as number) - COVER &&
      x < (boxes[k + 1] as number) + COVER &&
      y > (boxes[k + 2] as number) - COVER &&
      y < (boxes[k + 3] as number) + COVER &&
      z > (boxes[k + 4] as number) - COVER &&
      z < (boxes[k + 5] as number) + COVER
    )
      return true;
  }
  return false;
}
