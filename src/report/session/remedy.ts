import { exp2 } from "../../core/exp2.js";
import { fitShares } from "../../math/share-fit.js";
import { lampInputs } from "../evaluate/inputs.js";
import { lightsOn, type Plan } from "../plan.js";
import type { Calibration } from "./calibrate.js";
import { sharesOf, withOutput } from "./calibrate.js";
import { limitsOf } from "./limits.js";
import { type Known, levelOf, readIn } from "./readings.js";

/** What to turn so that the set-up as built reads what was planned, and what it then reads. */
export interface Remedy {
  readonly turns: readonly Turn[];
  /** Stops by which each reading is then off the plan, in the order of the readings. */
  readonly after: readonly number[];
  /** The same by carrying the lamp instead; null where it is not one lamp with a tape. */
  readonly carry: Carry | null;
}

/** One dial. */
export interface Turn {
  /** Null for all lamps together. */
  readonly light: string | null;
  /** By how much, to a tenth of a stop: + is more. */
  readonly by: number;
  /** Where the dial then stands, in stops below full; null where it is not known. */
  readonly below: number | null;
  /** Why it does not go as far as wanted. */
  readonly reason: string | null;
}

/** A lamp carried along its tape. */
export interface Carry {
  readonly light: string;
  /** m, from the tape's zero to where it stands, and to where it would. */
  readonly from: number;
  readonly to: number;
  /** The greatest that a reading is then off, stops. */
  readonly worst: number;
}

/**
 * Dials that bring the readings of the set-up as built to those of the plan, to the nearest tenth of a stop, within what
 * the lamps can do; null where no reading is off the plan by more than `session_note`, or no turn brings all within `session_act` or at least half the way.
 */
export function remedyOf(built: Plan, readings: readonly Known[], calibration: Calibration): Remedy | null {
  const { act, note, same } = limitsOf(built);
  const off = readings.map(({ measured, planned }) => measured - levelOf(planned));
  if (!off.some((stops) => Math.abs(stops) > note)) return null;
  const lights = lightsOn(built.scene);
  const wanted = wantedTurns(built, readings, calibration);
  const dials = lights.map((light) => reachable(light, wanted.get(light.name) ?? 0, same));
  const turned = withOutput(calibration.plan, (name) => dials.find(({ light }) => light === name)?.by ?? 0);
  // What the lamps do not account for stays as it is.
  const offIn = (plan: Plan): readonly number[] =>
    readings.map(({ row, planned }, i) => {
      const there = readIn(plan, row);
      return there === null ? Number.NaN : levelOf(there) + (calibration.left[i] ?? 0) - levelOf(planned);
    });
  const after = offIn(turned);
  if (after.some(Number.isNaN) || worstOf(after) > Math.max(act, worstOf(off) / 2)) return null;
  const moved = dials.filter(({ by }) => by !== 0);
  const together = !calibration.told && lights.length > 1;
  const nearest = worstOf(after);
  const carry = moved.length === 1 && !together ? carried(built, moved[0] as Turn, calibration, offIn) : null;
  return {
    turns: together
      ? [
          {
            light: null,
            by: moved[0]?.by ?? 0,
            below: null,
            reason: moved.find((one) => one.reason)?.reason ?? null,
          },
        ]
      : moved,
    after,
    // Carrying a lamp changes what it does to the others' readings; it is named where it does nearly as well.
    carry: carry !== null && carry.worst <= Math.max(note, nearest + same) ? carry : null,
  };
}

const worstOf = (stops: readonly number[]): number => Math.max(...stops.map(Math.abs));

/** By how much each lamp is to be turned; all alike where the readings do not tell them apart. */
function wantedTurns(
  built: Plan,
  readings: readonly Known[],
  calibration: Calibration,
): ReadonlyMap<string, number> {
  const lights = lightsOn(built.scene);
  const targets = readings.map(({ planned }, i) => levelOf(planned) - (calibration.left[i] ?? 0));
  const tolerances = readings.map(({ tolerance }) => tolerance);
  const shares = sharesOf(built, readings).map((row) =>
    row.map((share, j) => share * exp2(calibration.lamps[j]?.stops ?? 0)),
  );
  if (calibration.told) {
    const { stops } = fitShares(shares, targets, tolerances);
    return new Map(lights.map(({ name }, j) => [name, stops[j] ?? 0]));
  }
  const sums = readings.map(({ measured }, i) => [exp2(measured - (calibration.left[i] ?? 0))]);
  const [all] = fitShares(sums, targets, tolerances).stops;
  return new Map(lights.map(({ name }) => [name, all ?? 0]));
}

/** A turn to a tenth of a stop, ended by full power and by the lowest setting. */
function reachable(
  light: { readonly name: string; readonly below: number | null; readonly lowest: number | null },
  wanted: number,
  same: number,
): Turn {
  const by = Math.round(wanted * 10) / 10;
  if (Math.abs(by) < same) return { light: light.name, by: 0, below: light.below, reason: null };
  if (light.below === null) return { light: light.name, by, below: null, reason: null };
  const most = light.below;
  const least = light.lowest === null ? Number.NEGATIVE_INFINITY : light.below - light.lowest;
  if (by > most) return { light: light.name, by: most, below: 0, reason: "full power is not enough" };
  if (by < least)
    return { light: light.name, by: least, below: light.lowest, reason: "the lowest setting is too much" };
  return { light: light.name, by, below: light.below - by, reason: null };
}

/** The lamp carried along its tape by the inverse square, and what that comes to; null for one without a tape. */
function carried(
  built: Plan,
  turn: Turn,
  { plan }: Calibration,
  offIn: (plan: Plan) => readonly number[],
): Carry | null {
  const light = built.recipe.lights.find(({ name }) => name === turn.light);
  const tape = light?.distance ?? light?.floor_distance;
  if (turn.light === null || tape === undefined || turn.reason !== null) return null;
  const input = lampInputs(plan).find(({ what }) => what === `${turn.light} distance`);
  if (input === undefined) return null;
  const from = tape.length.value;
  const to = Math.round(from * exp2(-turn.by / 2) * 100) / 100;
  const worst = worstOf(offIn(input.at(to - from)));
  return Number.isNaN(worst) ? null : { light: turn.light, from, to, worst };
}
