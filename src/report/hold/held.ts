import type { HoldModel } from "../../model/types.js";

/** What became of one `hold`. */
export interface Held {
  /** The statement as a recipe says it. */
  readonly text: string;
  /** What was turned or moved: `key.power`. */
  readonly by: string;
  /** Where it stands now: `full - 1.3 stop`, `2.61 m`; null where it could not be found. */
  readonly setting: string | null;
  /** Why the reading could not be held, or not quite. */
  readonly reason: string | null;
}

/** The outcome of a hold that could not be done, or done only in part. */
export function held(hold: HoldModel, setting: string | null, reason: string | null): Held {
  const by = hold.by.map((dial) => `${dial.light}.${dial.property}`).join(", ");
  return { text: hold.written, by, setting, reason };
}
