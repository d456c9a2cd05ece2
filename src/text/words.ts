import { characterAt, isDigit, isNameStart, nameEnd, skipSpaces } from "./characters.js";
import { AsWord, By, CompoundUnit, Dot, keywords, Name } from "./kinds.js";
import { scanFNumber, scanWrongFNumber } from "./numbers.js";
import { emit, lastType, replacing, report, type Scan } from "./scan.js";

const SLASH = 47;
const POINT = 46;

function isLetterF(code: number): boolean {
  return code === 0x66 || code === 0x46 || code === 0x192;
}

function isLetterX(code: number): boolean {
  return code === 0x78 || code === 0x58 || code === 0xd7;
}

/** Reads whatever starts with a letter. Gives the offset behind it. */
export function scanWord(scan: Scan, start: number): number {
  const text = scan.text;
  const first = text.charCodeAt(start);
  if (scan.afterNumber > 0 && isLetterX(first)) {
    const end = scanBy(scan, start);
    if (end > 0) return end;
  }
  const end = nameEnd(text, start);
  const next = text.charCodeAt(end);
  if (isLetterF(first) && lastType(scan) !== Dot) {
    if (end === start + 1 && next === SLASH) {
      const digit = text.charCodeAt(end + 1);
      if (isDigit(digit)) return scanFNumber(scan, start);
      if (digit === POINT && isDigit(text.charCodeAt(end + 2))) return scanWrongFNumber(scan, start, end + 1);
    }
    if (next === POINT && isDigit(text.charCodeAt(end + 1)) && allDigits(text, start + 1, end)) {
      return scanWrongFNumber(scan, start, start + 1);
    }
  }
  if (next === SLASH && isNameStart(text, end + 1)) {
    const unitEnd = nameEnd(text, end + 1);
    if (scan.afterNumber === 1 || lastType(scan) === AsWord) {
      emit(scan, CompoundUnit, start, unitEnd);
      scan.afterNumber = 3;
      return unitEnd;
    }
    report(scan, "slash.glued", start, unitEnd, {}, { fixes: [replacing(scan, end, end + 1, " / ", true)] });
  }
  const word = text.slice(start, end);
  const keyword = keywords.get(word);
  if (keyword !== undefined) {
    emit(scan, keyword, start, end);
    return end;
  }
  const after = scan.afterNumber;
  emit(scan, Name, start, end);
  scan.afterNumber = after === 1 || after === 2 ? after + 1 : 0;
  return end;
}

/** `x` or `×` behind a number and before another one. Gives 0 where it is none. */
export function scanBy(scan: Scan, start: number): number {
  const text = scan.text;
  const glued = isDigit(text.charCodeAt(start + 1));
  const alone = glued || nameEnd(text, start + 1) === start + 1;
  if (!alone || !isDigit(text.charCodeAt(skipSpaces(text, start + 1)))) return 0;
  emit(scan, By, start, start + 1);
  return start + 1;
}

function allDigits(text: string, start: number, end: number): boolean {
  if (end <= start) return false;
  for (let at = start; at < end; at++) if (!isDigit(text.charCodeAt(at))) return false;
  return true;
}

/** A name that starts with the low line or another sign of names that is no letter. */
export function scanWrongName(scan: Scan, start: number): number {
  const end = Math.max(nameEnd(scan.text, start), start + characterAt(scan.text, start).length);
  report(scan, "name.start", start, end, {});
  emit(scan, Name, start, end, null, true);
  return end;
}
