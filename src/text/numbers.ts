import { isDigit, isSpace, skipSpaces } from "./characters.js";
import { Broken, Colon, FNumber, Fraction, Name, Numeral, Ratio } from "./kinds.js";
import { emit, lastType, replacing, report, type Scan } from "./scan.js";

const POINT = 46;
const COMMA = 44;
const SLASH = 47;
const COLON = 58;
const SQUARE = 91;
const ROUND = 40;

/** Offset behind digits with at most one point, from `at` on. */
export function decimalEnd(text: string, at: number): number {
  let end = at;
  while (isDigit(text.charCodeAt(end))) end++;
  if (text.charCodeAt(end) === POINT && isDigit(text.charCodeAt(end + 1))) {
    end++;
    while (isDigit(text.charCodeAt(end))) end++;
  }
  return end;
}

/** Reads whatever starts with a digit. Gives the offset behind it. */
export function scanNumber(scan: Scan, start: number): number {
  const text = scan.text;
  const end = decimalEnd(text, start);
  const code = text.charCodeAt(end);
  switch (code) {
    case POINT:
      return afterPoint(scan, start, end);
    case SLASH:
      if (isDigit(text.charCodeAt(end + 1))) return fraction(scan, start, end);
      break;
    case COLON:
      if (isDigit(text.charCodeAt(end + 1))) return ratio(scan, start, end);
      break;
    case COMMA:
      if (isDigit(text.charCodeAt(end + 1))) {
        const behind = scanComma(scan, start, end, Numeral, start);
        if (behind > 0) return behind;
      }
      break;
    case 0x45:
    case 0x65: // E e
      if (exponentEnd(text, end) > 0) return exponent(scan, start, end);
      break;
    case 0x58:
    case 0x78: // X x
      if (end === start + 1 && text.charCodeAt(start) === 48) {
        const behind = hexEnd(text, end + 1);
        if (behind > 0) return hex(scan, start, behind);
      }
      break;
    case 0x5f: // _
      if (isDigit(text.charCodeAt(end + 1))) return grouped(scan, start, end);
      break;
    case 0x27:
    case 0x2019:
    case 0x2032: // ' ’ ′
      if (code === 0x27 && /^'\d{3}(?![\d'"′″])/.test(text.slice(end, end + 5)))
        return grouped(scan, start, end);
      return marks(scan, start, end, true);
    case 0x22:
    case 0x201d:
    case 0x2033: // " ” ″
      return marks(scan, start, end, false);
  }
  return numeral(scan, start, end);
}

function finish(
  scan: Scan,
  type: typeof Numeral,
  start: number,
  end: number,
  value: number,
  broken: boolean,
): number {
  if (!Number.isFinite(value)) {
    report(scan, "number.too-large", start, end, {});
    emit(scan, Broken, start, end, null, true);
  } else {
    emit(scan, type, start, end, value, broken);
  }
  scan.afterNumber = 1;
  return end;
}

function numeral(scan: Scan, start: number, end: number): number {
  return finish(scan, Numeral, start, end, Number(scan.text.slice(start, end)), false);
}

/** `2.` or `1.2.3` */
function afterPoint(scan: Scan, start: number, point: number): number {
  const text = scan.text;
  if (!isDigit(text.charCodeAt(point + 1))) {
    if (text.charCodeAt(point + 1) === POINT) return numeral(scan, start, point);
    report(
      scan,
      "number.trailing-point",
      start,
      point + 1,
      {},
      {
        fixes: [replacing(scan, start, point + 1, text.slice(start, point), true)],
      },
    );
    return finish(scan, Numeral, start, point + 1, Number(text.slice(start, point)), true);
  }
  let end = point;
  while (
    isDigit(text.charCodeAt(end)) ||
    (text.charCodeAt(end) === POINT && isDigit(text.charCodeAt(end + 1)))
  )
    end++;
  report(scan, "number.points", start, end, {});
  emit(scan, Broken, start, end, null, true);
  scan.afterNumber = 1;
  return end;
}

/** `.5` */
export function scanBarePoint(scan: Scan, start: number): number {
  let end = start + 1;
  while (isDigit(scan.text.charCodeAt(end))) end++;
  const written = `0${scan.text.slice(start, end)}`;
  report(scan, "number.bare-point", start, end, {}, { fixes: [replacing(scan, start, end, written, true)] });
  return finish(scan, Numeral, start, end, Number(written), true);
}

function fraction(scan: Scan, start: number, slash: number): number {
  const text = scan.text;
  const end = decimalEnd(text, slash + 1);
  const below = Number(text.slice(slash + 1, end));
  if (below === 0) {
    report(scan, "number.zero-below", start, end, {});
    emit(scan, Broken, start, end, null, true);
    scan.afterNumber = 1;
    return end;
  }
  return finish(scan, Fraction, start, end, Number(text.slice(start, slash)) / below, false);
}

function ratio(scan: Scan, start: number, colon: number): number {
  const text = scan.text;
  let end = decimalEnd(text, colon + 1);
  if (text.charCodeAt(end) === COLON && isDigit(text.charCodeAt(end + 1))) {
    while (text.charCodeAt(end) === COLON && isDigit(text.charCodeAt(end + 1)))
      end = decimalEnd(text, end + 1);
    report(scan, "number.ratio-chain", start, end, {});
    emit(scan, Broken, start, end, null, true);
  } else if (
    Number.isFinite(Number(text.slice(start, colon))) &&
    Number.isFinite(Number(text.slice(colon + 1, end)))
  ) {
    emit(scan, Ratio, start, end);
  } else {
    report(scan, "number.too-large", start, end, {});
    emit(scan, Broken, start, end, null, true);
  }
  scan.afterNumber = 1;
  return end;
}

/**
 * `2,4`: digits, comma, digits without a space, where a row of plain numbers is not what is meant: outside round and
 * square brackets, or right behind a colon, or in an f-number that ends its member. Gives 0 where the comma is a separator.
 * `start` is the first character of the token, `digits` the first digit (they differ for `f/5,6`).
 */
function scanComma(scan: Scan, start: number, comma: number, type: typeof Numeral, digits: number): number {
  const text = scan.text;
  const innermost = scan.open[scan.open.length - 1];
  const inRow = innermost === SQUARE || innermost === ROUND;
  if (innermost === SQUARE) return 0;
  if (inRow && !(type === FNumber ? isLastMember(text, comma + 1) : lastType(scan) === Colon)) return 0;
  let end = comma;
  let groups = 0;
  let allThree = true;
  while (text.charCodeAt(end) === COMMA && isDigit(text.charCodeAt(end + 1))) {
    const first = end + 1;
    end = first;
    while (isDigit(text.charCodeAt(end))) end++;
    groups++;
    if (end - first !== 3) allThree = false;
  }
  const front = text.slice(start, digits);
  const decimals = text.charCodeAt(end) === POINT ? decimalEnd(text, end - 1) : end;
  const written = text.slice(digits, decimals);
  const withoutGroups = front + written.replaceAll(",", "");
  if (groups > 1 || decimals > end) {
    report(
      scan,
      "number.grouped",
      start,
      decimals,
      {},
      {
        fixes: allThree ? [replacing(scan, start, decimals, withoutGroups, true)] : [],
      },
    );
    return finish(scan, type, start, decimals, Number(written.replaceAll(",", "")), true);
  }
  const split = front + written.replace(",", ".");
  const likely = allThree && comma - digits <= 3 && type !== FNumber;
  report(
    scan,
    "number.comma",
    start,
    end,
    {},
    {
      fixes: likely
        ? [replacing(scan, start, end, split, false), replacing(scan, start, end, withoutGroups, false)]
        : [replacing(scan, start, end, split, true)],
    },
  );
  return finish(scan, type, start, end, Number(written.replace(",", ".")), true);
}

/** One digit that ends a member of a row: `f/5,6)`, not `f/8,2 m`. */
function isLastMember(text: string, at: number): boolean {
  const after = text.charCodeAt(skipSpaces(text, at + 1));
  return after === COMMA || after === 41;
}

function exponentEnd(text: string, at: number): number {
  let end = at + 1;
  const sign = text.charCodeAt(end);
  if (sign === 43 || sign === 45) end++;
  if (!isDigit(text.charCodeAt(end))) return 0;
  while (isDigit(text.charCodeAt(end))) end++;
  return end;
}

function exponent(scan: Scan, start: number, letter: number): number {
  const end = exponentEnd(scan.text, letter);
  const value = Number(scan.text.slice(start, end));
  const plain = String(value);
  report(
    scan,
    "number.exponent",
    start,
    end,
    {},
    {
      fixes: /^[\d.]+$/.test(plain) ? [replacing(scan, start, end, plain, true)] : [],
    },
  );
  if (Number.isFinite(value)) return finish(scan, Numeral, start, end, value, true);
  emit(scan, Broken, start, end, null, true);
  scan.afterNumber = 1;
  return end;
}

function hexEnd(text: string, at: number): number {
  let end = at;
  while (/^[0-9a-fA-F]$/.test(text.charAt(end))) end++;
  return end > at ? end : 0;
}

function hex(scan: Scan, start: number, end: number): number {
  const value = Number.parseInt(scan.text.slice(start + 2, end), 16);
  const plain = String(value);
  report(
    scan,
    "number.hex",
    start,
    end,
    {},
    {
      fixes: /^\d+$/.test(plain) ? [replacing(scan, start, end, plain, false)] : [],
    },
  );
  return finish(scan, Numeral, start, end, Number.isFinite(value) ? value : 0, true);
}

function grouped(scan: Scan, start: number, first: number): number {
  const text = scan.text;
  let end = first;
  for (;;) {
    const code = text.charCodeAt(end);
    if ((code === 0x5f || code === 0x27) && isDigit(text.charCodeAt(end + 1))) end++;
    else if (!isDigit(code)) break;
    else end++;
  }
  if (text.charCodeAt(end) === POINT && isDigit(text.charCodeAt(end + 1))) end = decimalEnd(text, end - 1);
  const plain = text.slice(start, end).replaceAll(/[_']/g, "");
  report(scan, "number.grouped", start, end, {}, { fixes: [replacing(scan, start, end, plain, true)] });
  return finish(scan, Numeral, start, end, Number(plain), true);
}

const inchLook = /(\d+(?:\.\d+)?(?: \d+\/\d+)?|\d+\/\d+)[ \t]*(?:"|″|”|'')?/y;

/** `5'7"` and `12"`: the tokens that follow are those of `5 ft 7 in`, so that the rest of the line can be read. */
function marks(scan: Scan, start: number, first: number, feet: boolean): number {
  const text = scan.text;
  let end = first + 1;
  let inches = "";
  let inchesAt = end;
  if (feet) {
    const from = skipSpaces(text, end);
    inchLook.lastIndex = from;
    const match = inchLook.exec(text);
    if (match !== null && (/["″”']$/.test(match[0]) || from === end)) {
      inches = match[1] ?? "";
      inchesAt = from;
      end = from + match[0].trimEnd().length;
    }
  }
  const number = text.slice(start, first);
  const right = feet ? `${number} ft${inches === "" ? "" : ` ${inches} in`}` : `${number} in`;
  report(scan, "number.marks", start, end, {}, { fixes: [replacing(scan, start, end, right, true)] });
  finish(scan, Numeral, start, first, Number(number), true);
  synthetic(scan, feet ? "ft" : "in", first);
  if (inches !== "") {
    finish(scan, Numeral, inchesAt, inchesAt + inches.length, mixedValue(inches), true);
    synthetic(scan, "in", end - 1);
  }
  scan.afterNumber = 3;
  return end;
}

function mixedValue(written: string): number {
  let sum = 0;
  for (const part of written.split(" ")) {
    const [above, below] = part.split("/");
    sum += below === undefined ? Number(above) : Number(above) / (Number(below) || 1);
  }
  return sum;
}

/** A unit that the text says with a mark: a name token that shows the word. */
function synthetic(scan: Scan, unit: string, at: number): void {
  emit(scan, Name, at, at + 1, null, true);
  const last = scan.tokens.pop();
  if (last !== undefined) scan.tokens.push({ ...last, image: unit });
}

const fractionSigns: ReadonlyMap<string, string> = new Map([
  ["½", "1/2"],
  ["⅓", "1/3"],
  ["⅔", "2/3"],
  ["¼", "1/4"],
  ["¾", "3/4"],
  ["⅕", "1/5"],
  ["⅖", "2/5"],
  ["⅗", "3/5"],
  ["⅘", "4/5"],
  ["⅙", "1/6"],
  ["⅚", "5/6"],
  ["⅐", "1/7"],
  ["⅛", "1/8"],
  ["⅜", "3/8"],
  ["⅝", "5/8"],
  ["⅞", "7/8"],
  ["⅑", "1/9"],
  ["⅒", "1/10"],
]);

/** `½`: reported, and taken as the fraction it shows. Gives 0 where the character is none. */
export function scanFractionSign(scan: Scan, start: number): number {
  const written = fractionSigns.get(scan.text.charAt(start));
  if (written === undefined) return 0;
  const glued =
    start > 0 && !isSpace(scan.text.charCodeAt(start - 1)) && isDigit(scan.text.charCodeAt(start - 1));
  const fix = glued ? ` ${written}` : written;
  report(
    scan,
    "number.fraction-sign",
    start,
    start + 1,
    {},
    { fixes: [replacing(scan, start, start + 1, fix, true)] },
  );
  const [above, below] = written.split("/");
  return finish(scan, Fraction, start, start + 1, Number(above) / Number(below), true);
}

/** `f/8`, from its letter on; the caller has seen letter, slash and digit. */
export function scanFNumber(scan: Scan, start: number): number {
  const text = scan.text;
  const digits = start + 2;
  const end = decimalEnd(text, digits);
  if (text.charCodeAt(end) === COMMA && isDigit(text.charCodeAt(end + 1))) {
    const behind = scanComma(scan, start, end, FNumber, digits);
    if (behind > 0) return behind;
  }
  return finish(scan, FNumber, start, end, Number(text.slice(digits, end)), false);
}

/** `f5.6` and `f/.95`: reported, and taken as the f-number that is meant. */
export function scanWrongFNumber(scan: Scan, start: number, digits: number): number {
  const end = fNumberEnd(scan, digits);
  const number = scan.text.slice(digits, end).replace(/^\./, "0.");
  report(
    scan,
    "f-number.slash",
    start,
    end,
    {},
    { fixes: [replacing(scan, start, end, `f/${number}`, true)] },
  );
  return finish(scan, FNumber, start, end, Number(number), true);
}

function fNumberEnd(scan: Scan, digits: number): number {
  if (scan.text.charCodeAt(digits) !== POINT) return decimalEnd(scan.text, digits);
  let end = digits + 1;
  while (isDigit(scan.text.charCodeAt(end))) end++;
  return end;
}
