import type { ShadedSource } from "../hiding/shaded.js";
import { insideRoom } from "./first-hit.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/** What may stand before a source, with a sphere round each and, for sheets, the source's distance from its plane. */
export interface Suspects {
  readonly count: number;
  readonly thing: Int32Array;
  /** Centre and radius of a sphere round each, four numbers. */
  readonly ball: Float64Array;
  /** 1 for sheets; the signed distance of the source's centre from the sheet's plane. */
  readonly sheet: Uint8Array;
  readonly off: Float64Array;
}

/** Finds what may stand before a source; the room's own surfaces only for one that is not wholly inside. */
export function suspectsOf(world: World, source: ShadedSource): Suspects {
  const thing: number[] = [];
  const ball: number[] = [];
  const sheet: number[] = [];
  const off: number[] = [];
  const [cx, cy, cz] = source.centre;
  const inRoom = world.room !== null && wellInside(world.room, source);
  for (let i = 0; i < world.count; i++) {
    if (world.present[i] !== 1 || (inRoom && world.inShell[i] === 1)) continue;
    const at = i * STRIDE;
    const d = world.data;
    thing.push(i);
    ball.push(...ballOf(d, at, world.kind[i] as number));
    const flat = world.kind[i] === POLYGON;
    sheet.push(flat ? 1 : 0);
    off.push(
      flat
        ? (d[at] as number) * cx +
            (d[at + 1] as number) * cy +
            (d[at + 2] as number) * cz -
            (d[at + 3] as number)
        : 0,
    );
  }
  return {
    count: thing.length,
    thing: Int32Array.from(thing),
    ball: Float64Array.from(ball),
    sheet: Uint8Array.from(sheet),
    off: Float64Array.from(off),
  };
}

function wellInside(room: Float64Array, { centre, bound }: ShadedSource): boolean {
  const [x, y, z] = centre;
  return (
    insideRoom(room, x - bound, y - bound, z - bound) && insideRoom(room, x + bound, y + bound, z + bound)
  );
}

/** Centre and radius of a sphere round a thing. */
function ballOf(d: Float64Array, at: number, kind: number): readonly [number, number, number, number] {
  const get = (k: number): number => d[at + k] as number;
  if (kind === POLYGON) {
    const a = get(13) / 2;
    const b = get(14) / 2;
    return [
      get(4) + a * get(7) + b * get(10),
      get(5) + a * get(8) + b * get(11),
      get(6) + a * get(9) + b * get(12),
      Math.sqrt(a * a + b * b),
    ];
  }
  if (kind === CAPSULE) {
    const half = get(6) / 2;
    return [get(0) + half * get(3), get(1) + half * get(4), get(2) + half * get(5), half + get(7)];
  }
  let most = 0;
  for (let k = 12; k < 21; k += 3) {
    most = Math.max(most, get(k) * get(k) + get(k + 1) * get(k + 1) + get(k + 2) * get(k + 2));
  }
  return [get(0), get(1), get(2), Math.sqrt(most)];
}

/**
 * Lists the suspects that may hide some of the source from some of a ball of radius `r` round a place; gives how many.
 * `self` is the thing the place lies on.
 */
export function suspectsAt(
  world: World,
  suspects: Suspects,
  source: ShadedSource,
  px: number,
  py: number,
  pz: number,
  r: number,
  self: number,
  out: Int32Array,
): number {
  const { thing, ball, sheet, off } = suspects;
  const d = world.data;
  const gx = source.centre[0] - px;
  const gy = source.centre[1] - py;
  const gz = source.centre[2] - pz;
  const far = gx * gx + gy * gy + gz * gz;
  const wide = Math.max(r, source.bound);
  let count = 0;
  for (let k = 0; k < suspects.count; k++) {
    const i = thing[k] as number;
    if (i === self) continue;
    const x = (ball[4 * k] as number) - px;
    const y = (ball[4 * k + 1] as number) - py;
    const z = (ball[4 * k + 2] as number) - pz;
    const share = far > 0 ? Math.min(1, Math.max(0, (x * gx + y * gy + z * gz) / far)) : 0;
    const ex = x - share * gx;
    const ey = y - share * gy;
    const ez = z - share * gz;
    const reach = (ball[4 * k + 3] as number) + wide;
    if (ex * ex + ey * ey + ez * ez > reach * reach) continue;
    if (sheet[k] === 1) {
      const at = i * STRIDE;
      const here =
        (d[at] as number) * px +
        (d[at + 1] as number) * py +
        (d[at + 2] as number) * pz -
        (d[at + 3] as number);
      const there = off[k] as number;
      if ((here > r && there > source.bound) || (here < -r && there < -source.bound)) continue;
    }
    out[count++] = i;
  }
  return count;
}
