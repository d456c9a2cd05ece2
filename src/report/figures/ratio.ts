import { backgroundStation } from "../light/background.js";
import type { Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { sayContrast, sayPercent } from "../say/quantity.js";
import type { Report, ReportStation } from "../schema/report.js";
import { area, type Drawing, type Ink, label, line, type Mark, type Place } from "./drawing.js";
import { circle } from "./outlines.js";
import { textWidth } from "./settle.js";

/** Letter heights from one row to the next, between two readings, and to a stop. */
const ROW = 1.5;
const GAP = 0.9;
const STOP = 4.6;
/** Stops under the key that are still drawn. */
const DEEPEST = -8;
/** Parts that are less than this share of a reading have no row. */
const LEAST = 0.01;
/** Parts of the figure of a person whose readings are shown. */
const parts: readonly string[] = ["face", "lit_cheek", "shaded_cheek"];

/** One row: a reading, or what one light gives to it straight or by way of surfaces. */
interface Row {
  readonly name: string;
  readonly kind: "reading" | "straight" | "bounced";
  /** Stops from the first face's disc towards the key. */
  readonly stops: number;
  /** Of the reading, 0 to 1. */
  readonly share: number;
}

const dots: Readonly<Record<Row["kind"], { readonly ink: Ink; readonly radius: number }>> = {
  reading: { ink: "lens", radius: 0.42 },
  straight: { ink: "lamp", radius: 0.36 },
  bounced: { ink: "soft", radius: 0.36 },
};

/**
 * What every light gives to lit side, shaded side, face, background and floor, straight and by way of surfaces, as dots in
 * stops from the reading at the face towards the key. Null where there is no such reading.
 */
export function ratioDrawing(plan: Plan, report: Report): Drawing | null {
  const groups = chosen(plan, report).map((station) => rowsOf(station));
  if (groups.length === 0) return null;
  const rows = groups.flat();
  const least = Math.max(DEEPEST, Math.floor(Math.min(-1, ...rows.map(({ stops }) => stops)) - 0.2));
  const most = Math.ceil(Math.max(0, ...rows.map(({ stops }) => stops)) + 0.2);
  const x = (stops: number): number => STOP * (Math.max(least, stops) - least);
  const high = ROW * rows.length + GAP * (groups.length - 1) + 0.4;
  const marks: Mark[] = [];
  for (let stop = least; stop <= most; stop++) {
    marks.push(line(stop === 0 ? "axis" : "grid", "stops", [x(stop), 0], [x(stop), high]));
    marks.push(label(stop > 0 ? `+${stop}` : String(stop), [x(stop), -1]));
  }
  const aside = x(most) + 3;
  const left =
    -2 - Math.max(...rows.map((row) => textWidth(words(row), 1.1) + (row.kind === "reading" ? 0 : 1.5)));
  let y = high - 0.2 + ROW / 2;
  for (const group of groups) {
    for (const row of group) {
      y -= ROW;
      const at: Place = [x(row.stops), y];
      const isWhole = row.kind === "reading";
      marks.push(line("grid", "leader", [0, y], at));
      marks.push(area(dots[row.kind].ink, markName(group, row), circle(at, dots[row.kind].radius, 24)));
      marks.push(
        isWhole
          ? label(row.name, [left + 0.5, y], { anchor: "start", weight: "strong" })
          : label(words(row), [-0.8, y], { anchor: "end" }),
      );
      marks.push(
        label(signed(row.stops), [aside, y], { anchor: "end", weight: isWhole ? "strong" : "plain" }),
      );
      if (!isWhole) marks.push(label(sayPercent(row.share), [aside + 4.5, y], { anchor: "end" }));
    }
    y -= GAP;
  }
  marks.push(label("stops from the face towards the key", [x(least), -2.6], { anchor: "start" }));
  marks.push(
    label("stops", [aside, high + 0.8], { anchor: "end" }),
    label("share", [aside + 4.5, high + 0.8], { anchor: "end" }),
  );
  return {
    title: `Ratio: ${report.title}`,
    description: groups.map(sentenceOf).join(" "),
    notes: [
      ...contrasts(groups),
      "Full dots: readings. Empty dots: what a light gives straight. Grey dots: what it gives by way of room, set and people.",
      "Shares are of the reading above them; parts of less than 1 % have no row.",
    ],
    left,
    right: aside + 5.5,
    bottom: -3.4,
    top: high + 1.6,
    em: 1,
    measured: false,
    marks,
  };
}

/** Both cheeks and the face of every person, the background, and the floor; those that have light. */
function chosen({ scene }: Plan, { stations }: Report): readonly ReportStation[] {
  const behind = backgroundStation(scene)?.name;
  return stations.filter(({ name, subject, receptor, from_key }) => {
    if (from_key === null || receptor !== "disc") return false;
    if (subject === null) return name === "floor" || name === behind;
    return parts.includes(name.split(".").pop() as string);
  });
}

/** A reading with its parts, the greatest first. */
function rowsOf({ name, from_key, exposure: { total, lights } }: ReportStation): readonly Row[] {
  const stops = from_key as number;
  const part = (light: string, kind: Row["kind"], value: number | null): readonly Row[] =>
    value === null || !(value >= LEAST * total)
      ? []
      : [{ name: light, kind, stops: stops + Math.log2(value / total), share: value / total }];
  return [
    { name, kind: "reading", stops, share: 1 },
    ...lights
      .flatMap((light) => [
        ...part(light.name, "straight", light.direct),
        ...part(light.name, "bounced", light.bounced),
      ])
      .sort((a, b) => b.stops - a.stops),
  ];
}

const words = ({ name, kind }: Row): string => (kind === "bounced" ? `${name}, bounced` : name);

/** A name for every dot, so that programs can tell them apart. */
const markName = (group: readonly Row[], row: Row): string =>
  row.kind === "reading" ? row.name : `${(group[0] as Row).name}: ${words(row)}`;

const signed = (stops: number): string => (stops > 0.05 ? `+${fixed(stops, 1)}` : fixed(stops, 1));

function sentenceOf(group: readonly Row[]): string {
  const [whole, ...rest] = group as readonly [Row, ...Row[]];
  const shares = rest.map((row) => `${words(row)} ${sayPercent(row.share)}`);
  return `${whole.name} ${signed(whole.stops)} stop${shares.length === 0 ? "" : `: ${list(shares)}`}.`;
}

/** The contrast of every face. */
function contrasts(groups: readonly (readonly Row[])[]): readonly string[] {
  const wholes = groups.map((group) => group[0] as Row);
  return wholes.flatMap(({ name, stops }) => {
    if (!name.endsWith("shaded_cheek")) return [];
    const lit = wholes.find((one) => one.name === name.replace(/shaded_cheek$/, "lit_cheek"));
    return lit === undefined ? [] : [`${lit.name} to ${name}: ${sayContrast(lit.stops - stops)}.`];
  });
}
