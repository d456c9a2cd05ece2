/** A direction, or another three numbers, to be written into. */
export interface Direction {
  x: number;
  y: number;
  z: number;
}

/** A direction to be written into. */
export function emptyDirection(): Direction {
  return { x: 0, y: 0, z: 1 };
}

/** Writes the three numbers that stand at a place of a list. */
export function setTo(out: Direction, list: Float64Array, at: number): void {
  out.x = list[at] as number;
  out.y = list[at + 1] as number;
  out.z = list[at + 2] as number;
}

/** Writes the direction whose part along the unit vector n is `up`, turned about it by a share of a whole turn. */
export function turnedFrom(
  nx: number,
  ny: number,
  nz: number,
  up: number,
  share: number,
  out: Direction,
): void {
  const flat = Math.sqrt(Math.max(0, 1 - up * up));
  const a = flat * Math.cos(2 * Math.PI * share);
  const b = flat * Math.sin(2 * Math.PI * share);
  const level = Math.sqrt(nx * nx + ny * ny);
  const ux = level > 1e-9 ? -ny / level : 1;
  const uy = level > 1e-9 ? nx / level : 0;
  out.x = a * ux - b * nz * uy + up * nx;
  out.y = a * uy + b * nz * ux + up * ny;
  out.z = b * (nx * uy - ny * ux) + up * nz;
}
