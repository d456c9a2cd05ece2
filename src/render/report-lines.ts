import { type Paint, plain } from "../diagnostics/print-paint.js";
import { padEnd, wrap } from "../diagnostics/print-width.js";

/** How a view of a report is laid out. */
export interface ViewOptions {
  /** Cells of a line, 40 at least. */
  readonly width: number;
  readonly paint: Paint;
  /** Whether only what decides is shown: headline, holds, readings, wishes, expectations and warnings. */
  readonly brief?: boolean;
}

/** 80 cells, no colour. */
export const defaultView: ViewOptions = { width: 80, paint: plain };

/** Units that stay on the line of their number. */
const glued = /(\d) (?=(?:deg|m|cm|mm|%|stop|lx|lm|s|K|Ws|EV|cd)(?![a-z]))|(?<=\bISO) /g;

/** Breaks a text into lines, never between a number and its unit. */
export function wrapText(text: string, width: number): readonly string[] {
  const kept = text.replace(glued, (_all, digit: string | undefined) => `${digit ?? ""}\u00a0`);
  return wrap(kept, width).map((line) => line.replaceAll("\u00a0", " "));
}

/** A text in lines with an indent in front of each. */
export function indented(text: string, indent: string, width: number): readonly string[] {
  return wrapText(text, width - indent.length).map((line) => indent + line);
}

/** A label, and a text beside it that keeps to the right of the label on every line. */
export function labelled(
  label: string,
  text: string,
  indent: string,
  room: number,
  width: number,
): readonly string[] {
  const hang = " ".repeat(room);
  return wrapText(text, width - indent.length - room).map(
    (line, index) => indent + (index === 0 ? padEnd(label, room) : hang) + line,
  );
}
