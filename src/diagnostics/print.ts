import { MAX_DIAGNOSTICS } from "../core/limits.js";
import { sentence } from "./create.js";
import type { Diagnostic } from "./diagnostic.js";
import { linesAfter } from "./print-edit.js";
import { frame } from "./print-frame.js";
import { type Paint, plain } from "./print-paint.js";
import { locate, placeName, type TextOf } from "./print-place.js";
import { asSentence } from "./print-sentence.js";
import { visibleLine } from "./print-visible.js";
import { cells, wrap } from "./print-width.js";

/** How findings are printed. */
export interface PrintOptions {
  readonly textOf: TextOf;
  /** Cells of a line, 40 at least; 80 if not given. */
  readonly width?: number;
  /** Colours words by their tone; none if not given. */
  readonly paint?: Paint;
}

type Printing = Required<PrintOptions>;

const printing = ({ textOf, width = 80, paint = plain }: PrintOptions): Printing => ({
  textOf,
  width: Math.max(40, width),
  paint,
});

const INDENT = "    ";
const DEEPER = "        ";
/** Lines of a fix that are shown; a longer replacement is for an editor. */
const FIX_LINES = 4;

/** Findings by file in the order of their first finding, then by place, then by code: the same every time. */
export function inOrder(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const files = new Map<string, number>();
  for (const { place } of diagnostics) if (!files.has(place.file)) files.set(place.file, files.size);
  const rank = (file: string): number => files.get(file) ?? 0;
  return [...diagnostics].sort(
    (a, b) =>
      rank(a.place.file) - rank(b.place.file) ||
      a.place.start - b.place.start ||
      a.place.end - b.place.end ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
  );
}

/** The marked line of a place, and a label behind the marks or on a line of its own. */
function excerpt(
  located: ReturnType<typeof locate>,
  label: string,
  indent: string,
  options: Printing,
): readonly string[] {
  const words = visibleLine(label);
  const width = options.width - indent.length;
  if (located.from === null) return words === "" ? [] : wrap(words, width).map((line) => indent + line);
  const shown = frame(located.line, located.start, located.end, width);
  const ends = located.to !== null && located.to.line > located.from.line ? `to line ${located.to.line}` : "";
  const tail = [ends, words].filter((part) => part !== "").join(": ");
  const marks = indent + options.paint("mark", shown.marks);
  const lines = [indent + shown.text];
  if (tail === "") lines.push(marks);
  else if (cells(shown.marks) + 2 + cells(tail) <= width) lines.push(`${marks}  ${tail}`);
  else lines.push(marks, ...wrap(tail, width).map((line) => indent + line));
  return lines;
}

/** True where the words of an edit stand in the title, in backticks: then the line need not be shown as well. */
function titleSays(title: string, words: string): boolean {
  const quoted = title.match(/`[^`]+`/g) ?? [];
  return words !== "" && quoted.some((part) => ` ${part.slice(1, -1)}`.endsWith(` ${words}`));
}

/** True where the help has asked already whether these words were meant. */
function isSaid({ certain, edits }: Diagnostic["fixes"][number], help: string): boolean {
  if (certain || !/^Perhaps `.*`\?$/.test(help)) return false;
  return edits.length === 1 && edits.every(({ text }) => help.includes(`\`${text}\``));
}

/** One finding as text: place, severity and sentence; the marked line; other places; what to do; its code. */
export function printDiagnostic(diagnostic: Diagnostic, given: PrintOptions): string {
  const options = printing(given);
  const { width, paint, textOf } = options;
  const located = locate(diagnostic.place, textOf);
  const place = visibleLine(placeName(located));
  const start = `${place}  ${diagnostic.severity}  `;
  const said = asSentence(sentence(diagnostic));
  const head = `${paint("strong", place)}  ${paint(diagnostic.severity, diagnostic.severity)}`;
  const lines: string[] = [];
  if (cells(start) + cells(said) <= width) lines.push(`${head}  ${said}`);
  else lines.push(head, ...wrap(said, width - INDENT.length).map((line) => INDENT + line));
  lines.push(...excerpt(located, diagnostic.label, INDENT, options));
  for (const related of diagnostic.related) {
    const there = locate(related.place, textOf);
    lines.push(`${INDENT}see ${paint("strong", visibleLine(placeName(there)))}`);
    lines.push(...excerpt(there, related.text, DEEPER, options));
  }
  const help = asSentence(diagnostic.help);
  if (help !== "") lines.push(...wrap(help, width - INDENT.length).map((line) => INDENT + line));
  for (const fix of diagnostic.fixes) {
    if (isSaid(fix, help)) continue;
    const title = `${fix.certain ? "Safe fix" : "Perhaps"}: ${visibleLine(fix.title)}`;
    lines.push(...wrap(title, width - INDENT.length).map((line) => INDENT + line));
    const said = fix.edits.every((edit) => titleSays(fix.title, edit.text.trim()));
    const after = said ? [] : linesAfter(fix, textOf);
    const indent = /^\s*/.exec(after[0] ?? "")?.[0] ?? "";
    for (const line of after.slice(0, FIX_LINES)) {
      const kept = line.startsWith(indent) ? line.slice(indent.length) : line.trimStart();
      lines.push(DEEPER + frame(kept, 0, 0, width - DEEPER.length).text.trimEnd());
    }
    if (after.length > FIX_LINES) lines.push(`${DEEPER}… ${after.length - FIX_LINES} lines more`);
  }
  const code = `(${visibleLine(diagnostic.code)})`;
  const last = lines[lines.length - 1] ?? "";
  const plainLast = width - cells(strip(last)) - cells(code);
  if (lines.length > 1 && !last.includes("~") && plainLast >= 2) {
    lines[lines.length - 1] = last + " ".repeat(plainLast) + paint("faint", code);
  } else {
    lines.push(" ".repeat(Math.max(INDENT.length, width - cells(code))) + paint("faint", code));
  }
  return lines.map((line) => `${line}\n`).join("");
}

/** A line without its colours. */
function strip(line: string): string {
  return line.replace(/\u001b\[[0-9;]*m/g, "");
}

/** All findings as text, at most 100, with the number of those left out. Empty when there are none. */
export function printDiagnostics(diagnostics: readonly Diagnostic[], options: PrintOptions): string {
  const ordered = inOrder(diagnostics);
  const shown = ordered.slice(0, MAX_DIAGNOSTICS).map((item) => printDiagnostic(item, options));
  const more = ordered.length - shown.length;
  if (more > 0) shown.push(`${more} more ${more === 1 ? "finding is" : "findings are"} not shown.\n`);
  return shown.join("\n");
}
