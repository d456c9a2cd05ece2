import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { distance } from "../../math/vector.js";
import type { Source } from "../../scene/types.js";
import { atDistance } from "../change/move-source.js";
import { type Turned, turned, turnedBy, turnLamps, withEach } from "../change/turn-lamps.js";
import { intrusionOf } from "../geometry/intrusion.js";
import { lightsOn, type Plan } from "../plan.js";
import { apertureFor, isoFor } from "../say/make-up.js";
import { ceilTo, fixed, floorTo, list } from "../say/number.js";
import { sayLength, sayStops } from "../say/quantity.js";
import { faceChange, fitsRoom } from "./key-light.js";
import { beyondDial } from "./power-words.js";

/** What lamps are turned for. */
export interface TurnGoal {
  /** Where the lamps shine, and its name: from there they are brought nearer. */
  readonly at: Vec3;
  readonly name: string;
  /** 0 where the goal is met. */
  readonly quantity: (changed: Plan) => number;
  /** What a changed plan comes to: `the background is then at its wish`. */
  readonly outcome: (changed: Plan) => string;
}

/** A dial with less than this left, stops, is at its end. */
const DIAL = 0.1;
/** Lamps come no nearer than this share of their distance. */
const NEAREST = 0.3;
/** The search for a nearer place ends at this share of the distance: light is worked out anew at each step. */
const STEP = 2e-3;

/**
 * Turning lamps, in sentences: by how much and what it comes to. Where a dial does not go so far, how far it goes and
 * what that comes to; and what else would do it: the lamps nearer, or the others down and the camera opened.
 */
export function turnRemedy(plan: Plan, way: Turned, goal: TurnGoal): string {
  const { lamps, names, change, words } = way;
  const beyond = lamps.map((lamp) => beyondDial(lamp, change));
  const worst = beyond.reduce((most, by) => (Math.abs(by) > Math.abs(most) ? by : most), 0);
  if (worst === 0) return `Turn ${names} ${words}: ${goal.outcome(way.plan)}.`;
  if (worst < 0) return gelWords(way, beyond, worst);
  const room = Math.max(0, floorTo(change - worst + 1e-6, 0.1));
  const full = turned(plan, lamps, room);
  const ways = [nearer(full.plan, lamps, goal), othersDown(full.plan, lamps, goal)].filter(
    (one) => one !== null,
  );
  const atEnd = lamps.filter(({ below }) => below !== null && below - room < DIAL);
  const rest = lamps.filter((lamp) => !atEnd.includes(lamp));
  const left = rest.flatMap(({ name, below }) =>
    below === null ? [] : [`${name} has ${sayStops(floorTo(below - room + 1e-6, DIAL))} left`],
  );
  const still = left.length === 0 ? "" : ` (${list(left)})`;
  const those = namesOf(atEnd);
  const have =
    room < 0.05
      ? `${those} ${atEnd.length > 1 ? "have" : "has"} no power left${still}, and ${sayStops(change)} ${change === 1 ? "is" : "are"} missing`
      : `${rest.length === 0 ? "Turned" : `With ${names} turned`} up by ${fixed(room, 1)} stop, ${those} ${atEnd.length > 1 ? "are" : "is"} at full power${still}: ${goal.outcome(full.plan)}`;
  const stronger = rest.length === 0 ? "Take a stronger lamp." : `Take a stronger lamp for ${those}.`;
  return ways.length === 0 ? `${have}. ${stronger}` : `${have}. To get there, ${ways.join(", or ")}.`;
}

const namesOf = (lamps: readonly Source[]): string => list(lamps.map(({ name }) => name));

/** Lamps that cannot be turned down so far get a gel or go back; the others are turned down. */
function gelWords({ lamps, change, words }: Turned, beyond: readonly number[], worst: number): string {
  const short = lamps.filter((_, i) => (beyond[i] ?? 0) < 0);
  const rest = lamps.filter((lamp) => !short.includes(lamp));
  const goes = beyond.filter((by) => by < 0).map((by) => sayStops(by - change));
  const by = new Set(goes).size === 1 ? goes.slice(0, 1) : goes;
  const first = rest.length === 0 ? "" : `Turn ${namesOf(rest)} ${words}; `;
  const [each, them] = short.length > 1 ? ["each", "them"] : ["it", "it"];
  return `${first}${namesOf(short)} can be turned down by only ${list(by)}: put a neutral gel of ${fixed(ceilTo(-worst, 0.5), 1)} stop before ${each}, or move ${them} back.`;
}

/** The lamps brought nearer to where they shine, all by the same share, as they now are set. */
function nearer(plan: Plan, lamps: readonly Source[], goal: TurnGoal): string | null {
  if (lamps.some(({ patch, cloth }) => patch !== undefined || cloth !== undefined)) return null;
  const moved = (lamp: Source, share: number): Source =>
    atDistance(lamp, goal.at, floorTo(share * distance(goal.at, lamp.centre), 0.01));
  const there = (share: number): Plan => withEach(plan, lamps, (lamp) => moved(lamp, share));
  const found = findRoot((share) => goal.quantity(there(share)), NEAREST, 1, STEP);
  if (found === undefined) return null;
  const now = lamps.map((lamp) => moved(lamp, found));
  if (now.some((lamp) => !fitsRoom(plan.scene, lamp) || intrusionOf(plan.scene, lamp) !== null)) return null;
  const ways = now.map((lamp) => sayLength(distance(goal.at, lamp.centre)));
  return `bring ${namesOf(lamps)} to ${list(ways)} from ${goal.name}`;
}

/** The other lights turned down, and the camera opened by what the face loses. */
function othersDown(plan: Plan, lamps: readonly Source[], goal: TurnGoal): string | null {
  const names = lamps.map(({ name }) => name);
  const others = lightsOn(plan.scene).filter(({ name }) => !names.includes(name));
  const way = turnLamps(plan, others, goal.quantity);
  if (way === null || way.change > -0.05 || others.some((lamp) => beyondDial(lamp, way.change) !== 0))
    return null;
  const lost = -faceChange(plan, turnedBy(plan, others, way.change));
  const { camera } = plan.scene;
  const opened = [isoFor(camera, lost), apertureFor(camera, lost)].filter((one) => one !== null).join(" or ");
  return opened === "" ? null : `turn ${way.names} ${way.words} and set ${opened}`;
}
