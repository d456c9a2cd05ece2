import type { Vec3 } from "../core/vector.js";
import { figure } from "./figure-numbers.js";
import { axisTo } from "./lamp/axis.js";
import type { Landmark, SceneSubject, Source, Station } from "./types.js";

/** What stations look at. */
export interface Looks {
  readonly key: Source | null;
  readonly camera: Vec3 | null;
}

/** Distance from the head's centre to its surface, in shares of the stature, 45 degrees to the side of the nose. */
const cheek = /* @__PURE__ */ (() => {
  const { across, ahead } = figure.head;
  return 1 / Math.sqrt(0.5 / (across * across) + 0.5 / (ahead * ahead));
})();

/** The cheek to one side (1 or -1 along the subject's `across`): a disc 45 degrees off the nose line. */
function cheekStation(subject: SceneSubject, prefix: string, word: string, side: number): Station {
  const { nose, across, head, stature } = subject;
  const k = Math.SQRT1_2;
  const facing: Vec3 = [
    k * (nose[0] + side * across[0]),
    k * (nose[1] + side * across[1]),
    k * (nose[2] + side * across[2]),
  ];
  const out = cheek * stature;
  return {
    name: prefix + word,
    subject: subject.name,
    at: [head[0] + out * facing[0], head[1] + out * facing[1], head[2] + out * facing[2]],
    facing,
    receptor: "disc",
    looks: "45 deg to the side of the nose line",
    natural: true,
  };
}

/**
 * The stations of one subject in their fixed order: face (disc to the key), face (dome to the camera), lit cheek,
 * shaded cheek, chest, knee, shin (discs to the key). Without a key or a camera they look along the nose.
 */
export function subjectStations(
  stations: Station[],
  subject: SceneSubject,
  prefix: string,
  places: (word: string) => Landmark | undefined,
  { key, camera }: Looks,
): void {
  const toKey = (word: string, at: Vec3): Station => {
    const facing = key === null ? null : axisTo(at, key.centre);
    return {
      name: prefix + word,
      subject: subject.name,
      at,
      facing: facing ?? subject.nose,
      receptor: "disc",
      looks: facing === null || key === null ? "along the nose" : `towards ${key.name}`,
      natural: false,
    };
  };
  stations.push(toKey("face", subject.face));
  const toCamera = camera === null ? null : axisTo(subject.face, camera);
  stations.push({
    name: `${prefix}face`,
    subject: subject.name,
    at: subject.face,
    facing: toCamera ?? subject.nose,
    receptor: "dome",
    looks: toCamera === null ? "along the nose" : "towards camera",
    natural: false,
  });
  const { across, head } = subject;
  const light = key?.centre ?? head;
  const turn =
    across[0] * (light[0] - head[0]) + across[1] * (light[1] - head[1]) + across[2] * (light[2] - head[2]);
  const lit = turn >= 0 ? 1 : -1;
  stations.push(cheekStation(subject, prefix, "lit_cheek", lit));
  stations.push(cheekStation(subject, prefix, "shaded_cheek", -lit));
  for (const word of ["chest", "knee", "shin"]) {
    const place = places(word);
    if (place !== undefined) stations.push(toKey(word, place.at));
  }
}
