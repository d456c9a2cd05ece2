import type { Vec3 } from "../core/vector.js";
import { addScaled } from "../math/vector.js";
import { figure } from "./figure-numbers.js";
import { heldAt } from "./held-meter.js";
import { axisTo } from "./lamp/axis.js";
import { lightPlace } from "./lit/seen.js";
import type { Landmark, SceneSubject, Source, Station } from "./types.js";

/** What stations look at. */
export interface Looks {
  readonly key: Source | null;
  readonly camera: Vec3 | null;
}

/**
 * Where the head's surface looks 45 degrees to the side of the nose line, from its centre, in shares of the stature:
 * so the head itself hides nothing that a disc there looks at.
 */
const cheek = /* @__PURE__ */ (() => {
  const { across, ahead } = figure.head;
  const norm = Math.sqrt(across * across + ahead * ahead);
  return { ahead: (ahead * ahead) / norm, across: (across * across) / norm } as const;
})();

/** The outward direction of a cheek: 45 degrees from the nose line to one side (1 or -1 along `across`). */
function cheekDirection({ nose, across }: SceneSubject, side: number): Vec3 {
  const k = Math.SQRT1_2;
  return [
    k * (nose[0] + side * across[0]),
    k * (nose[1] + side * across[1]),
    k * (nose[2] + side * across[2]),
  ];
}

/** The place of a cheek on the head. */
export function cheekPlace({ head, nose, across, stature }: SceneSubject, side: number): Vec3 {
  return addScaled(addScaled(head, nose, cheek.ahead * stature), across, side * cheek.across * stature);
}

/** The side of a subject on which a light is: 1 along its `across`, else -1. */
export function sideOf({ across, head }: SceneSubject, light: Vec3): 1 | -1 {
  const turn =
    across[0] * (light[0] - head[0]) + across[1] * (light[1] - head[1]) + across[2] * (light[2] - head[2]);
  return turn >= 0 ? 1 : -1;
}

/** The cheek to one side: a disc 45 degrees off the nose line. */
function cheekStation(subject: SceneSubject, prefix: string, word: string, side: number): Station {
  return {
    name: prefix + word,
    subject: subject.name,
    at: cheekPlace(subject, side),
    facing: cheekDirection(subject, side),
    receptor: "disc",
    looks: "45 deg to the side of the nose line",
    natural: true,
    before: undefined,
  };
}

/** The way a part of the body looks: as the nose does, but the shins of one who kneels lie along the floor. */
function outOf({ nose, pose }: SceneSubject, word: string): Vec3 {
  return word === "shin" && pose === "kneeling" ? [0, 0, 1] : nose;
}

/** A subject as built, and how its stations and its places are called. */
export interface StationOwner {
  readonly subject: SceneSubject;
  /** What stands before the names of its stations and bodies: `ana.`, or nothing where there is one subject. */
  readonly prefix: string;
  /** What may stand before the names of its places; more than one for the first subject. */
  readonly words: readonly string[];
}

/**
 * Adds the stations of one subject in their fixed order: face (disc to the key), face (dome to the camera), lit cheek,
 * shaded cheek, chest, knee, shin (discs to the key). Without a key or a camera they look along the nose. All but the
 * cheeks, which are skin, are held before the body, the dome where the disc is. The cheeks become landmarks here, since
 * the key decides which is which.
 */
export function subjectStations(
  stations: Station[],
  owner: StationOwner,
  landmarks: Map<string, Landmark>,
  { key, camera }: Looks,
): void {
  const { subject, prefix, words } = owner;
  const light = key === null ? null : lightPlace(key);
  const disc = keyStation(owner, "face", subject.face, key, light);
  stations.push(disc);
  const toCamera = camera === null ? null : axisTo(disc.at, camera);
  stations.push({
    ...disc,
    facing: toCamera ?? subject.nose,
    receptor: "dome",
    looks: toCamera === null ? "along the nose" : "towards camera",
  });
  const lit = light === null ? 1 : sideOf(subject, light);
  for (const [word, side] of [
    ["lit_cheek", lit],
    ["shaded_cheek", -lit],
  ] as const) {
    const station = cheekStation(subject, prefix, word, side);
    stations.push(station);
    for (const before of words) landmarks.set(before + word, { at: station.at, ahead: subject.facing });
  }
  for (const word of ["chest", "knee", "shin"]) {
    const place = landmarks.get((words[0] ?? "") + word);
    if (place !== undefined) stations.push(keyStation(owner, word, place.at, key, light));
  }
}

/** A disc held before a place of the body, to the key. */
function keyStation(
  { subject, prefix }: StationOwner,
  word: string,
  place: Vec3,
  key: Source | null,
  light: Vec3 | null,
): Station {
  const before = { at: place, ahead: outOf(subject, word) };
  const at = heldAt(before, light);
  const facing = light === null ? null : axisTo(at, light);
  return {
    name: prefix + word,
    subject: subject.name,
    at,
    facing: facing ?? subject.nose,
    receptor: "disc",
    looks: facing === null || key === null ? "along the nose" : `towards ${key.name}`,
    natural: false,
    before,
  };
}
