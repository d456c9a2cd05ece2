import { distance, normalise, subtract } from "../../math/vector.js";
import type { SceneSubject } from "../../scene/types.js";
import { inFrame } from "../geometry/frame.js";
import { inOutlinePlane, insideOutline, type OnBody } from "../geometry/outline.js";
import { type Seen, sightOf } from "../geometry/sight.js";
import type { Lit } from "../plan.js";
import { sayOwner } from "../say/surfaces.js";
import type { Contrast } from "./contrast.js";
import { type HeadOutline, headOutline, type Side, sayHeadSide } from "./head-outline.js";
import { noLight } from "./no-light.js";
import { type Reading, readingAt, sumOf } from "./reading.js";

/** Where the outline is looked at: on its side, and so many radians round it to either hand. */
const TURNS = [-0.35, 0, 0.35];
/** The middle of the outer tenth of the outline, and as far past it, in shares of the way from its middle. */
const INSIDE = 0.95;
const PAST = 1.05;

/** What the lens sees at one place of the outline, and just past it. */
interface Pair {
  readonly edge: OnBody;
  readonly behind: Seen;
}

const none = (reason: string): Contrast => ({ stops: null, reason, error: 0 });

/** The places of one side, or why one of them cannot be had. */
function pairsAt({ scene }: Lit, outline: HeadOutline, side: Side, expected: string | null): Pair[] | string {
  const { camera, head, seen } = outline;
  const look = sightOf(scene);
  const pairs: Pair[] = [];
  for (const turn of TURNS) {
    const edge = insideOutline(seen, turn, INSIDE);
    if (camera.focalLength !== null && !inFrame(camera, edge.at))
      return `${sayHeadSide(side)} is outside the frame`;
    const toEdge = normalise(subtract(edge.at, camera.at));
    const past = normalise(subtract(inOutlinePlane(seen, turn, PAST), camera.at));
    if (toEdge === undefined || past === undefined) return "the lens is too near to see an outline";
    const before = look(camera.at, toEdge);
    if (before !== null && before.owner !== head.name)
      return `${sayOwner(before.owner)} hides ${sayHeadSide(side)} from the lens`;
    const behind = look(camera.at, past);
    if (behind === null) return `behind ${sayHeadSide(side)} the lens sees nothing but the dark`;
    if (behind.way < distance(edge.at, camera.at))
      return `${sayOwner(behind.owner)} stands before ${sayHeadSide(side)}`;
    if (expected !== null && behind.owner !== expected)
      return `behind ${sayHeadSide(side)} the lens sees ${sayOwner(behind.owner)}, not ${expected}`;
    pairs.push({ edge, behind });
  }
  return pairs;
}

/** Reflectance times light, summed over readings; pi and the number of places are the same on both sides. */
function shine(readings: readonly (readonly [reflectance: number, reading: Reading])[]): {
  readonly luminance: number;
  readonly error: number;
} {
  return {
    luminance: sumOf(readings.map(([reflectance, { exposure }]) => reflectance * exposure)),
    error: sumOf(readings.map(([reflectance, { error }]) => reflectance * error)),
  };
}

/**
 * The outline of a head against what lies behind it in the picture, as seen from the lens, in stops: + where the edge
 * of the head is brighter. Both are taken as matt: luminance goes with reflectance times illuminance.
 *
 * @param part - `hair` takes the reflectance of the hair, `face` that of the skin.
 * @param expected - The surface that is to lie behind; null for any.
 */
export function separation(
  lit: Lit,
  subject: SceneSubject,
  part: "hair" | "face",
  side: Side,
  expected: string | null,
): Contrast {
  const outline = headOutline(lit.scene, subject, side);
  if (typeof outline === "string") return none(outline);
  const pairs = pairsAt(lit, outline, side, expected);
  if (typeof pairs === "string") return none(pairs);
  const reflectance = part === "hair" ? subject.hair : outline.head.reflectance;
  const edge = shine(
    pairs.map(({ edge: { at, normal } }) => [
      reflectance,
      readingAt(lit, { at, facing: normal, receptor: "disc" }),
    ]),
  );
  const back = shine(pairs.map(({ behind }) => [behind.reflectance, readingAt(lit, behind.meter)]));
  if (!(edge.luminance > 0)) return none(`${sayHeadSide(side)} ${noLight}, or reflects none`);
  if (!(back.luminance > 0))
    return none(`what lies behind ${sayHeadSide(side)} ${noLight}, or reflects none`);
  return {
    stops: Math.log2(edge.luminance / back.luminance),
    reason: null,
    error: Math.log2(1 + edge.error / edge.luminance) + Math.log2(1 + back.error / back.luminance),
  };
}
