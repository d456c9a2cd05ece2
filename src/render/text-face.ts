import type { ReportFace } from "../report/schema/face.js";
import * as n from "./number.js";

type OfLight = ReportFace["lights"][number];
type Move = NonNullable<ReportFace["next"]>;

const whole = (value: number): string => n.fixed(Math.abs(value), 0);

/** How a key moves to another pattern: `10 deg further round and 8 deg up`. */
function moveWords({ azimuth, elevation }: Move): string {
  const side =
    azimuth === 0
      ? null
      : `${whole(azimuth)} deg ${azimuth > 0 ? "further round" : "nearer to the nose line"}`;
  const up = elevation === 0 ? null : `${whole(elevation)} deg ${elevation > 0 ? "up" : "down"}`;
  return [side, up].filter((part) => part !== null).join(" and ");
}

function patternWords({ pattern, nearest, next }: ReportFace): string | null {
  if (nearest === null) return null;
  const there = next === null ? "" : `; ${next.name} is ${moveWords(next)}`;
  return pattern === null
    ? `Between the patterns: ${nearest.name} is ${moveWords(nearest)}${there}.`
    : `The pattern is ${pattern}${there}.`;
}

/** The light's place to a face: `35 deg to camera-right of the nose line`. */
function placeWords({ azimuth, elevation }: OfLight): string {
  const side =
    Math.round(azimuth) === 0
      ? "on the nose line"
      : Math.round(Math.abs(azimuth)) === 180
        ? "straight behind the head"
        : `${whole(azimuth)} deg off the nose line`;
  const up =
    Math.round(elevation) === 0
      ? "level with it"
      : `${whole(elevation)} deg ${elevation > 0 ? "above" : "below"} it`;
  return `${side}, ${up}`;
}

function lightWords(row: OfLight): string {
  const { nose_shadow: nose, catchlight: eye, glare } = row;
  const parts = [`${row.light}: ${placeWords(row)}`];
  if (nose !== null && nose.drop > 0) {
    const lip = nose.on_lip ? ", on to the lip" : "";
    parts.push(`nose shadow ${n.fixed(nose.side, 0)} mm to the side, ${n.fixed(nose.drop, 0)} mm down${lip}`);
  }
  if (eye?.seen === true) {
    const where = eye.hour === null ? "in the middle of the eye" : `at ${eye.hour} o'clock`;
    const size = eye.size < 0.01 ? "a point" : `${n.perCent(eye.size)} of the iris wide`;
    parts.push(`catchlight ${where}, ${size}`);
  } else if (eye !== null) parts.push(`no catchlight (${eye.reason ?? ""})`);
  if (glare?.seen === true) parts.push("seen in the glasses");
  return `${parts.join("; ")}.`;
}

/** What the lights do on one face, a sentence each: pattern and side, then every light. */
export function faceSentences(face: ReportFace): readonly string[] {
  const pattern = patternWords(face);
  const side =
    face.side !== null
      ? `The key lights the ${face.side} side of the face.`
      : face.key === null
        ? null
        : `Neither short nor broad: ${face.side_reason ?? ""}.`;
  return [
    ...[pattern, side].filter((text) => text !== null),

    ...face.lights.map(lightWords),
  ];
}

/** The title of a face's section: `Face`, or `Face of ana`. */
export function faceTitle({ subject }: ReportFace): string {
  return subject === "" ? "Face" : `Face of ${subject}`;
}
