/** A chromaticity in the CIE 1931 diagram. */
export interface Chromaticity {
  readonly x: number;
  readonly y: number;
}

/** A chromaticity in the CIE 1960 uniform-chromaticity-scale diagram, in which colour temperatures are defined. */
export interface Uv {
  readonly u: number;
  readonly v: number;
}

/**
 * CIE 1960 u, v of a CIE 1931 chromaticity: u = 4x / (-2x + 12y + 3), v = 6y / (-2x + 12y + 3) (CIE 15).
 *
 * @param colour - A chromaticity of a real colour (y above 0).
 */
export function uvFromXy(colour: Chromaticity): Uv {
  const below = -2 * colour.x + 12 * colour.y + 3;
  return { u: (4 * colour.x) / below, v: (6 * colour.y) / below };
}

/**
 * CIE 1931 chromaticity of CIE 1960 u, v, the inverse of `uvFromXy`: x = 3u / (2u - 8v + 4), y = 2v / (2u - 8v + 4).
 *
 * @param colour - Coordinates of a real colour.
 */
export function xyFromUv(colour: Uv): Chromaticity {
  const below = 2 * colour.u - 8 * colour.v + 4;
  return { x: (3 * colour.u) / below, y: (2 * colour.v) / below };
}
