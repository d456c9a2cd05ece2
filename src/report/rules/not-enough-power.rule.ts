import { atPower, withSource } from "../change/move-source.js";
import { lightsOf, type Plan } from "../plan.js";
import { apertureFor, isoFor } from "../say/make-up.js";
import { fixed, floorTo } from "../say/number.js";
import { sayLength, sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import { bearingBeforeHead, isBehindHead } from "./behind-head.js";
import { faceOffAperture, keyAtDistance, keyDistanceWhere, keyLight } from "./key-light.js";
import { type Reach, reachOf, tooWeak } from "./reach.js";
import type { Rule } from "./rule.js";
import { keyShade, withoutPiece } from "./without-shade.js";

/** The plan with every light up by so many stops. */
function allUp(plan: Plan, stops: number): Plan {
  return lightsOf(plan.scene).reduce(
    (before, source) => withSource(before, plan.scene.sources.indexOf(source), atPower(source, stops)),
    plan,
  );
}

function remedies(plan: Plan, { key, needed }: Reach): string {
  const lack = -needed;
  const camera = plan.scene.camera;
  const ways: string[] = [];
  const full = allUp(plan, key.source.below ?? 0);
  const there = keyLight(full);
  const near =
    there === null
      ? null
      : keyDistanceWhere(full, there, 0.2, key.away, (changed) => faceOffAperture(changed) ?? 0);
  if (near !== null && there !== null) {
    const away = floorTo(near, 0.01);
    const off = faceOffAperture(keyAtDistance(full, there, away)) ?? 0;
    ways.push(
      `bring ${key.source.name} to ${sayLength(away)} from the face (full power then is ${fixed(off, 1)} stop over)`,
    );
  }
  const iso = isoFor(camera, lack);
  if (iso !== null) ways.push(`set ${iso}`);
  const aperture = apertureFor(camera, lack);
  if (aperture !== null) ways.push(`open to ${aperture}`);
  const text = ways.join(", or ");
  return text === "" ? "Take a stronger lamp." : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What full power comes to without a piece that stands in the way. */
function freeWords(plan: Plan, piece: string): string {
  const free = reachOf(withoutPiece(plan, piece));
  if (free === null) return "";
  const off = `${sayStops(Math.abs(free.needed))} ${free.needed < 0 ? "under" : "over"}`;
  return `: without ${piece} full power is ${off}`;
}

/** Full power is too little for the set aperture. */
export const notEnoughPower: Rule = {
  code: "not-enough-power",
  thresholds: [],
  safety: false,
  page: {
    when: "With the key at full power, and the other lights turned up with it, a disc at the first face that looks at the key still reads under the set aperture by more than the tolerance of one meter reading (`meter` in `tolerances`, 0.1 stop). Losses by focusing near count. Where people or pieces of the set hide more than half of the key from the meter, power is no way out, and it says so.",
    means: "The picture comes out dark.",
    todo: "Come nearer, raise the ISO value, open the aperture, or put a dish on a bare head.",
    source: "Exposure: ISO 2720, ISO 10157.",
  },
  check: (plan) => {
    const reach = reachOf(plan);
    if (reach === null || !tooWeak(reach)) return [];
    const lack = -reach.needed;
    if (isBehindHead(plan, reach.key)) {
      const { name } = reach.key.source;
      const bearing = bearingBeforeHead(plan, reach.key);
      const round = bearing === null ? "Bring it round the person" : `Bring it round to ${bearing}`;
      return [
        {
          severity: "stop",
          message: `${name} stands behind the head: the meter before the face does not see it, and at full power the face is ${sayStops(lack)} under the set aperture.`,
          remedy: `${round}, where the meter sees it; or make another light the key.`,
          about: name,
        },
      ];
    }
    const shade = keyShade(plan, reach.key);
    if (shade !== null) {
      const { name } = reach.key.source;
      const piece = ownerOf(shade.piece.name);
      return [
        {
          severity: "stop",
          message: `${piece} hides ${sayPercent(shade.share)} of ${name} from the meter before the face, and at full power the face is ${sayStops(lack)} under the set aperture.`,
          remedy: `Move ${name} or ${piece}, so that the meter sees the light${freeWords(plan, piece)}.`,
          about: name,
        },
      ];
    }
    return [
      {
        severity: "stop",
        message: `At full power the face is ${sayStops(lack)} under the set aperture.`,
        remedy: remedies(plan, reach),
        about: reach.key.source.name,
      },
    ];
  },
};
