import { edgeWeight } from "../../math/lambert-polygon.js";
import { triangleSolidAngle } from "../../math/solid-angle.js";
import type { LightVector } from "../../physics/light-vector.js";
import type { FlatPolygon } from "./flat.js";
import type { View } from "./view.js";

/** What flat pieces of light give an eye: their light vector, in the view's own axes, and their solid angle, sr. */
export interface PieceLight extends LightVector {
  solid: number;
}

/** Adds a piece on the view's plane to a sum: Lambert's polygon sum, and the solid angle where it is wanted. */
export function addPiece(piece: FlatPolygon, sum: PieceLight, wantSolid: boolean): void {
  const n = piece.length;
  let au = piece[n - 2] as number;
  let av = piece[n - 1] as number;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < n; i += 2) {
    const bu = piece[i] as number;
    const bv = piece[i + 1] as number;
    // The vector product of the sight lines (au, av, 1) and (bu, bv, 1), with the digits of the edge kept.
    const cx = av - bv;
    const cy = bu - au;
    const cz = au * (bv - av) - av * (bu - au);
    const w = edgeWeight(cx, cy, cz, au * bu + av * bv + 1);
    x += cx * w;
    y += cy * w;
    z += cz * w;
    au = bu;
    av = bv;
  }
  sum.x += x / 2;
  sum.y += y / 2;
  sum.z += z / 2;
  if (wantSolid) {
    for (let i = 4; i < n; i += 2) {
      sum.solid += triangleSolidAngle(
        piece[0] as number,
        piece[1] as number,
        1,
        piece[i - 2] as number,
        piece[i - 1] as number,
        1,
        piece[i] as number,
        piece[i + 1] as number,
        1,
      );
    }
  }
}

/** What a receptor makes of pieces of light: flat receptors take the part along n, domes (1 + cos) / 2. */
export function received(
  pieces: readonly FlatPolygon[],
  view: View,
  n: readonly [number, number, number],
  dome: boolean,
): number {
  const sum: PieceLight = { x: 0, y: 0, z: 0, solid: 0 };
  for (const piece of pieces) addPiece(piece, sum, dome);
  const { across, up, ahead } = view;
  const nu = across[0] * n[0] + across[1] * n[1] + across[2] * n[2];
  const nv = up[0] * n[0] + up[1] * n[1] + up[2] * n[2];
  const nw = ahead[0] * n[0] + ahead[1] * n[1] + ahead[2] * n[2];
  const along = sum.x * nu + sum.y * nv + sum.z * nw;
  return Math.max(0, dome ? (sum.solid + along) / 2 : along);
}
