import { exp2 } from "../core/exp2.js";
import {
  type ChartAxis,
  type ChartCurve,
  chartDrawing,
  roundTicks,
  type Tick,
} from "../report/figures/chart.js";
import type { Drawing, Ink, Mark, Place } from "../report/figures/drawing.js";
import { textWidth } from "../report/figures/settle.js";
import { count, list } from "../report/say/number.js";
import { nominalFNumber } from "../units/nominal.js";
import type { TableCell, TableColumn, TableHead, TableRow } from "./types.js";

/** Curves that one chart can hold and still be read. */
const MOST_CURVES = 9;
/** Curves of several columns that can share a chart and be told apart. */
const FEW_CURVES = 4;
/** Rows from which on a curve is drawn without its dots. */
const MANY_ROWS = 60;
/** Width and height of a chart in letter heights, and what is between two of them. */
const WIDE = 46;
const HIGH = 20;
const LOW = 14;
const BETWEEN = 2;

const inks: readonly Ink[] = ["curve", "second", "contour"];

/** Units whose numbers grow by factors from step to step, and are drawn so that equal factors are equally far apart. */
const byFactors: readonly string[] = ["f", "ISO"];

/** What is varied along a chart, or from curve to curve: one column of a table with its values in order, each once. */
interface Swept {
  readonly column: TableColumn;
  readonly index: number;
  readonly values: readonly TableCell[];
}

/**
 * A table as a chart: what is varied across, each column of numbers as a curve, and a chart for each unit, one above
 * another. Of two sweeps the one with more numbers goes across, and there is a curve for each value of the other. What
 * is no number stands along the axis by its name. A text says why there is no chart.
 */
export function tableChart(table: TableHead, rows: readonly TableRow[]): Drawing | string {
  const swept = table.columns.flatMap((column, index) =>
    column.swept ? [{ column, index, values: distinct(rows, index) }] : [],
  );
  const across = [...swept].sort((a, b) => numbersOf(b) - numbersOf(a))[0];
  if (across === undefined || rows.length === 0) return `The table "${table.title}" has no rows to draw.`;
  const other = swept.find((one) => one !== across) ?? null;
  const results = table.columns.flatMap((column, index) => (column.swept ? [] : [{ column, index }]));
  const drawn = results.filter(({ index }) => rows.some((row) => numberOf(row[index]) !== null));
  if (drawn.length === 0)
    return `The table "${table.title}" has no column of numbers, and a chart needs one.`;
  const axis = acrossOf(across);
  const groups = groupsOf(drawn, numbersOf(across) > 0, other?.values.length ?? 1);
  const charts: Drawing[] = [];
  for (const columns of groups) {
    const unit = columns[0]?.column.unit ?? "1";
    const curves = curvesOf(columns, { across, other, axis, rows });
    if (curves.length > MOST_CURVES)
      return `A chart holds ${MOST_CURVES} curves, and "${table.title}" has ${curves.length} in ${unitName(unit)}: sweep over fewer values, or show fewer columns.`;
    charts.push(chartOf(columns, unit, axis.axis, curves, groups.length > 2 ? LOW : HIGH));
  }
  const names = list(drawn.map(({ column }) => column.title));
  const along = other === null ? "" : `, a curve for each ${other.column.title}`;
  return {
    ...stacked(charts),
    title: table.title,
    description: `${names} against ${across.column.title}${along}, ${count(rows.length, "row")}. Recipe: ${table.recipe}.`,
    notes: [
      rows.length / (other?.values.length ?? 1) > MANY_ROWS
        ? "The lines join the rows of the table."
        : "Every dot is a row of the table; where lines are, they only join them.",
      ...(other === null ? [] : [`One curve for each ${other.column.title}.`]),
      ...axis.key,
      ...leftOut(table, results, drawn, rows),
    ],
  };
}

const numberOf = (cell: TableCell | undefined): number | null =>
  cell?.value === undefined || cell.value === null || !Number.isFinite(cell.value) ? null : cell.value;

/**
 * Columns that share a chart: those of one unit, while their curves can be told apart; each its own where names stand
 * across, since points have no names.
 */
function groupsOf(
  drawn: readonly Result[],
  isNumbers: boolean,
  curvesEach: number,
): readonly (readonly Result[])[] {
  const units = [...new Set(drawn.map(({ column }) => column.unit))];
  return units.flatMap((unit) => {
    const own = drawn.filter(({ column }) => column.unit === unit);
    return isNumbers && own.length * curvesEach <= FEW_CURVES ? [own] : own.map((one) => [one]);
  });
}

/** The values of a column in order, each once. */
function distinct(rows: readonly TableRow[], index: number): readonly TableCell[] {
  const found = new Map<string, TableCell>();
  for (const row of rows) {
    const cell = row[index];
    const key = `${cell?.value} ${cell?.text}`;
    if (cell !== undefined && !found.has(key)) found.set(key, cell);
  }
  return [...found.values()];
}

const isSame = (a: TableCell, b: TableCell): boolean => a.value === b.value && a.text === b.text;

/** How many of the values can stand along an axis of numbers; none where one of them cannot. */
const numbersOf = ({ values }: Swept): number =>
  values.every((cell) => numberOf(cell) !== null) ? values.length : 0;

const unitName = (unit: string): string =>
  unit === "f" ? "f-numbers" : unit === "1" ? "plain numbers" : unit;

const withUnit = (title: string, unit: string): string => {
  if (unit === "text" || unit === "1") return title;
  return `${title}, ${unit === "f" ? "f-number" : unit}`;
};

const scaled = (unit: string, value: number): number | null => {
  if (!byFactors.includes(unit)) return value;
  return value > 0 ? Math.log2(value) : null;
};

/** The axis across, where each value stands on it, and the names of values that had no room. */
interface Across {
  readonly axis: ChartAxis;
  readonly at: (cell: TableCell) => number | null;
  readonly key: readonly string[];
}

function acrossOf(swept: Swept): Across {
  const { column, values } = swept;
  const isNumbers = numbersOf(swept) > 0;
  const at = (cell: TableCell): number | null => {
    const value = numberOf(cell);
    if (isNumbers) return value === null ? null : scaled(column.unit, value);
    return values.findIndex((one) => isSame(one, cell));
  };
  const places = values.flatMap((cell) => at(cell) ?? []);
  const edge = isNumbers ? 0.03 : 0.08;
  const [least, most] = roomAround(places, edge);
  const x = (place: number): number => (WIDE * (place - least)) / (most - least);
  const wide = (text: string): number => textWidth(text, 1) + 0.8;
  const texts = values.map((cell) => cell.text ?? "");
  const { title } = column;
  if (!isNumbers && texts.some((text) => wide(text) > WIDE / texts.length)) {
    const ticks = texts.map((_, i): Tick => ({ at: i, text: String(i + 1) }));
    const key = texts.map((text, i) => `${i + 1}: ${text}`);
    return { axis: { title, least, most, ticks }, at, key };
  }
  // A tick for every value as it was written, those left out that would stand in the last one's way.
  const ticks: Tick[] = [];
  let free = Number.NEGATIVE_INFINITY;
  const inOrder = values
    .flatMap((cell, i) => {
      const place = at(cell);
      return place === null ? [] : [{ at: place, text: texts[i] as string }];
    })
    .sort((a, b) => a.at - b.at);
  for (const tick of inOrder) {
    if (x(tick.at) - wide(tick.text) / 2 < free) continue;
    ticks.push(tick);
    free = x(tick.at) + wide(tick.text) / 2;
  }
  return { axis: { title, least, most, ticks }, at, key: [] };
}

/** The range of numbers with some room at its ends, never empty. */
function roomAround(numbers: readonly number[], share: number): readonly [number, number] {
  const least = numbers.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = numbers.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const span = most - least;
  const room = span > 0 ? span * share : Math.max(1e-3, Math.abs(least) * 0.1);
  return [least - room, most + room];
}

type Result = { readonly column: TableColumn; readonly index: number };

/** Curves of the columns of one unit: for each value of the other sweep, broken where a row has no value. */
function curvesOf(
  columns: readonly Result[],
  {
    across,
    other,
    axis,
    rows,
  }: { across: Swept; other: Swept | null; axis: Across; rows: readonly TableRow[] },
): readonly (readonly ChartCurve[])[] {
  // Points over names have nothing between them; where there are several sorts of points, lines tell them apart.
  const isJoined = numbersOf(across) > 0 || other !== null;
  return columns
    .flatMap(({ column, index }) =>
      (other?.values ?? [null]).map((value) => {
        const name = [columns.length > 1 ? column.title : "", value?.text ?? ""].filter((one) => one !== "");
        const own = rows.filter(
          (row) => value === null || isSame(row[other?.index ?? 0] as TableCell, value),
        );
        const places = own.map((row): Place | null => {
          const x = axis.at(row[across.index] as TableCell);
          const number = numberOf(row[index]);
          const y = number === null ? null : scaled(column.unit, number);
          return x === null || y === null ? null : [x, y];
        });
        return { name: name.join(", "), places };
      }),
    )
    .filter(({ places }) => places.some((place) => place !== null))
    .map(({ name, places }, i) => {
      const ink = inks[i % inks.length] as Ink;
      const runs = runsOf(places);
      const longest = runs.reduce((best, run) => (run.length > best.length ? run : best));
      return [
        ...(isJoined ? runs : []).map(
          (through): ChartCurve => ({ name: through === longest ? name : "", ink, through, dots: false }),
        ),
        ...(places.length > MANY_ROWS
          ? []
          : [{ name: "", ink: "curve" as Ink, through: runs.flat(), dots: true }]),
      ];
    });
}

/** Rows that follow one another without a gap. */
function runsOf(places: readonly (Place | null)[]): readonly (readonly Place[])[] {
  const runs: Place[][] = [[]];
  for (const place of places) {
    if (place === null) runs.push([]);
    else runs[runs.length - 1]?.push(place);
  }
  return runs.filter((run) => run.length > 0);
}

function chartOf(
  columns: readonly Result[],
  unit: string,
  across: ChartAxis,
  curves: readonly (readonly ChartCurve[])[],
  high: number,
): Drawing {
  const heights = curves.flat().flatMap(({ through }) => through.map(([, y]) => y));
  const [least, most] = roomAround(heights, 0.08);
  const titles = columns.map(({ column }) => column.title).join("; ");
  return chartDrawing({
    title: "",
    description: "",
    notes: [],
    across,
    up: { title: withUnit(titles, unit), least, most, ticks: upTicks(unit, least, most) },
    curves: curves.flat(),
    size: [WIDE, high],
  });
}

/** Round numbers; of f-numbers and sensitivities the whole stops of the trade, or thirds where there are none. */
function upTicks(unit: string, least: number, most: number): readonly Tick[] {
  if (!byFactors.includes(unit)) return roundTicks(least, most, 6);
  // The series of f-numbers goes by the square root of 2 from 1, that of sensitivities by 2 from 100.
  const [origin, step] = unit === "f" ? [0, 0.5] : [Math.log2(100), 1];
  for (const part of [4, 2, 1, 1 / 3]) {
    const ticks: Tick[] = [];
    for (let i = Math.ceil((least - origin) / (step * part)); origin + i * step * part <= most; i++) {
      const at = origin + i * step * part;
      const value = exp2(at);
      ticks.push({
        at,
        text: unit === "f" ? `f/${nominalFNumber(value) ?? value.toFixed(1)}` : String(Math.round(value)),
      });
    }
    if (ticks.length >= 3) return ticks;
  }
  return roundTicks(least, most, 5).map(({ at }) => ({ at, text: exp2(at).toFixed(2) }));
}

/** Charts one above another, the first on top. */
function stacked(charts: readonly Drawing[]): Omit<Drawing, "title" | "description" | "notes"> {
  const marks: Mark[] = [];
  let down = 0;
  for (const chart of charts) {
    const by = down - chart.top;
    marks.push(...chart.marks.map((mark) => movedUp(mark, by)));
    down = by + chart.bottom - BETWEEN;
  }
  return {
    left: Math.min(...charts.map(({ left }) => left)),
    right: Math.max(...charts.map(({ right }) => right)),
    top: 0,
    bottom: down + BETWEEN,
    em: 1,
    measured: false,
    marks,
  };
}

function movedUp(mark: Mark, by: number): Mark {
  const up = ([x, y]: Place): Place => [x, y + by];
  switch (mark.kind) {
    case "line":
      return { ...mark, through: mark.through.map(up) };
    case "area":
      return { ...mark, outline: mark.outline.map(up) };
    case "tape":
      return { ...mark, from: up(mark.from), to: up(mark.to) };
    case "label":
      return { ...mark, at: up(mark.at) };
    default:
      return mark satisfies never;
  }
}

/** What the chart does not show: columns without numbers, and rows without a value, with the reasons. */
function leftOut(
  { columns }: TableHead,
  results: readonly Result[],
  drawn: readonly Result[],
  rows: readonly TableRow[],
): readonly string[] {
  const without = results.filter((one) => !drawn.includes(one)).map(({ column }) => column.title);
  const reasons = new Map<string, number>();
  for (const row of rows)
    for (const { index } of drawn) {
      const reason = row[index]?.reason ?? null;
      if (reason === null) continue;
      const said = `${columns[index]?.title}: ${reason}`;
      reasons.set(said, (reasons.get(said) ?? 0) + 1);
    }
  return [
    ...(without.length === 0 ? [] : [`Not drawn, without numbers: ${list(without)}.`]),
    ...[...reasons].map(([said, times]) => `No value in ${count(times, "row")}, ${said}`),
  ];
}
