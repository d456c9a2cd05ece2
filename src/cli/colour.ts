import { createColors } from "picocolors";
import { type Paint, plain, type Tone } from "../diagnostics/print-paint.js";
import type { Machine } from "./machine.js";

/** Colours of a terminal for the tones of a text. Every verdict is a word as well. */
export function colours(): Paint {
  const c = createColors(true);
  const table: Readonly<Record<Tone, (text: string) => string>> = {
    error: c.red,
    stop: c.red,
    failed: c.red,
    check: c.yellow,
    note: c.cyan,
    mark: c.yellow,
    passed: c.green,
    faint: c.dim,
    strong: c.bold,
  };
  return (tone, text) => table[tone](text);
}

/** Whether to colour, by `--color`, by NO_COLOR and by where the text goes. */
export function paintFor(when: string, io: Machine, isTerminal: boolean): Paint {
  if (when === "always") return colours();
  if (when === "never" || !isTerminal) return plain;
  const off = io.env("NO_COLOR");
  return (off !== undefined && off !== "") || io.env("TERM") === "dumb" ? plain : colours();
}
