import { fixed, list } from "../say/number.js";
import type { Report, ReportStation } from "../schema/report.js";
import { area, type Drawing, label, line, type Mark, type Place } from "./drawing.js";

/** Letter heights from one reading to the next, and to a stop. */
const ROW = 1.7;
const STOP = 5;
/** Stops below the key that are still drawn. */
const DEEPEST = -8;

/**
 * Every reading against the reading at the face towards the key, as bars in stops: what a meter walk round the set
 * would find. Null where there is no such reading.
 */
export function readingsDrawing(report: Report): Drawing | null {
  const rows = report.stations.filter((row) => row.from_key !== null);
  if (rows.length === 0) return null;
  const values = rows.map((row) => row.from_key as number);
  const least = Math.max(DEEPEST, Math.floor(Math.min(0, ...values) - 0.2));
  const most = Math.ceil(Math.max(0, ...values) + 0.2);
  const names = rows.map(nameOf);
  const room = 0.6 * Math.max(...names.map((name) => name.length)) + 1;
  const x = (stops: number): number => STOP * (Math.max(least, stops) - least);
  const high = ROW * rows.length;
  const marks: Mark[] = [];
  for (let stop = least; stop <= most; stop++) {
    marks.push(line(stop === 0 ? "axis" : "grid", "stops", [x(stop), 0], [x(stop), high]));
    marks.push(label(stop > 0 ? `+${stop}` : String(stop), [x(stop), -1]));
  }
  rows.forEach((row, i) => {
    const y = high - ROW * (i + 0.5);
    const stops = row.from_key as number;
    const bar: readonly Place[] = [
      [x(0), y - 0.45],
      [x(stops), y - 0.45],
      [x(stops), y + 0.45],
      [x(0), y + 0.45],
    ];
    marks.push(area("shadow", row.name, bar));
    marks.push(label(names[i] as string, [-0.8, y], { anchor: "end" }));
    marks.push(label(sign(stops), [x(most) + 3, y], { anchor: "end" }));
    marks.push(label(row.shown ?? "", [x(most) + 4.5, y], { anchor: "start" }));
  });
  marks.push(label("stops from the face towards the key", [x(0), -2.6]));
  return {
    title: `Readings: ${report.title}`,
    description: `Stops from the face towards the key: ${list(rows.map((row, i) => `${names[i]} ${sign(row.from_key as number)}`))}.`,
    notes: ["Bars start at the reading of the face towards the key; to the right is more light."],
    left: -room - 1,
    right: x(most) + 11,
    bottom: -3.4,
    top: high + 0.5,
    em: 1,
    measured: false,
    marks,
  };
}

const nameOf = ({ name, looks, receptor }: ReportStation): string =>
  receptor === "dome" ? `${name}, dome ${looks}` : name;

const sign = (stops: number): string => (stops > 0 ? `+${fixed(stops, 1)}` : fixed(stops, 1));
