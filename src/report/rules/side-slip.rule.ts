import { lightPlace } from "../../scene/lit/seen.js";
import { anglesFrom, type FaceAngles } from "../face/angles.js";
import { sideOfFace } from "../face/side.js";
import { wishedSide } from "../face/wish.js";
import { fixed } from "../say/number.js";
import { keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The face's angles after its head was turned by `turn` deg, + to the side that counts as +. */
const turned = ({ azimuth, elevation }: FaceAngles, turn: number): FaceAngles => ({
  azimuth: ((azimuth - turn + 540) % 360) - 180,
  elevation,
});

/** The least turn of the head, past the lens or past the key, by which the wished side is lit; empty where none does. */
function turnWords(key: string, light: FaceAngles, lens: FaceAngles, wished: "short" | "broad"): string {
  const past = ({ azimuth }: FaceAngles, more: number): number =>
    (azimuth < 0 ? -1 : 1) * Math.ceil(Math.abs(azimuth) + more);
  const ways = [
    { turn: past(lens, 6), to: "the lens" },
    { turn: past(light, 11), to: key },
  ]
    .filter(({ turn }) => sideOfFace(turned(light, turn), turned(lens, turn)) === wished)
    .sort((a, b) => Math.abs(a.turn) - Math.abs(b.turn));
  const [way] = ways;
  return way === undefined
    ? "Have the head turned, or "
    : `Have the head turned by ${fixed(Math.abs(way.turn), 0)} deg towards ${way.to} and past it, or `;
}

/** The key lights the side of a face that was not wished for. */
export const sideSlip: Rule = {
  code: "side-slip",
  thresholds: [],
  safety: false,
  page: {
    when: "`intent` wishes for the `short` or the `broad` side, and the key stands on the other side of a subject's nose line. A face turned by 5 deg or less from the lens, and a key 10 deg or less off the nose line, have no such side.",
    means:
      "Light on the side turned away from the camera narrows a face; light on the side turned towards it widens it. In a group, or when a head turns, one lamp does both.",
    todo: "Have the head turned to the other side of the lens, or move the key across.",
    source: "Geometry; what counts as square is common practice, no source.",
  },
  check: (plan) => {
    const wished = wishedSide(plan.recipe);
    const key = keyLight(plan);
    const { camera, subjects } = plan.scene;
    if (wished === null || key === null || camera === null) return [];
    return subjects.flatMap((subject): RuleFinding[] => {
      const light = anglesFrom(subject, lightPlace(key.source));
      const lens = anglesFrom(subject, camera.at);
      const side = light === null ? "" : sideOfFace(light, lens);
      if (light === null || lens === null || side === wished || (side !== "short" && side !== "broad"))
        return [];
      const whose = subject.name === "" ? "the face" : `${subject.name}'s face`;
      return [
        {
          severity: "note",
          message: `${key.source.name} lights the ${side} side of ${whose}, not the ${wished}: it stands ${fixed(Math.abs(light.azimuth), 0)} deg off the nose line, the lens ${fixed(Math.abs(lens.azimuth), 0)} deg to ${side === "broad" ? "the same" : "the other"} side.`,
          remedy: `${turnWords(key.source.name, light, lens, wished)}move ${key.source.name} to the other side of the face.`,
          about: subject.name === "" ? key.source.name : subject.name,
        },
      ];
    });
  },
};
