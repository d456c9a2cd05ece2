import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import { add, addScaled, angleBetween, dot, normalise, subtract } from "../../math/vector.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";
import { sizeFrom } from "../light/size.js";
import { anglesFrom, upOf } from "./angles.js";

/** Radius of the cornea as a mirror and diameter of the iris, mm (from memory). */
export const cornea = { radius: 7.8, iris: 11.7 } as const;

/** The image of a light in an eye that looks into the lens. */
export interface Catchlight {
  /** From the middle of the iris, mm in the plane of the picture, and as a share of the radius of the iris. */
  readonly offset: number;
  readonly share: number;
  /** Where it lies from there as on the face of a clock in the picture, 12 at the top, in whole hours; null in the middle. */
  readonly hour: number | null;
  /** Its width as a share of the iris. */
  readonly size: number;
  /** Whether it shows, with the reason where it does not. */
  readonly seen: boolean;
  readonly reason: string | null;
}

/** Nearer to the middle of the iris than this share of its radius a catchlight has no direction. */
const MIDDLE = 0.02;

/** The offset in mm of the image of a light `angle` deg off the line from eye to lens: R sin(angle / 2). */
export function catchlightOffset(angle: number): number {
  return cornea.radius * Math.sin((angle * Math.PI) / 360);
}

/** The width in mm of the image of a light `size` deg wide: half the radius of the mirror times the angle. */
export function catchlightWidth(size: number): number {
  return (cornea.radius / 2) * ((size * Math.PI) / 180);
}

/**
 * How high a light shows in an eye that looks into the lens: as high as one so many deg straight above the line of sight.
 * The cornea mirrors it where its normal halves the angle between lens and light, and the upper lid, which moves with the
 * head and follows the line of sight, covers the eye from above: h . up = sin(lift / 2), for the head's up made square to
 * the line of sight. Null for a lens straight above or below the eye, which has no such up.
 */
export function liftOf(subject: SceneSubject, lens: Vec3, light: Vec3): number | null {
  const toLens = normalise(subtract(lens, subject.face));
  const toLight = normalise(subtract(light, subject.face));
  if (toLens === undefined || toLight === undefined) return null;
  const head = upOf(subject);
  const up = normalise(addScaled(head, toLens, -dot(head, toLens)));
  const normal = normalise(add(toLens, toLight));
  return up === undefined || normal === undefined ? null : 2 * degrees(Math.asin(dot(normal, up)));
}

/**
 * The catchlight of a light; null from behind the lamp, where it shows none.
 *
 * @param lid - Lift above the line of sight in deg from which on the upper lid hides it.
 * @param side - Azimuth from the nose line in deg beyond which it does not shine into the eye.
 */
export function catchlight(
  subject: SceneSubject,
  camera: SceneCamera,
  source: Source,
  lid: number,
  side: number,
): Catchlight | null {
  const size = sizeFrom(source, subject.face);
  const angles = anglesFrom(subject, source.centre);
  const toLens = normalise(subtract(camera.at, subject.face));
  const toLight = normalise(subtract(source.centre, subject.face));
  if (size === null || angles === null || toLens === undefined || toLight === undefined) return null;
  const lift = liftOf(subject, camera.at, source.centre) ?? 0;
  const offset = catchlightOffset(degrees(angleBetween(toLens, toLight)));
  const share = offset / (cornea.iris / 2);
  const reason =
    dot(toLens, subject.nose) <= 0
      ? "the camera does not see the face"
      : lift > lid
        ? "the upper lid hides it"
        : Math.abs(angles.azimuth) > side
          ? "the light does not shine into the eye"
          : share > 1
            ? "it lies beside the iris"
            : null;
  return {
    offset,
    share,
    hour: share < MIDDLE ? null : hourOf(camera, toLens, toLight),
    size: catchlightWidth(size.equivalent) / cornea.iris,
    seen: reason === null,
    reason,
  };
}

/** The hour of a clock in the picture to which a light lies from the line of sight. */
function hourOf(camera: SceneCamera, toLens: Vec3, toLight: Vec3): number {
  const way = addScaled(toLight, toLens, -dot(toLight, toLens));
  const turn = degrees(Math.atan2(dot(way, camera.right), dot(way, camera.up)));
  const hour = Math.round((turn + 360) / 30) % 12;
  return hour === 0 ? 12 : hour;
}
