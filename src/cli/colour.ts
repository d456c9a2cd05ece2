import { type Paint, plain, type Tone } from "../diagnostics/print-paint.js";
import type { Machine } from "./machine.js";

/** Numbers of the usual attributes of a terminal (ECMA-48, SGR): what switches each on, and what switches it off. */
const codes: Readonly<Record<Tone, readonly [on: number, off: number]>> = {
  error: [31, 39],
  stop: [31, 39],
  failed: [31, 39],
  check: [33, 39],
  mark: [33, 39],
  note: [36, 39],
  passed: [32, 39],
  faint: [2, 22],
  strong: [1, 22],
};

/** Colours of a terminal for the tones of a text. Every verdict is a word as well. */
export const coloured: Paint = (tone, text) => {
  const [on, off] = codes[tone];
  return `\u001b[${on}m${text}\u001b[${off}m`;
};

/** Whether to colour, by `--color`, by NO_COLOR and by where the text goes. */
export function paintFor(when: string, io: Machine, isTerminal: boolean): Paint {
  if (when === "always") return coloured;
  if (when === "never" || !isTerminal) return plain;
  const off = io.env("NO_COLOR");
  return (off !== undefined && off !== "") || io.env("TERM") === "dumb" ? plain : coloured;
}
