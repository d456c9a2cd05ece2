import type { Meter } from "../../transport/meter.js";
import { type Lit, lightsOf } from "../plan.js";
import { type Reading, readingOf, shareOf } from "./reading.js";

/** One of many meters, and what it reads. */
export interface Extreme {
  /** Its place in the row of meters. */
  readonly index: number;
  readonly reading: Reading;
}

/** A light whose glance may be off by no more than this share of a reading needs no better one: 0.007 stop. */
const GOOD = 0.005;

/** A meter's reading with the room in which it lies. */
interface Sighted {
  readonly meter: Meter;
  reading: Reading;
  /** Whether it is as good as a reading is. */
  read: boolean;
}

/**
 * The brightest and the darkest of many meters that get light; null where none gets any. All are glanced at; only those
 * are read that may be the brightest or the darkest by what the glances state of themselves, and of them only the lights
 * that matter there.
 *
 * @param most - A difference in stops that is of no interest: null as well where it is surely no greater.
 */
export function extremesAmong(
  lit: Lit,
  meters: readonly Meter[],
  most = 0,
): { readonly bright: Extreme; readonly dark: Extreme } | null {
  const all = meters
    .map((meter): Sighted => ({ meter, reading: glanceAt(lit, meter), read: false }))
    .map((sighted, index) => ({ sighted, index }))
    .filter(({ sighted }) => sighted.reading.exposure > 0);
  const room = (sighted: Sighted): number => (sighted.read ? 0 : sighted.reading.error);
  const high = ({ sighted }: { sighted: Sighted }): number => sighted.reading.exposure + room(sighted);
  const low = ({ sighted }: { sighted: Sighted }): number => sighted.reading.exposure - room(sighted);
  const spread = Math.max(...all.map(high)) / Math.min(...all.map(low));
  if (spread > 0 && Math.log2(spread) <= most) return null;
  const search = (value: (row: { sighted: Sighted }) => number, later: boolean): Extreme | null => {
    for (;;) {
      const best = all.reduce<(typeof all)[number] | null>(
        (sofar, row) =>
          sofar === null || value(row) > value(sofar) || (later && value(row) === value(sofar)) ? row : sofar,
        null,
      );
      if (best === null) return null;
      const { sighted, index } = best;
      if (sighted.read) return { index, reading: sighted.reading };
      sighted.reading = refined(lit, sighted);
      sighted.read = true;
    }
  };
  const bright = search(high, false);
  const dark = search((row) => -low(row), true);
  return bright === null || dark === null ? null : { bright, dark };
}

function glanceAt(lit: Lit, meter: Meter): Reading {
  const shares = lightsOf(lit.scene).map(({ name }) => shareOf(lit, name, meter, "glance"));
  return readingOf(lit.scene, meter, shares);
}

/** The reading, with the lights worked out in full whose glance is not good enough for it. */
function refined(lit: Lit, { meter, reading }: Sighted): Reading {
  const shares = reading.shares.map((share) =>
    share.error > GOOD * reading.exposure ? shareOf(lit, share.name, meter) : share,
  );
  return readingOf(lit.scene, meter, shares);
}
