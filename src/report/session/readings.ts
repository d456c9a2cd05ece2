import { exp2 } from "../../core/exp2.js";
import type { MeasuredReading } from "../../model/session.js";
import { asReading } from "../evaluate/as-reading.js";
import { evaluate } from "../evaluate/expression.js";
import { evaluateReading } from "../evaluate/reading.js";
import { fNumberOf, type Reading } from "../light/reading.js";
import type { Plan } from "../plan.js";
import { tolerance } from "../settings.js";

/** One reading of the day beside those that were worked out for it. Levels are log2 of exposure over meter constant. */
export interface DayReading {
  readonly row: MeasuredReading;
  readonly measured: number | null;
  readonly planned: Reading | null;
  readonly built: Reading | null;
  /** How far the reading and the bounced light that was worked out for it may be off together, stops. */
  readonly tolerance: number;
  readonly reason: string | null;
}

/** A reading of which everything is known. */
export interface Known extends DayReading {
  readonly measured: number;
  readonly planned: Reading;
  readonly built: Reading;
}

/** The level of a reading: log2 of its exposure over its meter's constant. */
export const levelOf = ({ exposure, constant }: Reading): number => Math.log2(exposure / constant);

/** What a reading comes to in a plan; null without light or place. */
export function readIn(plan: Plan, row: MeasuredReading): Reading | null {
  const { reading } = evaluateReading(plan, row.reading);
  return reading !== null && reading.exposure > 0 ? reading : null;
}

/** Puts one reading of the day beside what the plan and the set-up as built should have read. */
export function dayReading(plan: Plan, built: Plan, row: MeasuredReading): DayReading {
  const there = evaluateReading(built, row.reading);
  const planned = readIn(plan, row);
  const now = readIn(built, row);
  const value = evaluate({ plan: built, alarms: null }, row.value);
  const meter = asReading(built, value);
  const constant = row.value.type === "exposure" ? there.reading?.constant : meter?.constant;
  const measured = meter === null || constant === undefined ? null : levelOf({ ...meter, constant });
  const own = row.tolerance ?? tolerance(built.recipe, "meter");
  const reason =
    now === null
      ? (there.reason ?? "it gets no light")
      : planned === null
        ? "by the plan it gets no light"
        : measured === null
          ? "the camera does not say enough to know what it means"
          : null;
  return {
    row,
    measured,
    planned,
    built: now,
    tolerance: Math.hypot(Math.max(own, 0.01), there.error),
    reason,
  };
}

/** Whether everything of a reading is known. */
export const isKnown = (reading: DayReading): reading is Known => reading.reason === null;

/** A level as f-number at the camera's ISO; null without one. */
export function fNumberAt(plan: Plan, level: number | null): number | null {
  if (level === null) return null;
  return fNumberOf(plan.scene, exp2(level), 1);
}
