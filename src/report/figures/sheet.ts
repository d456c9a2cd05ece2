import { sayLength } from "../say/quantity.js";
import type { Drawing, Mark, Place, TapeMark } from "./drawing.js";
import { extent } from "./pieces.js";
import { clearTapes, type LooseLabel, settle, textWidth } from "./settle.js";

/** A room on the paper: its sides, and the zero from which its walls are measured. */
export interface Dimensions {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
  readonly zero: Place;
}

/** What a figure of the set-up is made from. */
export interface Sketch {
  readonly title: string;
  readonly description: string;
  readonly notes: readonly string[];
  readonly marks: readonly Mark[];
  readonly loose: readonly LooseLabel[];
  readonly dimensions: Dimensions | null;
  /** Letter heights across the figure: fewer of them make larger letters. */
  readonly letters: number;
}

/** Letter heights across a figure that has a page to itself, and how much higher than wide a page is. */
export const usualLetters = 64;
const PAGE = 1.45;

/** Puts the bounds round a sketch, measures the room at its edges, and gives the loose texts their places. */
export function framedDrawing({
  title,
  description,
  notes,
  marks,
  loose,
  dimensions,
  letters,
}: Sketch): Drawing {
  const places = extent(marks);
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const inner = {
    left: Math.min(...xs),
    right: Math.max(...xs),
    bottom: Math.min(...ys),
    top: Math.max(...ys),
  };
  const em = Math.max(inner.right - inner.left, (inner.top - inner.bottom) / PAGE, 0.5) / letters;
  const margin = (dimensions === null ? 1.5 : 5) * em;
  const bounds = {
    left: inner.left - margin,
    right: inner.right + margin,
    bottom: inner.bottom - margin,
    top: inner.top + margin,
  };
  const short = marks.filter((mark): mark is TapeMark => mark.kind === "tape" && isShort(mark, em));
  const beside = short.map(({ from, to, text }): LooseLabel => {
    const near: Place = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return { text, near, away: 0.4 * em, weight: "plain" };
  });
  const measured = [
    ...clearTapes(
      marks.map((mark) => lifted(mark, em)),
      em,
    ),
    ...(dimensions === null ? [] : edgeTapes(dimensions, em)),
  ];
  return {
    title,
    description,
    notes,
    ...bounds,
    em,
    measured: true,
    marks: [...measured, ...settle(measured, [...loose, ...beside], em, bounds)],
  };
}

/** Whether the text of a tape is longer than its line; it then looks for a place of its own. */
const isShort = ({ from, to, text }: TapeMark, em: number): boolean => {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  return Math.sqrt(x * x + y * y) < textWidth(text, em);
};

/** The text of a tape stands clear of its line. */
const lifted = (mark: Mark, em: number): Mark =>
  mark.kind === "tape" ? { ...mark, beside: 0.75 * em, text: isShort(mark, em) ? "" : mark.text } : mark;

/** Width, height or depth outside the walls, and how the zero lies between them. */
function edgeTapes({ left, right, low, high, zero }: Dimensions, em: number): readonly TapeMark[] {
  const tape = (from: Place, to: Place, length: number): readonly TapeMark[] =>
    length > 1e-6 ? [{ kind: "tape", from, to, text: sayLength(length), beside: 0.75 * em }] : [];
  const [x, y] = zero;
  const above = high + 1.2 * em;
  const further = high + 3.1 * em;
  const aside = right + 1.6 * em;
  const outside = right + 3.5 * em;
  return [
    ...tape([left, further], [right, further], right - left),
    ...(x > left && x < right
      ? [...tape([left, above], [x, above], x - left), ...tape([x, above], [right, above], right - x)]
      : []),
    ...tape([outside, high], [outside, low], high - low),
    ...(y > low && y < high
      ? [...tape([aside, high], [aside, y], high - y), ...tape([aside, y], [aside, low], y - low)]
      : []),
  ];
}
