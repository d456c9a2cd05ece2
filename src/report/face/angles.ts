import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import { cross, dot, normalise, subtract } from "../../math/vector.js";
import type { SceneSubject } from "../../scene/types.js";
import { plainZero } from "../geometry/directions.js";

/** A direction as a face has it, deg. */
export interface FaceAngles {
  /** From the nose line to the side, + to `across` of the subject: to camera-right for one who faces the camera. */
  readonly azimuth: number;
  /** Above the plane in which the nose line turns from side to side. */
  readonly elevation: number;
}

/** Unit vector up the face, square to the nose line: upwards for one who stands, to the crown for one who lies. */
export function upOf({ nose, across }: SceneSubject): Vec3 {
  return cross(nose, across);
}

/** Where a place lies from a face; null for the face itself. */
export function anglesFrom(subject: SceneSubject, place: Vec3): FaceAngles | null {
  const way = normalise(subtract(place, subject.face));
  if (way === undefined) return null;
  const side = dot(way, subject.across);
  const ahead = dot(way, subject.nose);
  const level = Math.sqrt(side * side + ahead * ahead);
  return {
    azimuth: level < 1e-9 ? 0 : plainZero(degrees(Math.atan2(side, ahead))),
    elevation: degrees(Math.atan2(dot(way, upOf(subject)), level)),
  };
}

/** A place in a direction from a face, by its angles in deg and its distance in m. */
export function placeAt(subject: SceneSubject, { azimuth, elevation }: FaceAngles, away: number): Vec3 {
  const [a, e] = [(azimuth * Math.PI) / 180, (elevation * Math.PI) / 180];
  const [side, ahead, high] = [
    Math.cos(e) * Math.sin(a) * away,
    Math.cos(e) * Math.cos(a) * away,
    Math.sin(e) * away,
  ];
  const up = upOf(subject);
  const along = (k: 0 | 1 | 2): number =>
    subject.face[k] + side * subject.across[k] + ahead * subject.nose[k] + high * up[k];
  return [along(0), along(1), along(2)];
}
