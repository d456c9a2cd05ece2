import { distance } from "../../math/vector.js";
import { lightPlace } from "../../scene/lit/seen.js";
import type { SceneSubject, Source } from "../../scene/types.js";
import { moveTo, withSource } from "../change/move-source.js";
import { anglesFrom, type FaceAngles, placeAt } from "../face/angles.js";
import { type PatternGap, patternGaps, patternOf } from "../face/pattern.js";
import { isNear, wishedGap } from "../face/wish.js";
import { faceWords, type Plan } from "../plan.js";
import { fixed, floorTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { fitsRoom, type KeyLight, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** The angles at which a light stands in the range of a pattern, moved no further than needed. */
export function anglesIn({ azimuth, elevation }: FaceAngles, gap: PatternGap): FaceAngles {
  const sign = azimuth < 0 ? -1 : 1;
  // Whole degrees on the inner side of the range, so that what is set is inside.
  const inward = (value: number, by: number): number =>
    by > 0 ? Math.ceil(value + by - 1e-6) : by < 0 ? Math.floor(value + by + 1e-6) : value;
  return {
    azimuth: sign * inward(Math.abs(azimuth), gap.azimuth),
    elevation: inward(elevation, gap.elevation),
  };
}

const upWords = (elevation: number): string =>
  `${fixed(Math.abs(elevation), 0)} deg ${elevation < -0.5 ? "down" : "up"}`;

/** What the key makes of a face: `loop`, or `something between loop and rembrandt`. */
function madeWords(angles: FaceAngles): string {
  const [first, second] = patternGaps(angles);
  const made = patternOf(angles);
  return made.off === 0 ? made.name : `something between ${first?.name} and ${second?.name}`;
}

function remedyOf(
  plan: Plan,
  key: KeyLight,
  subject: SceneSubject,
  angles: FaceAngles,
  gap: PatternGap,
): string {
  const wanted = anglesIn(angles, gap);
  const turn = Math.abs(wanted.azimuth - angles.azimuth);
  const turned =
    gap.elevation === 0 && turn > 0
      ? `, or have the head turned by ${sayAngle(turn)} ${gap.azimuth > 0 ? "away from" : "towards"} it`
      : "";
  const where = `${fixed(Math.abs(wanted.azimuth), 0)} deg off the nose line and ${upWords(wanted.elevation)}`;
  if (key.source.patch !== undefined) return `Bring the light to ${where}.`;
  const moved = placed(plan, key, subject, wanted);
  if (moved === null)
    return `Bring ${key.source.name} to ${where}, for which this room is too small; or turn the face.`;
  const away = distance(moved.centre, subject.face);
  const how = away < key.away - 1e-6 ? `, ${sayLength(away)} from the face` : " at the same distance";
  return `Move ${key.source.name} to ${where}, ${sayLength(moved.centre[2])} high${how}${powerWords(plan, withSource(plan, key.index, moved), key.source)}${turned}.`;
}

/** Steps in which a place nearer to the face is looked for, and the nearest, m. */
const STEP = 0.1;
const NEAREST = 0.6;

/** The key at some angles to a face, as far away as it stands or as the room lets it; null where there is no room. */
function placed(plan: Plan, key: KeyLight, subject: SceneSubject, angles: FaceAngles): Source | null {
  for (let away = key.away; away >= NEAREST; away = floorTo(away - STEP / 2, STEP)) {
    const place = placeAt(subject, angles, away);
    const moved = moveTo(key.source, place);
    if (place[2] > 0.1 && fitsRoom(plan.scene, moved)) return moved;
  }
  return null;
}

/** The key stands elsewhere than the wished pattern needs it. */
export const patternLost: Rule = {
  code: "pattern-lost",
  thresholds: ["pattern_azimuth", "pattern_elevation"],
  safety: false,
  page: {
    when: "`intent` wishes for a `pattern`, and the key stands further from that pattern's range than `pattern_azimuth` (10 deg) to the side or `pattern_elevation` (8 deg) up or down, from the first subject's nose line. The ranges, to the side and up: flat 0 to 15 and -10 to 20 deg, butterfly 0 to 10 and 25 to 45, loop 25 to 45 and 20 to 40, Rembrandt 45 to 60 and 35 to 45, split 80 to 100 and 0 to 20, rim 120 to 160 and -10 to 60.",
    means:
      "The shadows of nose, brow and cheek fall otherwise than meant. The nose line counts, not the camera: a head that turns by 20 deg changes as much as a lamp that moves by 20 deg.",
    todo: "Move the key round the face or up and down, or have the head turned.",
    source: "Common practice, no source; flat and the heights of rim are this table's own.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const angles = key === null ? null : anglesFrom(key.subject, lightPlace(key.source));
    const gap = angles === null ? null : wishedGap(plan.recipe, angles);
    if (key === null || angles === null || gap === null || isNear(plan.recipe, gap)) return [];
    return [
      {
        severity: "check",
        message: `${key.source.name} stands ${fixed(Math.abs(angles.azimuth), 0)} deg off the nose line and ${upWords(angles.elevation)}: on ${faceWords(plan.scene)} that makes ${madeWords(angles)}, not ${gap.name}.`,
        remedy: remedyOf(plan, key, key.subject, angles, gap),
        about: key.source.name,
      },
    ];
  },
};
