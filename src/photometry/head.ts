import { MAX_LM63_KEYWORDS } from "./limits.js";
import { type Lm63Fault, shown } from "./number-reader.js";
import type { Keyword, Lm63Edition } from "./photometry.js";

/** The lines above the numbers: edition, keywords, and the line with `TILT=`. */
export interface Lm63Head {
  readonly edition: Lm63Edition;
  readonly keywords: readonly Keyword[];
  /** What stands behind `TILT=`. */
  readonly tilt: string;
  /** Index of the line below `TILT=`. */
  readonly next: number;
  readonly notes: readonly string[];
}

const FIRST_LINES: readonly (readonly [pattern: RegExp, edition: Lm63Edition])[] = [
  [/^IESNA\s*91$/i, "1991"],
  [/^IESNA:?\s*LM-63-1991$/i, "1991"],
  [/^IESNA:?\s*LM-63-1995$/i, "1995"],
  [/^IESNA:?\s*LM-63-2002$/i, "2002"],
  [/^IES(?:NA)?:?\s*LM-63-2019$/i, "2019"],
];

const TILT = /^\s*TILT\s*=\s*(.*?)\s*$/i;
const KEYWORD = /^\s*\[\s*([^\]]{1,80}?)\s*\]\s*(.*?)\s*$/;

/**
 * Reads the head of a file. Without a first line that names an edition the file counts as one of 1986, in which the
 * lines above `TILT=` are free text.
 *
 * @param lines - Lines of the file.
 * @returns The head, or what is wrong with it.
 */
export function readHead(lines: readonly string[]): Lm63Head | Lm63Fault {
  const notes: string[] = [];
  const first = (lines[0] ?? "").trim();
  const known = FIRST_LINES.find(([pattern]) => pattern.test(first));
  const named = known === undefined && /^IES/i.test(first) && !TILT.test(first);
  if (named)
    notes.push(`the first line "${shown(first)}" names no edition known here; read like one of 2002`);
  const edition = known?.[1] ?? (named ? "2002" : "1986");
  const keywords: { name: string; text: string }[] = [];
  for (let i = known !== undefined || named ? 1 : 0; i < lines.length; i += 1) {
    const line = lines[i] ?? "";
    const tilt = TILT.exec(line);
    if (tilt !== null) return { edition, keywords, tilt: tilt[1] ?? "", next: i + 1, notes };
    if (i > MAX_LM63_KEYWORDS) {
      return { problem: `the file has more than ${MAX_LM63_KEYWORDS} lines above TILT=`, line: i + 1 };
    }
    addKeyword(keywords, line);
  }
  return { problem: "the file has no line that begins with TILT=", line: lines.length };
}

function addKeyword(keywords: { name: string; text: string }[], line: string): void {
  if (line.trim() === "") return;
  const match = KEYWORD.exec(line);
  const name = (match?.[1] ?? "").toUpperCase();
  const text = match === null ? line.trim() : (match[2] ?? "");
  const last = keywords[keywords.length - 1];
  if (name === "MORE" && last !== undefined) last.text += `\n${text}`;
  else keywords.push({ name, text });
}
