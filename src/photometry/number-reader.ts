const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;

/** What stops the reading of a file: one sentence and the line it is about, counted from 1. */
export interface Lm63Fault {
  readonly problem: string;
  readonly line: number;
}

/**
 * Reads numbers one after the other from the lines below the head of a file. Spaces, tabs, commas and line ends all
 * separate; no line means anything by itself.
 */
export interface NumberReader {
  /** The next number; `what` names it in the sentence when it is missing or no number. 0 after a fault. */
  next(what: string): number;
  /** The next number, which must be 0 or more. 0 after a fault. */
  nextAtLeastZero(what: string): number;
  /** The next number, which must be whole and from `least` to `greatest`. `least` after a fault. */
  nextWhole(what: string, least: number, greatest: number): number;
  /** Notes a fault at the line that was read last; only the first one counts. */
  fail(problem: string): void;
  /** The first fault, or null so far. */
  fault(): Lm63Fault | null;
  /** Whether anything but separators is left. */
  hasMore(): boolean;
}

/**
 * Makes a reader of numbers. After the first fault it reads nothing more.
 *
 * @param lines - Lines of the file.
 * @param start - Index of the first line to read from.
 */
export function numberReader(lines: readonly string[], start: number): NumberReader {
  let index = start;
  let words: readonly string[] = [];
  let at = 0;
  let first: Lm63Fault | null = null;

  const fail = (problem: string): void => {
    first ??= { problem, line: Math.min(Math.max(index, 1), lines.length) };
  };

  const hasMore = (): boolean => {
    while (at >= words.length) {
      const line = lines[index];
      if (line === undefined) return false;
      words = line.split(/[\s,]+/).filter((word) => word !== "");
      at = 0;
      index += 1;
    }
    return true;
  };

  const next = (what: string): number => {
    if (first !== null) return 0;
    if (!hasMore()) {
      fail(`the file ends before ${what}`);
      return 0;
    }
    const word = words[at] ?? "";
    at += 1;
    const value = NUMBER.test(word) ? Number(word) : Number.NaN;
    if (Number.isFinite(value)) return value;
    fail(`${what} must be a number, but here stands "${shown(word)}"`);
    return 0;
  };

  return {
    next,
    nextAtLeastZero(what) {
      const value = next(what);
      if (value >= 0) return value;
      fail(`${what} is below zero`);
      return 0;
    },
    nextWhole(what, least, greatest) {
      const value = next(what);
      if (Number.isInteger(value) && value >= least && value <= greatest) return value;
      fail(`${what} must be a whole number from ${least} to ${greatest}, not ${value}`);
      return least;
    },
    fail,
    fault: () => first,
    hasMore,
  };
}

/** A word of the file as it may be repeated in a sentence: short and without control characters. */
export function shown(word: string): string {
  const clean = word.replace(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, "?");
  return clean.length > 40 ? `${clean.slice(0, 40)}...` : clean;
}
