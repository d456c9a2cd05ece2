import type { Ink, LabelMark, Mark, Place, TapeMark } from "./drawing.js";

/** A text that looks for a free place beside what it names. */
export interface LooseLabel {
  readonly text: string;
  /** What it names. */
  readonly near: Place;
  /** How far its edge stays away from that, m. */
  readonly away: number;
  readonly weight: LabelMark["weight"];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Width of a letter over its height, on average, from memory of common text faces. */
const LETTER = 0.56;

/** About how wide a text is. */
export const textWidth = (text: string, em: number): number => LETTER * em * [...text].length;

function boxOf({ at: [x, y], anchor, text }: LabelMark, em: number): Box {
  const wide = textWidth(text, em);
  const left = anchor === "start" ? x : anchor === "end" ? x - wide : x - wide / 2;
  return { left, right: left + wide, bottom: y - 0.6 * em, top: y + 0.6 * em };
}

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom));

/** Places along what is drawn, close enough that no text fits between them. */
function dotsOf(mark: Mark, em: number): readonly Place[] {
  if (mark.kind === "label") return [];
  const ends =
    mark.kind === "tape"
      ? [mark.from, mark.to]
      : mark.kind === "area"
        ? [...mark.outline, mark.outline[0] as Place]
        : mark.through;
  const dots: Place[] = [];
  for (let i = 0; i + 1 < ends.length; i++) {
    const [ax, ay] = ends[i] as Place;
    const [bx, by] = ends[i + 1] as Place;
    const long = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
    const steps = Math.max(1, Math.min(400, Math.ceil(long / (0.7 * em))));
    for (let k = 0; k < steps; k++) dots.push([ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps]);
  }
  return mark.kind === "area" && mark.ink === "person" ? [...dots, ...within(mark.outline, em)] : dots;
}

/** Places within an outline, close enough that no text lies on it unseen. */
function within(outline: readonly Place[], em: number): readonly Place[] {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const step = Math.max(
    0.7 * em,
    (Math.max(...xs) - Math.min(...xs)) / 40,
    (Math.max(...ys) - Math.min(...ys)) / 40,
  );
  const dots: Place[] = [];
  for (let x = Math.min(...xs) + step / 2; x < Math.max(...xs); x += step)
    for (let y = Math.min(...ys) + step / 2; y < Math.max(...ys); y += step)
      if (isWithin(outline, x, y)) dots.push([x, y]);
  return dots;
}

/** Whether a place lies within an outline: a line to one side crosses it an odd number of times. */
const isWithin = (outline: readonly Place[], x: number, y: number): boolean =>
  outline.filter(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as Place;
    return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay);
  }).length %
    2 ===
  1;

const sides: readonly (readonly [x: number, y: number, anchor: LabelMark["anchor"]])[] = [
  [1, 0, "start"],
  [-1, 0, "end"],
  [0, 1, "middle"],
  [0, -1, "middle"],
  [0.8, 0.9, "start"],
  [-0.8, 0.9, "end"],
  [0.8, -0.9, "start"],
  [-0.8, -0.9, "end"],
];
/** How far out places are tried, in letter heights beyond what is asked. */
const STEPS = [0, 1.2, 2.4, 4];

/**
 * Gives loose texts places where they cover as little as may be of what is drawn, one after another, inside `within`.
 * The same list gives the same places.
 */
export function settle(
  marks: readonly Mark[],
  loose: readonly LooseLabel[],
  em: number,
  within: Box,
): readonly LabelMark[] {
  const dots = marks.flatMap((mark) => dotsOf(mark, em));
  const taken: Box[] = marks.flatMap((mark) => {
    if (mark.kind === "label") return mark.turn === 0 ? [boxOf(mark, em)] : [];
    return mark.kind === "tape" ? [tapeBox(mark, em)] : [];
  });
  return loose.map(({ text, near, away, weight }) => {
    let best: { readonly cost: number; readonly mark: LabelMark } | null = null;
    for (const further of STEPS) {
      for (const [x, y, anchor] of sides) {
        const d = away + further * em;
        const at: Place = [near[0] + x * d, near[1] + y * (d + 0.6 * em)];
        const mark: LabelMark = { kind: "label", at, text, anchor, weight, turn: 0 };
        const box = boxOf(mark, em);
        const cost = costOf(box, dots, taken, within, em) + 0.4 * further;
        if (best === null || cost < best.cost) best = { cost, mark };
      }
    }
    const { mark } = best as { readonly mark: LabelMark };
    taken.push(boxOf(mark, em));
    return mark;
  });
}

function costOf(box: Box, dots: readonly Place[], taken: readonly Box[], within: Box, em: number): number {
  const outside =
    Math.max(0, within.left - box.left) +
    Math.max(0, box.right - within.right) +
    Math.max(0, within.bottom - box.bottom) +
    Math.max(0, box.top - within.top);
  const met = dots.filter(
    ([x, y]) => x >= box.left && x <= box.right && y >= box.bottom && y <= box.top,
  ).length;
  const over = taken.reduce((sum, other) => sum + overlap(box, other), 0);
  return (60 * outside) / em + met + (12 * over) / (em * em);
}

/** About where the text of a tape stands. */
function tapeBox({ from, to, text, beside, along = 0.5 }: Omit<TapeMark, "kind">, em: number): Box {
  const [x, y] = tapeText(from, to, beside, along);
  const half = textWidth(text, em) / 2;
  const long = Math.sqrt((to[0] - from[0]) * (to[0] - from[0]) + (to[1] - from[1]) * (to[1] - from[1]));
  const c = long > 0 ? Math.abs(to[0] - from[0]) / long : 1;
  const s = long > 0 ? Math.abs(to[1] - from[1]) / long : 0;
  const wide = half * c + 0.6 * em * s;
  const high = half * s + 0.6 * em * c;
  return { left: x - wide, right: x + wide, bottom: y - high, top: y + high };
}

/** How far the text of a tape may stand from its line, in letter heights; before it on the other side. */
const ASIDE = [0.75, -0.75, 1.5, -1.5, 2.25, -2.25];
/** What a letter height farther from its line costs a text, and the other side. */
const FARTHER = 1;
const OTHER = 0.5;
/** How far along its line a text may stand, as a share, and what a tenth away from the middle costs. */
const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
const OFF_MIDDLE = 0.6;

/**
 * The tapes of a figure with their texts at the side of their lines where they cover the least of the outlines of lamps, of
 * other strong lines and of each other.
 */
export function clearTapes(marks: readonly Mark[], em: number): readonly Mark[] {
  const dots = marks.flatMap((mark) =>
    mark.kind !== "tape" && mark.kind !== "label" && strong.has(mark.ink) ? dotsOf(mark, em) : [],
  );
  const taken: Box[] = [];
  return marks.map((mark) => {
    if (mark.kind !== "tape" || mark.text === "") return mark;
    const { from, to, text } = mark;
    const half = textWidth(text, em) / 2;
    const long = Math.sqrt((to[0] - from[0]) * (to[0] - from[0]) + (to[1] - from[1]) * (to[1] - from[1]));
    let best = { cost: Number.POSITIVE_INFINITY, tape: mark };
    for (const along of ALONG) {
      // It does not reach beyond the ends of its line.
      if (along !== 0.5 && Math.min(along, 1 - along) * long < half) continue;
      for (const aside of ASIDE) {
        const tape = { ...mark, beside: aside * em, ...(along === 0.5 ? {} : { along }) };
        const box = tapeBox(tape, em);
        const met = dots.filter(
          ([x, y]) => x >= box.left && x <= box.right && y >= box.bottom && y <= box.top,
        ).length;
        const over = taken.reduce((sum, other) => sum + overlap(box, other), 0);
        const moved = 10 * OFF_MIDDLE * Math.abs(along - 0.5);
        const turned = aside < 0 ? OTHER : 0;
        const cost = met + (12 * over) / (em * em) + FARTHER * (Math.abs(aside) - 0.75) + turned + moved;
        if (cost < best.cost) best = { cost, tape };
      }
    }
    taken.push(tapeBox(best.tape, em));
    return best.tape;
  });
}

/** What a text must not stand on. */
const strong: ReadonlySet<Ink> = new Set(["lamp", "lit", "wall", "set"]);

/** The middle of the text of a tape. */
export function tapeText(from: Place, to: Place, beside: number, along = 0.5): Place {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const long = Math.sqrt(dx * dx + dy * dy);
  const k = long > 0 ? beside / long : 0;
  return [from[0] + along * dx - k * dy, from[1] + along * dy + k * dx];
}
