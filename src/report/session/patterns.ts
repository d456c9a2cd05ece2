import { meterPlace } from "../evaluate/reading.js";
import type { Plan } from "../plan.js";
import { firstFace } from "../plan.js";
import { type Limits, limitsOf } from "./limits.js";
import { type Known, levelOf } from "./readings.js";

/** A pattern of the readings that points to something which is not one number of the set-up. */
export interface Pattern {
  readonly kind: "background" | "meter-aim";
  /** The place of the meter; null for the background as a whole. */
  readonly about: string | null;
}

/** How far behind the face a place belongs to the background, m. */
const BEHIND = 0.3;

/** The patterns that the readings make, by how far they are from what was worked out for the set-up as built. */
export function patternsOf(plan: Plan, readings: readonly Known[]): readonly Pattern[] {
  const rows = readings.map((reading) => ({ ...reading, off: reading.measured - levelOf(reading.built) }));
  return [...meterAim(plan, rows), ...background(plan, rows)];
}

type Off = Known & { readonly off: number };

/** Whether a reading agrees, and whether it is off. */
const byLimits = ({ note, act }: Limits) => ({
  near: ({ off }: Off): boolean => Math.abs(off) <= note,
  far: ({ off }: Off): boolean => Math.abs(off) > act,
});

/** A dome that agrees beside a disc at the same place that does not: the disc looked elsewhere. */
function meterAim(plan: Plan, rows: readonly Off[]): readonly Pattern[] {
  const { near, far } = byLimits(limitsOf(plan));
  return rows
    .filter((row) => row.row.reading.receptor === "disc" && far(row))
    .filter(({ row }) =>
      rows.some(
        (other) =>
          other.row.reading.station === row.reading.station &&
          other.row.reading.receptor === "dome" &&
          near(other),
      ),
    )
    .map(({ row }) => ({ kind: "meter-aim", about: row.reading.station }));
}

/** Nothing off but the background, and all of it to one side. */
function background(plan: Plan, rows: readonly Off[]): readonly Pattern[] {
  const { near, far } = byLimits(limitsOf(plan));
  const face = firstFace(plan.scene);
  if (face === null) return [];
  const isBehind = ({ row }: Off): boolean => {
    const place = meterPlace(plan, row.reading);
    const own = plan.scene.stations.find(({ name }) => name === row.reading.station);
    return place !== null && (own?.subject ?? null) === null && place.at[1] > face[1] + BEHIND;
  };
  const behind = rows.filter(isBehind);
  const others = rows.filter((row) => !isBehind(row));
  if (behind.length === 0 || others.length === 0 || !others.every(near)) return [];
  const first = behind[0]?.off ?? 0;
  if (!behind.every((row) => far(row) && Math.sign(row.off) === Math.sign(first))) return [];
  return [{ kind: "background", about: null }];
}
