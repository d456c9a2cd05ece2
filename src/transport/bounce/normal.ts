import type { Direction } from "./direction.js";
import { CAPSULE, POLYGON, STRIDE, type World } from "./world.js";

/** Writes the unit vector out of a thing at a point of its surface; `front` chooses a polygon's side. */
export function normalAt(
  world: World,
  thing: number,
  front: boolean,
  x: number,
  y: number,
  z: number,
  out: Direction,
): void {
  const d = world.data;
  const at = thing * STRIDE;
  const kind = world.kind[thing] as number;
  if (kind === POLYGON) {
    const sign = front ? 1 : -1;
    out.x = sign * (d[at] as number);
    out.y = sign * (d[at + 1] as number);
    out.z = sign * (d[at + 2] as number);
    return;
  }
  const px = x - (d[at] as number);
  const py = y - (d[at + 1] as number);
  const pz = z - (d[at + 2] as number);
  let nx = 0;
  let ny = 0;
  let nz = 0;
  if (kind === CAPSULE) {
    const ax = d[at + 3] as number;
    const ay = d[at + 4] as number;
    const az = d[at + 5] as number;
    const t = Math.min(d[at + 6] as number, Math.max(0, px * ax + py * ay + pz * az));
    nx = px - t * ax;
    ny = py - t * ay;
    nz = pz - t * az;
  } else {
    for (let k = at + 3; k < at + 12; k += 3) {
      const ix = d[k] as number;
      const iy = d[k + 1] as number;
      const iz = d[k + 2] as number;
      const e = ix * px + iy * py + iz * pz;
      nx += e * ix;
      ny += e * iy;
      nz += e * iz;
    }
  }
  const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
  out.x = nx / size;
  out.y = ny / size;
  out.z = nz / size;
}
