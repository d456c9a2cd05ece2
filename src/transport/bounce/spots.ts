import type { Gathered } from "./gather.js";

/**
 * Places that stand for what one station sees of a cell that fills much of its view: light may differ from one end of
 * such a cell to the other, so it is found where the station looks.
 */
export interface Spots {
  count: number;
  /** First spot of each station, and one after the last. */
  readonly start: Int32Array;
  /** Cell and u, v of each spot, and its share of the view. */
  cell: Int32Array;
  spot: Float64Array;
  share: Float64Array;
}

/** No spots yet, with room for a few. */
export function emptySpots(stations: number): Spots {
  const room = 256;
  return {
    count: 0,
    start: new Int32Array(stations + 1),
    cell: new Int32Array(room),
    spot: new Float64Array(2 * room),
    share: new Float64Array(room),
  };
}

/**
 * Adds the spots of a station: of each cell that has more than `most` of the view, a ray for every part of that size.
 * `open` and `last` are scratch, a number for each cell.
 */
export function addSpots(
  spots: Spots,
  station: number,
  gathered: Gathered,
  cellOfRay: Int32Array,
  seen: Float64Array,
  most: number,
  gathering: Float64Array,
): void {
  spots.start[station] = spots.count;
  gathering.fill(0);
  const { start, share, spot } = gathered;
  for (let r = start[station] as number; r < (start[station + 1] as number); r++) {
    const cell = cellOfRay[r] as number;
    const part = share[r] as number;
    if (cell < 0 || part === 0 || (seen[cell] as number) <= 2 * most) continue;
    const whole = seen[cell] as number;
    const step = whole / Math.ceil(whole / most);
    // Half a step ahead, so that each spot stands in the middle of its part.
    const before = gathering[cell] as number;
    const after = before + part;
    gathering[cell] = after;
    const passed = Math.floor(after / step + 0.5 - 1e-9) - Math.floor(before / step + 0.5 - 1e-9);
    if (passed <= 0) continue;
    if (spots.count === spots.cell.length) grow(spots);
    const at = spots.count++;
    spots.cell[at] = cell;
    spots.spot[2 * at] = spot[2 * r] as number;
    spots.spot[2 * at + 1] = spot[2 * r + 1] as number;
    spots.share[at] = step * passed;
  }
  spots.start[station + 1] = spots.count;
}

function grow(spots: Spots): void {
  const room = 2 * spots.cell.length;
  const cell = new Int32Array(room);
  const spot = new Float64Array(2 * room);
  const share = new Float64Array(room);
  cell.set(spots.cell);
  spot.set(spots.spot);
  share.set(spots.share);
  spots.cell = cell;
  spots.spot = spot;
  spots.share = share;
}
