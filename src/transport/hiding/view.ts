import type { Vec3 } from "../../core/vector.js";
import { frameAround } from "../../math/vector.js";
import { counterClockwise, type FlatPolygon } from "./flat.js";
import { clipToHalf, type HalfSpace } from "./half-space.js";
import { addPolygon, close, type Region, reserve } from "./region.js";

/** Nearest distance in front of the eye that is looked at, m. */
export const NEAREST = 1e-6;

/** An eye with a direction: the plane at unit distance along it takes the outlines. */
export interface View {
  readonly eye: Vec3;
  readonly ahead: Vec3;
  readonly across: Vec3;
  readonly up: Vec3;
}

/** A view from a point along a unit vector. */
export function viewAlong(eye: Vec3, ahead: Vec3): View {
  const [across, up] = frameAround(ahead);
  return { eye, ahead, across, up };
}

/** The outline of a flat polygon in space on the view's plane; what is not in front of the eye is cut away. */
export function project(view: View, corners: readonly Vec3[]): FlatPolygon | null {
  const { eye, ahead, across, up } = view;
  const front: HalfSpace = {
    normal: ahead,
    offset: ahead[0] * eye[0] + ahead[1] * eye[1] + ahead[2] * eye[2] + NEAREST,
  };
  const seen = clipToHalf(corners, front);
  if (seen.length < 3) return null;
  const flat: number[] = [];
  for (const p of seen) {
    const x = p[0] - eye[0];
    const y = p[1] - eye[1];
    const z = p[2] - eye[2];
    const depth = ahead[0] * x + ahead[1] * y + ahead[2] * z;
    flat.push(
      (across[0] * x + across[1] * y + across[2] * z) / depth,
      (up[0] * x + up[1] * y + up[2] * z) / depth,
    );
  }
  return counterClockwise(flat);
}

/** Adds the outline of a flat polygon in space on the view's plane; false, with nothing added, where nothing is seen. */
export function addProjected(view: View, corners: readonly Vec3[], region: Region): boolean {
  const { eye, ahead, across, up } = view;
  const at = reserve(region, 2 * corners.length);
  const { data } = region;
  for (let i = 0; i < corners.length; i++) {
    const p = corners[i] as Vec3;
    const x = p[0] - eye[0];
    const y = p[1] - eye[1];
    const z = p[2] - eye[2];
    const depth = ahead[0] * x + ahead[1] * y + ahead[2] * z;
    if (!(depth >= NEAREST)) {
      const flat = project(view, corners);
      if (flat === null) return false;
      addPolygon(region, flat);
      return true;
    }
    data[at + 2 * i] = (across[0] * x + across[1] * y + across[2] * z) / depth;
    data[at + 2 * i + 1] = (up[0] * x + up[1] * y + up[2] * z) / depth;
  }
  if (corners.length < 3) return false;
  close(region, 2 * corners.length);
  return true;
}
