import { type Lm63Head, readHead } from "./head.js";
import { MAX_LM63_ANGLES, MAX_LM63_CHARACTERS } from "./limits.js";
import { type NumberReader, numberReader, shown } from "./number-reader.js";
import type { AngleSystem, Lm63Result, TiltTable } from "./photometry.js";

const FOOT_M = 0.3048;

/** No lamp comes near it; keeps every later sum finite. */
const GREATEST_CANDELA = 1e15;

/**
 * Reads the text of an LM-63 file (IES LM-63 of 1986, 1991, 1995, 2002 and 2019): types C and B, `TILT=NONE` and
 * `TILT=INCLUDE`. Candelas are multiplied by the file's multiplier and ballast factor; the value that follows the
 * ballast factor multiplies them only in files of 1986 and 1991, because its meaning was changed in 1995. Never
 * throws: what can't be read is answered by one sentence and a line number.
 *
 * @param text - The file.
 * @returns The table in candelas, or what is wrong.
 */
export function readLm63(text: string): Lm63Result {
  if (text.length > MAX_LM63_CHARACTERS) {
    return {
      photometry: null,
      problem: `the file is longer than ${MAX_LM63_CHARACTERS} characters`,
      line: 1,
    };
  }
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  const head = readHead(lines);
  if ("problem" in head) return { photometry: null, ...head };
  const numbers = numberReader(lines, head.next);
  const tilt = readTilt(head, numbers);
  const lamps = numbers.next("the number of lamps");
  const lumens = numbers.next("the lumens of a lamp");
  const multiplier = numbers.nextAtLeastZero("the candela multiplier");
  const verticalCount = numbers.nextWhole("the number of vertical angles", 1, MAX_LM63_ANGLES);
  const horizontalCount = numbers.nextWhole("the number of horizontal angles", 1, MAX_LM63_ANGLES);
  const system = readSystem(numbers);
  const metres = numbers.nextWhole("the unit of length", 1, 2) === 2 ? 1 : FOOT_M;
  const width = numbers.next("the width of the opening") * metres;
  const length = numbers.next("the length of the opening") * metres;
  const height = numbers.next("the height of the opening") * metres;
  const ballast = numbers.nextAtLeastZero("the ballast factor");
  const old = head.edition === "1986" || head.edition === "1991";
  const changing = old
    ? numbers.nextAtLeastZero("the ballast-lamp factor")
    : numbers.next("the value after the ballast factor");
  const inputWatts = numbers.next("the input watts");
  const factor = multiplier * ballast * (old ? changing : 1);
  const vertical = readAngles(numbers, verticalCount, "vertical angle");
  const horizontal = readAngles(numbers, horizontalCount, "horizontal angle");
  checkRanges(system, vertical, horizontal, numbers);
  const candela = readCandela(numbers, horizontalCount, verticalCount, factor);
  const fault = numbers.fault();
  if (fault !== null) return { photometry: null, ...fault };
  const notes = [...head.notes];
  if (numbers.hasMore()) notes.push("more follows after the last candela value and was not read");
  if (isPartCircle(system, horizontal)) {
    notes.push(
      "the horizontal angles cover neither a quarter, a half nor the whole circle; the rest is filled in",
    );
  }
  if (tilt !== null)
    notes.push("the tilt table is kept but not applied: candelas are those of the position of test");
  return {
    photometry: {
      edition: head.edition,
      keywords: head.keywords,
      system,
      lamps,
      lumensPerLamp: lumens < 0 ? null : lumens,
      opening: { width, length, height },
      inputWatts,
      tilt,
      vertical,
      horizontal,
      candela,
    },
    notes,
  };
}

function readTilt(head: Lm63Head, numbers: NumberReader): TiltTable | null {
  const kind = head.tilt.toUpperCase();
  if (kind === "NONE") return null;
  if (kind !== "INCLUDE") {
    numbers.fail(`TILT=${shown(head.tilt)} is not supported: only TILT=NONE and TILT=INCLUDE are read`);
    return null;
  }
  const geometry = numbers.nextWhole("the lamp-to-luminaire geometry", 1, 3) as 1 | 2 | 3;
  const count = numbers.nextWhole("the number of tilt angles", 1, MAX_LM63_ANGLES);
  const angles = readAngles(numbers, count, "tilt angle");
  const factors: number[] = [];
  for (let i = 0; i < count; i += 1) factors.push(numbers.next("a tilt factor"));
  return { geometry, angles, factors };
}

function readSystem(numbers: NumberReader): AngleSystem {
  const type = numbers.nextWhole("the photometric type", 1, 3);
  if (type === 3) numbers.fail("photometric type A is not supported: only types B and C are read");
  return type === 2 ? "B" : "C";
}

function readAngles(numbers: NumberReader, count: number, what: string): readonly number[] {
  const angles: number[] = [];
  for (let i = 0; i < count && numbers.fault() === null; i += 1) {
    const angle = numbers.next(`a ${what}`);
    const before = angles[i - 1];
    if (before !== undefined && angle <= before) {
      numbers.fail(`each ${what} must be greater than the one before, but ${angle} follows ${before}`);
    }
    angles.push(angle);
  }
  return angles;
}

function readCandela(
  numbers: NumberReader,
  horizontalCount: number,
  verticalCount: number,
  factor: number,
): readonly (readonly number[])[] {
  const candela: number[][] = [];
  for (let h = 0; h < horizontalCount && numbers.fault() === null; h += 1) {
    const row: number[] = [];
    for (let v = 0; v < verticalCount && numbers.fault() === null; v += 1) {
      const value = numbers.nextAtLeastZero("a candela value") * factor;
      if (!(value <= GREATEST_CANDELA))
        numbers.fail("a candela value times the factors of the file is too great");
      row.push(value);
    }
    candela.push(row);
  }
  return candela;
}

function checkRanges(
  system: AngleSystem,
  vertical: readonly number[],
  horizontal: readonly number[],
  numbers: NumberReader,
): void {
  const [vLeast, vGreatest, hLeast, hGreatest] = system === "C" ? [0, 180, 0, 360] : [-90, 90, -90, 90];
  if (!within(vertical, vLeast, vGreatest)) {
    numbers.fail(`the vertical angles of type ${system} must lie between ${vLeast} and ${vGreatest} degrees`);
  }
  if (!within(horizontal, hLeast, hGreatest)) {
    numbers.fail(
      `the horizontal angles of type ${system} must lie between ${hLeast} and ${hGreatest} degrees`,
    );
  }
}

function within(angles: readonly number[], least: number, greatest: number): boolean {
  return angles.every((angle) => angle >= least && angle <= greatest);
}

function isPartCircle(system: AngleSystem, horizontal: readonly number[]): boolean {
  if (system !== "C" || horizontal.length < 2) return false;
  const first = horizontal[0] ?? 0;
  const last = horizontal[horizontal.length - 1] ?? 0;
  const usual = first === 0 ? last === 90 || last === 180 || last >= 270 : first === 90 && last === 270;
  return !usual;
}
