import type { Vec3 } from "../../core/vector.js";
import { degrees, radians, rotateAbout } from "../../math/rotation.js";
import { addScaled, angleBetween, dot, length, normalise, scale, subtract } from "../../math/vector.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";

/** How near a light is to where flat glasses mirror the lens to. */
export interface Glare {
  /** Between the mirrored line of sight and the middle of the light, deg. */
  readonly off: number;
  /** From the middle of the light to its rim on the side of the mirrored line, deg. */
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
  const toLens = normalise(subtract(camera.at, subject.face));
  const toLight = normalise(subtract(source.centre, subject.face));
  if (toLens === undefined || toLight === undefined) return null;
  // Leaning forward turns the way the glass looks from the nose line downwards.
  const normal = rotateAbout(subject.nose, subject.across, radians(tilt));
  if (dot(normal, toLens) <= 0 || dot(normal, toLight) <= 0) return null;
  const mirrored = addScaled(scale(normal, 2 * dot(normal, toLens)), toLens, -1);
  return {
    off: degrees(angleBetween(mirrored, toLight)),
    half: halfTowards(subject.face, source, mirrored),
    mirrored,
  };
}

/** The angle from the middle of an opening to its rim on the side to which a line of sight passes it, deg. */
function halfTowards(eye: Vec3, { shape, centre, across, along }: Source, way: Vec3): number {
  const sight = subtract(centre, eye);
  if (shape.kind === "sphere") return degrees(Math.asin(Math.min(1, shape.radius / length(sight))));
  const ahead = scale(sight, 1 / length(sight));
  const aside = addScaled(way, ahead, -dot(way, ahead));
  const s = dot(aside, across);
  const t = dot(aside, along);
  const size = Math.sqrt(s * s + t * t);
  // A line that meets the middle passes it on no side: the half width stands for all.
  const [u, v] = size > 1e-9 ? [s / size, t / size] : [1, 0];
  const [wide, high] =
    shape.kind === "rectangle"
      ? [shape.width / 2, shape.height / 2]
      : shape.kind === "capsule"
        ? [shape.radius, shape.length / 2]
        : [shape.radius, shape.radius];
  const reach = shape.kind === "disc" ? shape.radius : 1 / Math.max(Math.abs(u) / wide, Math.abs(v) / high);
  const rim = addScaled(addScaled(centre, across, u * reach), along, v * reach);
  return degrees(angleBetween(sight, subtract(rim, eye)));
}
