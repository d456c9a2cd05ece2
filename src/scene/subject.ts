import type { Vec3 } from "../core/vector.js";
import type { SubjectModel } from "../model/types.js";
import { lyingBody, uprightBody } from "./body-frame.js";
import { buildFigure } from "./figure.js";
import { defaultCloth, defaultHair, defaultSkin, defaultStature, figure, speeds } from "./figure-numbers.js";
import { blockDirection, blockPoint } from "./points.js";
import { poseShape } from "./pose.js";
import { assume, type Site } from "./site.js";
import type { Body, Landmark, SceneSubject } from "./types.js";

/** The camera's side: where a subject faces that does not say. */
const cameraSide: Vec3 = [0, -1, 0];

/** Lists the defaults that a subject used. */
function assumeSubject(site: Site, subject: SubjectModel): void {
  const whose = subject.name === null ? "" : ` of ${subject.name}`;
  if (subject.height === undefined) assume(site, `stature${whose}`, "1.7 m", false);
  if (subject.pose === "seated" && subject.seat === undefined) {
    assume(site, `seat${whose}`, "a quarter of the stature", false);
  }
  if (subject.skin === undefined) assume(site, `skin${whose}`, "35 %", true);
  if (subject.cloth === undefined) assume(site, `cloth${whose}`, "30 %", true);
  if (subject.hair === undefined) assume(site, `hair${whose}`, "8 %", false);
}

/**
 * Puts a subject into the scene: its bodies, and the landmarks of its places. `names` are the words that may stand
 * before its places: `ana.`, and nothing for the first subject.
 */
export function buildSubject(
  site: Site,
  subject: SubjectModel,
  names: readonly string[],
  prefix: string,
  bodies: Body[],
): SceneSubject {
  assumeSubject(site, subject);
  const name = subject.name ?? "";
  const called = subject.name ?? "subject";
  const at = subject.at === undefined ? null : blockPoint(site, subject.origins, "at", subject.at);
  const place: Vec3 = at?.at ?? [0, 0, 0];
  const facing =
    (subject.facing === undefined
      ? null
      : blockDirection(site, subject.origins, "facing", called, subject.facing, place, true)) ?? cameraSide;
  const stature = subject.height?.value ?? defaultStature;
  const pose = (subject.pose ?? "standing") as SceneSubject["pose"];
  const shod = pose === "standing" || pose === "seated";
  const heels = subject.heels?.value ?? 0;
  const lift = shod ? heels : 0;
  const seat = ((subject.seat?.value ?? figure.seat * stature) - lift) / stature;
  const frame =
    pose === "lying" ? lyingBody(place, facing, stature) : uprightBody(place, facing, stature, lift);
  const places = buildFigure(
    bodies,
    prefix,
    frame,
    poseShape(pose, seat),
    subject.arms,
    subject.skin?.value ?? defaultSkin,
    subject.cloth?.value ?? defaultCloth,
  );
  const put = (word: string, where: Vec3): void => {
    const landmark: Landmark = { at: where, ahead: facing };
    for (const before of names) site.landmarks.set(before + word, landmark);
  };
  put("face", places.face);
  put("head", places.head);
  put("hair", places.hair);
  put("chest", places.chest);
  put("knee", places.knee);
  put("shin", places.shin);
  put("feet", place);
  if (subject.name !== null) {
    site.landmarks.set(subject.name, { at: place, ahead: facing });
    site.landmarks.set(`${subject.name}.floor`, { at: place, ahead: facing });
  }
  const reach = subject.reach === undefined ? 0 : places.top + subject.reach.value;
  return {
    name,
    place,
    facing,
    nose: frame.front,
    across: frame.across,
    spectacles: subject.spectacles?.value ?? null,
    hair: subject.hair?.value ?? defaultHair,
    stature,
    heels,
    pose,
    face: places.face,
    head: places.head,
    top: places.top,
    speed: speeds[subject.moves ?? "still"] ?? 0,
    reachTop: Math.max(places.top, places.fingertip, reach),
  };
}
