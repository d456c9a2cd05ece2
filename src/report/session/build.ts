import { exp2 } from "../../core/exp2.js";
import { differences } from "../../model/differences.js";
import type { SessionModel } from "../../model/session.js";
import type { Plan } from "../plan.js";
import { count, fixed } from "../say/number.js";
import { sayFNumber } from "../say/quantity.js";
import type { SessionReading, SessionReport } from "../schema/session.js";
import { calibrate } from "./calibrate.js";
import { causesOf } from "./causes.js";
import { type Limits, limitsOf } from "./limits.js";
import { pairsOf } from "./pairs.js";
import { patternsOf } from "./patterns.js";
import { type DayReading, dayReading, fNumberAt, isKnown, type Known, levelOf } from "./readings.js";
import { type Remedy, remedyOf } from "./remedy.js";
import { sayCause, sayDiagnosis, sayPair, sayPattern } from "./say.js";

const notClaimed: readonly string[] = [
  "A cause is one thing that accounts for the readings; that it is the cause has to be seen on the set.",
  "Intervals hold what the meter's tolerance and the error of bounced light leave open, not what the tapes do.",
];

const notOfPairs = "Three things at once, and two about the place of one lamp, are not looked for.";

/**
 * Puts the readings of a day against the plan and against the set-up as built, calibrates the lamps by them, and says
 * what accounts for the difference and what to turn.
 *
 * @param planOf - A recipe in metres with its light.
 */
export function buildSession(
  session: SessionModel,
  planOf: (recipe: SessionModel["plan"]) => Plan,
): SessionReport {
  const [plan, built] = [planOf(session.plan), planOf(session.built)];
  const rows = session.readings.map((row) => dayReading(plan, built, row));
  const known = rows.filter(isKnown);
  const calibration = known.length === 0 ? null : calibrate(built, known);
  const remedy = calibration === null ? null : remedyOf(built, known, calibration);
  const patterns = patternsOf(built, known).map(sayPattern);
  const causes = [...patterns, ...causesOf(built, known).map(sayCause)];
  const offBuilt = known.map((one) => Math.abs(one.measured - levelOf(one.built)));
  const worst = offBuilt.length === 0 ? null : Math.max(...offBuilt);
  const limits = limitsOf(built);
  const alone = causes.length > 0 || worst === null || worst <= limits.note;
  const pairs = alone ? [] : pairsOf(built, known).map(sayPair);
  const lamps = calibration?.lamps ?? [];
  const readings = rows.map((row) => {
    const at = isKnown(row) ? known.indexOf(row) : -1;
    return readingOf(built, row, calibration?.left[at] ?? null, remedy?.after[at] ?? null);
  });
  return {
    format: 1,
    title: session.title,
    of: session.of,
    variant: session.variant,
    recipe: session.plan.title,
    headline: headlineOf(readings, limits),
    changes: differences(session.plan, session.built).map(({ path, before, after }) => ({
      path,
      planned: before,
      built: after,
    })),
    readings,
    lamps: lamps.map(({ name, stops, interval, reason }) => ({
      name,
      stops,
      interval: interval === null ? null : [interval[0], interval[1]],
      factor: stops === null ? null : exp2(stops),
      reason,
    })),
    told_apart: calibration?.told ?? false,
    remains: calibration === null ? null : rootMean(calibration.left),
    diagnosis: sayDiagnosis(causes, pairs, known.length, worst, limits.note),
    causes,
    pairs,
    remedy: remedy === null ? null : sayRemedy(remedy),
    not_claimed: [...notClaimed, ...(pairs.length > 0 ? [notOfPairs] : [])],
  };
}

const rootMean = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((total, one) => total + one * one, 0) / Math.max(1, values.length));

/** What a difference from the plan asks for; null without one. */
export function verdictOf(off: number | null, { act, note, same }: Limits): SessionReading["verdict"] {
  if (off === null) return null;
  const size = Math.abs(off);
  return size > act ? "act" : size > note ? "note" : size > same ? "near" : "same";
}

function readingOf(built: Plan, row: DayReading, left: number | null, after: number | null): SessionReading {
  const known: Known | null = isKnown(row) ? row : null;
  const offPlan = known === null ? null : known.measured - levelOf(known.planned);
  return {
    what: row.row.what,
    measured: measuredWords(fNumberAt(built, row.measured), row),
    planned: levelWords(built, row.planned === null ? null : levelOf(row.planned), row.planned?.exposure),
    built: levelWords(built, row.built === null ? null : levelOf(row.built), row.built?.exposure),
    tolerance: row.tolerance,
    off_plan: offPlan,
    off_built: known === null ? null : known.measured - levelOf(known.built),
    left,
    after,
    verdict: verdictOf(offPlan, limitsOf(built)),
    reason: row.reason,
  };
}

/** What the meter showed, an f-number as those that were worked out are shown. */
function measuredWords(number: number | null, { row }: DayReading): SessionReading["measured"] {
  const plain = row.value.type === "f-number" && number !== null;
  return { f_number: number, shown: plain ? sayFNumber(number) : row.value.quantity.written };
}

function levelWords(
  plan: Plan,
  level: number | null,
  exposure: number | undefined,
): SessionReading["planned"] {
  const number = fNumberAt(plan, level);
  if (number !== null) return { f_number: number, shown: sayFNumber(number) };
  return { f_number: null, shown: exposure === undefined ? null : `${exposure.toPrecision(3)} lx s` };
}

function headlineOf(readings: readonly SessionReading[], { same }: Limits): string {
  const judged = readings.filter(({ off_plan }) => off_plan !== null);
  if (judged.length === 0) return "No reading can be put against the plan.";
  const off = judged.map((row) => row.off_plan ?? 0);
  const worst = judged[off.map(Math.abs).indexOf(Math.max(...off.map(Math.abs)))] as SessionReading;
  const stops = worst.off_plan ?? 0;
  const size = Math.abs(stops);
  if (size <= same) return "Every reading is what was planned.";
  const most = `${worst.what} reads ${fixed(size, 1)} stop ${stops > 0 ? "over" : "under"} the plan`;
  const acted = judged.filter(({ verdict }) => verdict === "act").length;
  if (acted === 0) return `${most}, which needs nothing done.`;
  return `${acted} of ${count(judged.length, "reading")} to act on. ${acted > 1 ? `The furthest off: ${most}` : most}.`;
}

function sayRemedy({ turns, after, carry }: Remedy): NonNullable<SessionReport["remedy"]> {
  return {
    turns: turns.map(({ light, by, below, reason }) => ({
      light,
      by,
      setting: below === null ? null : below < 0.05 ? "full" : `full - ${fixed(below, 1)} stop`,
      reason,
    })),
    worst: Math.max(...after.map(Math.abs)),
    carry: carry === null ? null : { ...carry },
  };
}
