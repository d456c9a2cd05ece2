import { fixed } from "../say/number.js";
import { area, type Drawing, type Ink, label, line, type Mark, type Place } from "./drawing.js";
import { circle } from "./outlines.js";
import { settle, textWidth } from "./settle.js";

/** One axis of a chart, with what stands at its ticks. */
export interface ChartAxis {
  readonly title: string;
  readonly least: number;
  readonly most: number;
  readonly ticks: readonly Tick[];
}

/** A place on an axis with its text. */
export interface Tick {
  readonly at: number;
  readonly text: string;
}

/** One curve with its name, none where that is empty; or dots where `dots` says so. */
export interface ChartCurve {
  readonly name: string;
  readonly ink: Ink;
  readonly through: readonly Place[];
  readonly dots: boolean;
  /** False where a key below the chart says its name. */
  readonly labelled?: boolean;
}

/** Where along a curve its name stands, as a share of its places. */
const NAME_AT = 0.62;

/** A name and the stroke that it is the name of. */
export interface KeyEntry {
  readonly name: string;
  readonly ink: Ink;
}

/** What a chart is made from. */
export interface ChartSketch {
  readonly title: string;
  readonly description: string;
  readonly notes: readonly string[];
  readonly across: ChartAxis;
  readonly up: ChartAxis;
  readonly curves: readonly ChartCurve[];
  /** Places across that have a name: an upright line with it. */
  readonly uprights?: readonly Tick[];
  /** Names of strokes, which stand with a piece of the stroke below the chart. */
  readonly key?: readonly KeyEntry[];
  /** Width and height of the chart in letter heights. */
  readonly size: Place;
}

const steps = [1, 2, 2.5, 5, 10];

/** Round numbers from least to most, about so many of them. */
export function roundTicks(least: number, most: number, about: number): readonly Tick[] {
  const span = most - least;
  if (!(span > 0)) return [];
  let unit = 1;
  while (unit * 10 * about <= span) unit *= 10;
  while (unit * about > span) unit /= 10;
  const step = (steps.find((part) => span / (part * unit) <= about) ?? 10) * unit;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) + (step / unit === 2.5 ? 1 : 0);
  const ticks: Tick[] = [];
  for (let i = Math.ceil(least / step - 1e-9); i * step <= most + 1e-9 * span; i++)
    ticks.push({ at: i * step, text: fixed(i * step, Math.min(4, decimals)) });
  return ticks;
}

/** A chart: axes with their ticks, a thin grid, curves named beside them. Letters are 1 m of its paper high. */
export function chartDrawing({
  title,
  description,
  notes,
  across,
  up,
  curves,
  uprights = [],
  key = [],
  size,
}: ChartSketch): Drawing {
  const [wide, high] = size;
  const x = (value: number): number => (wide * (value - across.least)) / (across.most - across.least);
  const y = (value: number): number => (high * (value - up.least)) / (up.most - up.least);
  const grid: Mark[] = [
    ...across.ticks.map(({ at }) => line("grid", "grid", [x(at), 0], [x(at), high])),
    ...up.ticks.map(({ at }) => line("grid", "grid", [0, y(at)], [wide, y(at)])),
    ...uprights.map(({ at, text }) => line("tape", text, [x(at), 0], [x(at), high])),
    line("axis", "axes", [0, high], [0, 0], [wide, 0]),
  ];
  const texts: Mark[] = [
    ...across.ticks.map(({ at, text }) => label(text, [x(at), -1])),
    ...up.ticks.map(({ at, text }) => label(text, [-0.7, y(at)], { anchor: "end" })),
    label(across.title, [wide / 2, -2.6]),
    label(up.title, [0, high + 1.3], { anchor: "start" }),
  ];
  const strokes = keyMarks(key, wide);
  const drawn = curves.flatMap(({ name, ink, through, dots }): readonly Mark[] => {
    const places = through.map(([a, b]): Place => [x(a), y(b)]);
    return dots ? places.map((place) => dot(ink, name, place)) : [line(ink, name, ...places)];
  });
  const bounds = {
    left: -2 - Math.max(...up.ticks.map(({ text }) => text.length * 0.6)),
    right: wide + 2,
    bottom: Math.min(-3.6, ...strokes.flatMap((mark) => (mark.kind === "label" ? mark.at[1] - 1.2 : []))),
    top: high + 2.4,
  };
  const marks = [...grid, ...drawn, ...texts, ...strokes];
  const named = uprights.map(({ at, text }) => ({
    text,
    near: [x(at), high - 1] as Place,
    away: 0.5,
    weight: "plain" as const,
  }));
  const loose = curves.flatMap(({ name, through, dots, labelled = true }) => {
    if (dots || !labelled || name === "" || through.length === 0) return [];
    const [a, b] = through[Math.floor(through.length * NAME_AT)] as Place;
    return [{ text: name, near: [x(a), y(b)] as Place, away: 0.95, weight: "strong" as const }];
  });
  return {
    title,
    description,
    notes,
    ...bounds,
    em: 1,
    measured: false,
    marks: [...marks, ...settle([...drawn, ...texts], [...named, ...loose], 1, bounds)],
  };
}

/** A dot on a chart. */
const dot = (ink: Ink, name: string, at: Place): Mark => area(ink, name, circle(at, 0.28, 12));

/** Length of the piece of a stroke in a key, what is between it and its name, and between two of them, letter heights. */
const SAMPLE = 3.6;
const CLOSE = 0.6;
const APART = 2;

/** Names with a piece of their stroke, in rows as wide as the chart. */
function keyMarks(key: readonly KeyEntry[], wide: number): readonly Mark[] {
  let x = 0;
  let y = -4.6;
  return key.flatMap(({ name, ink }) => {
    const long = SAMPLE + CLOSE + textWidth(name, 1);
    if (x > 0 && x + long > wide) {
      x = 0;
      y -= 1.6;
    }
    const start = x;
    x += long + APART;
    return [
      line(ink, "key", [start, y], [start + SAMPLE, y]),
      label(name, [start + SAMPLE + CLOSE, y], { anchor: "start" }),
    ];
  });
}
