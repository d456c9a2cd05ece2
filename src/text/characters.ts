/** Classes of the characters below 128, as the scanner's first look at a character. */
export const SPACE = 1;
/** A line end. */
export const LINE_END = 2;
/** A letter or the low line. */
export const LETTER = 3;
/** A digit. */
export const DIGIT = 4;
/** A sign of the language. */
export const SIGN = 5;
/** A control code. */
export const CONTROL = 6;
/** Any other character. */
export const OTHER = 7;

const classes = new Uint8Array(128).fill(OTHER);
for (let code = 0; code < 32; code++) classes[code] = CONTROL;
classes[127] = CONTROL;
classes[9] = SPACE;
classes[32] = SPACE;
classes[10] = LINE_END;
classes[13] = LINE_END;
for (let code = 48; code < 58; code++) classes[code] = DIGIT;
for (let code = 65; code < 91; code++) classes[code] = LETTER;
for (let code = 97; code < 123; code++) classes[code] = LETTER;
for (const sign of "+-*/<>=?:,.{}()[]%") classes[sign.charCodeAt(0)] = SIGN;

/** The class of a character below 128. */
export function classOf(code: number): number {
  return classes[code] ?? OTHER;
}

/** `0` to `9`. */
export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

const letter = /^\p{L}$/u;
const namePart = /^[\p{L}\p{M}\p{N}]$/u;

/** The character (one or two units) at an offset. */
export function characterAt(text: string, at: number): string {
  const point = text.codePointAt(at);
  return point === undefined ? "" : String.fromCodePoint(point);
}

/** Whether a name can start with this character: a letter of any alphabet. */
export function isNameStart(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 128) return classes[code] === LETTER;
  return code >= 128 && letter.test(characterAt(text, at));
}

/** Offset behind the name characters (letters, digits, marks, `_`) from `at` on. */
export function nameEnd(text: string, at: number): number {
  let end = at;
  for (;;) {
    const code = text.charCodeAt(end);
    if (code < 128) {
      const kind = classes[code];
      if (kind !== LETTER && kind !== DIGIT && code !== 95) return end;
      end++;
    } else {
      if (Number.isNaN(code)) return end;
      const character = characterAt(text, end);
      if (!namePart.test(character)) return end;
      end += character.length;
    }
  }
}

/** Blank characters beyond space and tab that come along with pasted text and are taken as a space. */
export function isWideSpace(code: number): boolean {
  return (
    code === 0xa0 ||
    code === 0x1680 ||
    (code >= 0x2000 && code <= 0x200a) ||
    code === 0x202f ||
    code === 0x205f ||
    code === 0x3000
  );
}

/** Space or tab or a wide space. */
export function isSpace(code: number): boolean {
  return code === 32 || code === 9 || (code >= 128 && isWideSpace(code));
}

/** Offset of the first character at or after `at` that is no space. */
export function skipSpaces(text: string, at: number): number {
  let end = at;
  while (isSpace(text.charCodeAt(end))) end++;
  return end;
}

/**
 * Whether the unit at `at` is a character that is not seen or that turns the direction of the text:
 * control codes, direction marks, zero-width characters, line separators, halves of a surrogate pair.
 * Tab and line ends are not among them.
 */
export function isHidden(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code < 32) return code !== 9 && code !== 10 && code !== 13;
  if (code < 127) return false;
  if (code < 0xa0 || code === 0xad || code === 0x61c) return true;
  if (code < 0x180e) return false;
  if (code === 0x180e || code === 0x200b || code === 0x200e || code === 0x200f) return true;
  if (code >= 0x2028 && code <= 0x202e) return true;
  if (code >= 0x2060 && code <= 0x206f) return true;
  if (code === 0xfeff || (code >= 0xfff9 && code <= 0xfffb)) return true;
  if (code >= 0xd800 && code <= 0xdbff) {
    const next = text.charCodeAt(at + 1);
    return !(next >= 0xdc00 && next <= 0xdfff);
  }
  if (code >= 0xdc00 && code <= 0xdfff) {
    const before = text.charCodeAt(at - 1);
    return !(before >= 0xd800 && before <= 0xdbff);
  }
  return false;
}

/** A name for a character that cannot be shown: `U+202E`. */
export function codeName(text: string, at: number): string {
  const point = text.codePointAt(at) ?? 0;
  return `U+${point.toString(16).toUpperCase().padStart(4, "0")}`;
}
