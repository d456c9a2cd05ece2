import type { Paint } from "../diagnostics/print-paint.js";
import type { Parsed } from "./arguments/parse.js";
import { TROUBLE } from "./exit.js";
import type { Machine } from "./machine.js";

/** One run of one command. */
export interface Session extends Parsed {
  readonly io: Machine;
  /** Cells of a line. */
  readonly width: number;
  /** Colours for data and for words. */
  readonly paint: Paint;
  readonly paintErr: Paint;
  /** Told of every file before it is read, where somebody watches them. */
  readonly reading?: (path: string) => void;
}

/** Says what is wrong with the use of a command. */
export function misuse(session: Pick<Session, "io">, sentence: string): number {
  session.io.err(`${sentence}\n`);
  return TROUBLE;
}

/** The number that an option was given, null without it; a sentence where it is no number of that kind. */
export function wholeNumber(
  options: ReadonlyMap<string, string>,
  name: string,
  least: number,
  most: number,
): number | null | { readonly problem: string } {
  const text = options.get(name);
  if (text === undefined) return null;
  const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  return { problem: `--${name} takes a whole number from ${least} to ${most}, not "${text}".` };
}
