import { exp2 } from "../../core/exp2.js";
import { addScaled } from "../../math/vector.js";
import { lightnessFromReflectance } from "../../physics/lightness.js";
import { crosses } from "../../scene/crosses.js";
import type { Scene, Station } from "../../scene/types.js";
import { tone } from "./tone.js";

/** How a surface comes out in a picture that is exposed for a reading. */
export interface Tone {
  /** Of the surface, 0 to 1. */
  readonly reflectance: number;
  /** CIE L*: 100 is a white of reflectance 1 in the light of the reading; more is cut off. */
  readonly lightness: number;
  /** The same as a grey of sRGB, 0 to 255. */
  readonly srgb: number;
}

/** Reflectance of the surface that a station lies on, seen from its front; null for a meter in the air. */
export function reflectanceAt(scene: Scene, { at, facing, name, natural }: Station): number | null {
  if (!natural) return null;
  const head = /^(.*)(?:lit|shaded)_cheek$/.exec(name);
  if (head !== null) return scene.bodies.find((body) => body.name === `${head[1]}head`)?.reflectance ?? null;
  // A piece of the set may lie on the floor, and a station on the seam of two strips: a millimetre beside it is asked too.
  for (const aside of [0, 1e-3]) {
    const [x, y, z] = addScaled(at, [facing[1], facing[2], facing[0]], aside);
    const before = addScaled([x, y, z], facing, 2e-3);
    const behind = addScaled([x, y, z], facing, -2e-3);
    const found = [...scene.polygons].reverse().find((polygon) => crosses(polygon, before, behind));
    if (found === undefined) continue;
    const front = found.normal[0] * facing[0] + found.normal[1] * facing[1] + found.normal[2] * facing[2] > 0;
    return front ? found.frontReflectance : found.backReflectance;
  }
  return null;
}

/** The tone of a surface that gets so many stops more than the reading for which the picture is exposed. */
export function toneOf(reflectance: number, stops: number): Tone {
  const y = Math.min(1, reflectance * exp2(stops));
  return { reflectance, lightness: lightnessFromReflectance(y), srgb: Math.round(tone(y)) };
}
