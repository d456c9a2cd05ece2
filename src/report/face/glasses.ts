import type { Vec3 } from "../../core/vector.js";
import { degrees, radians, rotateAbout } from "../../math/rotation.js";
import { addScaled, angleBetween, dot, normalise, scale, subtract } from "../../math/vector.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";
import { sizeFrom } from "../light/size.js";

/** How near a light is to where flat glasses mirror the lens to. */
export interface Glare {
  /** Between the mirrored line of sight and the middle of the light, deg. */
  readonly off: number;
  /** Half of the light's angular width towards it, taken as its equivalent cone, deg. */
  readonly half: number;
  /** Unit vector from the face along which the glasses mirror the lens. */
  readonly mirrored: Vec3;
}

/** Where flat glasses that lean by `tilt` deg, their tops forward, show the lens a light; null from behind either. */
export function glareOf(
  subject: SceneSubject,
  camera: SceneCamera,
  source: Source,
  tilt: number,
): Glare | null {
  const size = sizeFrom(source, subject.face);
  const toLens = normalise(subtract(camera.at, subject.face));
  const toLight = normalise(subtract(source.centre, subject.face));
  if (size === null || toLens === undefined || toLight === undefined) return null;
  // Leaning forward turns the way the glass looks from the nose line downwards.
  const normal = rotateAbout(subject.nose, subject.across, radians(tilt));
  if (dot(normal, toLens) <= 0 || dot(normal, toLight) <= 0) return null;
  const mirrored = addScaled(scale(normal, 2 * dot(normal, toLens)), toLens, -1);
  return { off: degrees(angleBetween(mirrored, toLight)), half: size.equivalent / 2, mirrored };
}
