import { solveRadiosity } from "./radiosity.js";
import { viewFactorOffsetParallel } from "./view-factor-parallel.js";
import { viewFactorOffsetPerpendicular } from "./view-factor-perpendicular.js";

/** Mean values over the faces of a cube in which one face emits; the four side faces are alike. */
export interface CubeFaces {
  readonly emitter: number;
  readonly opposite: number;
  readonly side: number;
}

/** A face of the cube: the axis it is square to, and the end of that axis. */
interface Face {
  readonly axis: 0 | 1 | 2;
  readonly end: 0 | 1;
}

/** The emitter is first, the face opposite it second. */
const FACES: readonly Face[] = [
  { axis: 0, end: 0 },
  { axis: 0, end: 1 },
  { axis: 1, end: 0 },
  { axis: 1, end: 1 },
  { axis: 2, end: 0 },
  { axis: 2, end: 1 },
];

/**
 * Mean illuminance on the faces of a closed matt cube, one face of which emits evenly, with the faces cut into square
 * patches and exact patch-to-patch factors (Howell C-13 and C-15).
 *
 * @param exitance - Own light of the emitting face in lumens per square metre.
 * @param reflectance - Reflectance of all faces, 0 to below 1.
 * @param divisions - Patches along each side, 1 to 16.
 * @returns Mean illuminance on each kind of face in lux, or undefined when nothing is lost and the light never ends.
 */
export function cubeIlluminance(
  exitance: number,
  reflectance: number,
  divisions: number,
): CubeFaces | undefined {
  const perFace = divisions * divisions;
  const count = FACES.length * perFace;
  const factor = patchFactors(divisions);
  const patches = Array.from({ length: count }, (_, i) => ({
    area: 1 / perFace,
    exitance: i < perFace ? exitance : 0,
    reflectance,
  }));
  const solution = solveRadiosity(patches, factor);
  if (solution === undefined) return undefined;
  const mean = (face: number): number => {
    let sum = 0;
    for (let i = face * perFace; i < (face + 1) * perFace; i += 1) {
      for (let j = 0; j < count; j += 1) sum += factor(i, j) * solution.radiosity[j]!;
    }
    return sum / perFace;
  };
  return { emitter: mean(0), opposite: mean(1), side: mean(2) };
}

/**
 * The same in the limit of ever smaller patches, from meshes of 6 and 12 patches along a side (Richardson, order 2;
 * the edges make the true order a little lower).
 *
 * @param exitance - Own light of the emitting face in lumens per square metre.
 * @param reflectance - Reflectance of all faces, 0 to below 1.
 * @returns Mean illuminance on each kind of face in lux, good to 1e-3 of itself, or undefined when nothing is lost.
 */
export function cubeIlluminanceConverged(exitance: number, reflectance: number): CubeFaces | undefined {
  const coarse = cubeIlluminance(exitance, reflectance, 6);
  const fine = cubeIlluminance(exitance, reflectance, 12);
  if (coarse === undefined || fine === undefined) return undefined;
  const limit = (face: keyof CubeFaces): number => fine[face] + (fine[face] - coarse[face]) / 3;
  return { emitter: limit("emitter"), opposite: limit("opposite"), side: limit("side") };
}

/** Form factors between all patches, looked up by how far apart they lie, since the cube looks alike from all sides. */
function patchFactors(n: number): (i: number, j: number) => number {
  const opposite = new Float64Array(n * n);
  for (let a = 0; a < n; a += 1) {
    for (let b = 0; b < n; b += 1) {
      opposite[a * n + b] = viewFactorOffsetParallel(
        { x1: 0, x2: 1 / n, y1: 0, y2: 1 / n },
        { x1: a / n, x2: (a + 1) / n, y1: b / n, y2: (b + 1) / n },
        1,
      );
    }
  }
  const corner = new Float64Array(n * n * n);
  for (let along = 0; along < n; along += 1) {
    for (let a = 0; a < n; a += 1) {
      for (let b = 0; b < n; b += 1) {
        corner[(along * n + a) * n + b] = viewFactorOffsetPerpendicular(
          { along1: 0, along2: 1 / n, away1: a / n, away2: (a + 1) / n },
          { along1: along / n, along2: (along + 1) / n, away1: b / n, away2: (b + 1) / n },
        );
      }
    }
  }
  return (i, j) => {
    const from = FACES[Math.floor(i / (n * n))]!;
    const to = FACES[Math.floor(j / (n * n))]!;
    const one = patchPlace(from, i % (n * n), n);
    const other = patchPlace(to, j % (n * n), n);
    if (from.axis === to.axis) {
      if (from.end === to.end) return 0;
      const [u, v] = otherAxes(from.axis);
      return opposite[Math.abs(one[u] - other[u]) * n + Math.abs(one[v] - other[v])]!;
    }
    const along = (3 - from.axis - to.axis) as 0 | 1 | 2;
    const away = to.end === 0 ? one[to.axis] : n - 1 - one[to.axis];
    const otherAway = from.end === 0 ? other[from.axis] : n - 1 - other[from.axis];
    return corner[(Math.abs(one[along] - other[along]) * n + away) * n + otherAway]!;
  };
}

/** Which row and column of the face a patch is in, by axis; the face's own axis stays 0. */
function patchPlace(face: Face, patch: number, n: number): [number, number, number] {
  const place: [number, number, number] = [0, 0, 0];
  const [u, v] = otherAxes(face.axis);
  place[u] = Math.floor(patch / n);
  place[v] = patch % n;
  return place;
}

function otherAxes(axis: 0 | 1 | 2): readonly [0 | 1 | 2, 0 | 1 | 2] {
  if (axis === 0) return [1, 2];
  return axis === 1 ? [0, 2] : [0, 1];
}
