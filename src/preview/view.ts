import type { Vec3 } from "../core/vector.js";
import { wayTo } from "../report/frame/look.js";
import { lensOf } from "../report/frame/project.js";
import type { Scene } from "../scene/types.js";
import { emptyDirection } from "../transport/bounce/direction.js";
import { emptyHit, firstHit } from "../transport/bounce/first-hit.js";
import { normalAt } from "../transport/bounce/normal.js";
import { surfacesOf } from "../transport/bounce/surfaces.js";
import { worldOf } from "../transport/bounce/world.js";

/** Numbers of one pixel in `View.data`: place (0), unit vector out of what is seen (3). */
export const SEEN = 6;

/** What the lens sees, pixel by pixel from the top left: the same for every light. */
export interface View {
  readonly width: number;
  readonly height: number;
  /** Side that is seen: 2 i for the back of thing i, 2 i + 1 for its front or its body; -1 for nothing. */
  readonly side: Int32Array;
  /** Share of the light that it gives back. */
  readonly reflectance: Float32Array;
  readonly data: Float64Array;
  /** How far from the lens what is seen is, m; infinite for nothing. */
  readonly way: Float64Array;
}

/** How far what is seen is lifted off its surface, m. */
const LIFT = 1e-7;

/** Looks through the middle of every pixel. Null without a camera with a focal length. */
export function viewOf(scene: Scene, width: number): View | null {
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  if (camera === null || lens === null) return null;
  const height = Math.max(1, Math.round((width * camera.frameHeight) / camera.frameWidth));
  const world = worldOf(scene);
  const surfaces = surfacesOf(scene, world);
  const side = new Int32Array(width * height).fill(-1);
  const reflectance = new Float32Array(width * height);
  const data = new Float64Array(SEEN * width * height);
  const far = new Float64Array(width * height).fill(Number.POSITIVE_INFINITY);
  const hit = emptyHit();
  const out = emptyDirection();
  const [ex, ey, ez] = camera.at;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const way = wayTo(lens, [(2 * column + 1) / width - 1, 1 - (2 * row + 1) / height]);
      firstHit(world, ex, ey, ez, way[0], way[1], way[2], hit);
      if (hit.thing < 0 || hit.way === 0) continue;
      const pixel = row * width + column;
      const x = ex + hit.way * way[0];
      const y = ey + hit.way * way[1];
      const z = ez + hit.way * way[2];
      normalAt(world, hit.thing, hit.front, x, y, z, out);
      const met = 2 * hit.thing + (hit.front ? 1 : 0);
      side[pixel] = met;
      far[pixel] = hit.way;
      reflectance[pixel] = surfaces.reflectance[met] as number;
      const at = SEEN * pixel;
      data[at] = x + LIFT * out.x;
      data[at + 1] = y + LIFT * out.y;
      data[at + 2] = z + LIFT * out.z;
      data[at + 3] = out.x;
      data[at + 4] = out.y;
      data[at + 5] = out.z;
    }
  }
  return { width, height, side, reflectance, data, way: far };
}

/** What a pixel sees as a flat meter that lies on it. */
export function meterAt({ data }: View, pixel: number): { readonly at: Vec3; readonly facing: Vec3 } {
  const at = SEEN * pixel;
  const n = (i: number): number => data[at + i] as number;
  return { at: [n(0), n(1), n(2)], facing: [n(3), n(4), n(5)] };
}
