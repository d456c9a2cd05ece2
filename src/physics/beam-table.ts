import { type CandelaTable, candelaAt, totalLumens, zonalLumens } from "../photometry/index.js";

const DEGREES = 180 / Math.PI;

/** A measured distribution of intensity, made ready to be asked for the front of a flat source. */
export interface BeamTable {
  /** The same for tables with the same numbers. */
  readonly id: string;
  readonly photometry: CandelaTable;
  /** Intensity along the axis, in the unit of the table, above 0. */
  readonly axial: number;
  /** Flux into the front half, in the unit of the table. */
  readonly front: number;
  /** Share of all its flux that goes behind the opening, and is left out. */
  readonly behind: number;
  /** Bounds of angles from the axis, radians, and the share of rays that lies up to each: where light is sent to. */
  readonly angles: Float64Array;
  readonly upTo: Float64Array;
}

/** Steps of the angle from the axis in which rays are dealt out. */
const STEPS = 180;
/** Share of the rays that is dealt out evenly, so that no direction is left without. */
const EVEN = 0.05;

/**
 * Makes a table of an LM-63 file ready: the nadir of type C and the middle of type B are the axis of the lamp. Null where
 * it gives no light along its axis or into its front.
 */
export function beamTable(photometry: CandelaTable): BeamTable | null {
  const axial = candelaAt(photometry, 0, photometry.system === "C" ? (photometry.horizontal[0] ?? 0) : 0);
  const all = totalLumens(photometry);
  const front = photometry.system === "C" ? zonalLumens(photometry, 0, 90) : all;
  if (!(axial > 0) || !(front > 0)) return null;
  const angles = new Float64Array(STEPS + 1);
  const upTo = new Float64Array(STEPS + 1);
  const draft = { photometry, axial };
  let sum = 0;
  for (let i = 1; i <= STEPS; i += 1) {
    const from = ((i - 1) / STEPS) * (Math.PI / 2);
    const to = (i / STEPS) * (Math.PI / 2);
    const middle = (from + to) / 2;
    let mean = 0;
    for (let k = 0; k < 16; k += 1) mean += intensityShare(draft, middle, ((k + 0.5) / 16) * 2 * Math.PI);
    sum += mean * Math.sin(middle);
    angles[i] = to;
    upTo[i] = sum;
  }
  for (let i = 1; i <= STEPS; i += 1) upTo[i] = (1 - EVEN) * ((upTo[i] as number) / sum) + (EVEN * i) / STEPS;
  return { id: idOf(photometry), photometry, axial, front, behind: 1 - front / all, angles, upTo };
}

/** Intensity at an angle from the axis and round it, as a share of that along it. */
function intensityShare(table: Pick<BeamTable, "photometry" | "axial">, away: number, round: number): number {
  const s = Math.sin(away);
  return tableIntensity(table, s * Math.sin(round), s * Math.cos(round), Math.cos(away));
}

/**
 * Intensity in a direction as a share of that along the axis.
 *
 * Of type C the half plane of 0 deg holds the height of the opening upwards, that of 90 deg its width; of type B the
 * horizontal angle runs along the width and the vertical angle up the height (IES LM-63, from memory).
 *
 * @param x - Along the width of the opening; with `y` and `z` of any length.
 * @param y - Along its height.
 * @param z - Along the axis.
 */
export function tableIntensity(
  { photometry, axial }: Pick<BeamTable, "photometry" | "axial">,
  x: number,
  y: number,
  z: number,
): number {
  if (photometry.system === "C") {
    const away = Math.atan2(Math.sqrt(x * x + y * y), z) * DEGREES;
    return candelaAt(photometry, away, Math.atan2(x, y) * DEGREES) / axial;
  }
  const aside = Math.atan2(x, Math.sqrt(y * y + z * z)) * DEGREES;
  return candelaAt(photometry, Math.atan2(y, z) * DEGREES, aside) / axial;
}

/** The cosine of a ray's angle from the axis for a number from 0 to 1: where the table sends most, most rays go. */
export function tableCosine({ angles, upTo }: BeamTable, c: number): number {
  const i = stepOf(upTo, c);
  const low = upTo[i - 1] as number;
  const share = (c - low) / ((upTo[i] as number) - low);
  const from = angles[i - 1] as number;
  return Math.cos(from + share * ((angles[i] as number) - from));
}

/** The light of a ray that was dealt out so, in a direction, as a share of the mean. */
export function tableLight(table: BeamTable, x: number, y: number, z: number): number {
  const { angles, upTo, axial, front } = table;
  const away = Math.atan2(Math.sqrt(x * x + y * y), z);
  const i = Math.min(STEPS, Math.max(1, Math.ceil((away / (Math.PI / 2)) * STEPS)));
  const dealt =
    ((upTo[i] as number) - (upTo[i - 1] as number)) / ((angles[i] as number) - (angles[i - 1] as number));
  return (tableIntensity(table, x, y, z) * axial * 2 * Math.PI * Math.sin(away)) / (front * dealt);
}

function stepOf(upTo: Float64Array, c: number): number {
  let low = 0;
  let high = upTo.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((upTo[middle] as number) <= c) low = middle;
    else high = middle;
  }
  return high;
}

/** A short text of the numbers of a table (FNV-1a over their written form, twice). */
function idOf({ system, vertical, horizontal, candela }: CandelaTable): string {
  const text = JSON.stringify([system, vertical, horizontal, candela]);
  let a = 0x811c9dc5;
  let b = 0x01000193;
  for (let i = 0; i < text.length; i += 1) {
    a = Math.imul(a ^ text.charCodeAt(i), 0x01000193);
    b = Math.imul(b + text.charCodeAt(i), 0x85ebca6b) ^ (b >>> 13);
  }
  return `${(a >>> 0).toString(16)}${(b >>> 0).toString(16)}${text.length}`;
}
