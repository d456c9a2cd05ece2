import { visibleLine } from "../diagnostics/print-visible.js";
import { wholePerCents } from "../report/say/per-cents.js";
import type { Report, ReportStation } from "../report/schema/report.js";
import * as n from "./number.js";
import { indented, type ViewOptions } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";

/** Name of a station and how its meter is held. */
export const stationReading = (station: ReportStation): string =>
  `${visibleLine(station.looks)} (${station.receptor})`;

/** What each light gives of a station's light, in whole per cents that add up. */
const shares = (station: ReportStation, lights: readonly string[]): readonly string[] => {
  const entries = station.exposure.lights;
  if (!(station.exposure.total > 0)) return lights.map(() => n.NOTHING);
  const parts = wholePerCents(entries.map((entry) => entry.direct + (entry.bounced ?? 0)));
  return lights.map((light) => {
    const part = parts[entries.findIndex((entry) => entry.name === light)];
    return part === undefined ? n.NOTHING : `${part} %`;
  });
};

/** Stops to either side: `+-0.3`, or `-0.5 +0.2` where they differ. */
const withinWords = ([under, over]: readonly [number, number]): string => {
  const [low, high] = [n.fixed(under, 1), n.fixed(over, 1)];
  return low === high ? `+-${low}` : `-${low} +${high}`;
};

/** What a station is called in a sentence: with its meter where two stand at one place. */
function calledIn(
  { stations }: Report,
  { name, looks, receptor }: Pick<ReportStation, "name" | "looks" | "receptor">,
): string {
  const twice = stations.filter((row) => row.name === name).length > 1;
  return twice ? `${name} ${looks} (${receptor})` : name;
}

/** Between what the readings lie, in one sentence: what most of them have, then the others by name. */
export function withinSentences(report: Report): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { name, looks, receptor, interval } of report.stations) {
    if (interval === null) continue;
    const words = withinWords(interval);
    groups.set(words, [...(groups.get(words) ?? []), calledIn(report, { name, looks, receptor })]);
  }
  const most = Math.max(0, ...[...groups.values()].map((names) => names.length));
  const usual = [...groups].find(([, names]) => names.length === most);
  if (usual === undefined) return [];
  const others = [...groups]
    .filter(([words]) => words !== usual[0])
    .map(([words, names]) => `${words} (${names.join(", ")})`);
  const rest = others.length === 0 ? "" : `; ${others.join("; ")}`;
  return [
    `With inputs off by their tolerances, readings lie within ${usual[0]} stop in 95 of 100 cases${rest}.`,
  ];
}

interface StationTable {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}

/** The table of all stations: what each reads, against the set aperture, and what each light gives to it. */
export function stationTable(report: Report, withShares: boolean, withLight: boolean): StationTable {
  const lit = report.lights.filter((light) => light.on).map((light) => light.name);
  const lights = withShares && lit.length > 1 ? lit : [];
  const columns: TableColumn[] = [
    { title: "Where", align: "left" },
    { title: "Meter", align: "left" },
    { title: "Reads", align: "left" },
    { title: "Against set", align: "right" },
  ];
  if (withLight) {
    columns.push(
      { title: "From key", align: "right" },
      { title: "L*", align: "right" },
      { title: "lx s", align: "right" },
    );
  }
  for (const light of lights) columns.push({ title: visibleLine(light), align: "right" });
  const rows = report.stations.map((station) => {
    const row = [
      visibleLine(station.name),
      stationReading(station),
      station.shown === null ? n.NOTHING : visibleLine(station.shown),
      n.signedStops(station.stops_from_aperture),
    ];
    if (withLight) {
      row.push(
        n.signedStops(station.from_key),
        n.fixed(station.tone?.lightness ?? null, 0),
        n.significant(station.exposure.total, 3),
      );
    }
    row.push(...shares(station, lights));
    return row;
  });
  return { columns, rows };
}

/** The column that says how the meter is held; it may be broken into lines. */
const METER = 1;

/** Readings as a table; on a narrow terminal as a list. Reasons for missing values follow. */
export function stationLines(report: Report, view: ViewOptions): readonly string[] {
  if (report.stations.length === 0) return ["  No place to hold a meter."];
  const room = view.width - 2;
  const full = stationTable(report, true, true);
  const forms = [full, stationTable(report, false, true), stationTable(report, false, false)];
  const laid = ({ columns, rows }: StationTable): readonly string[] | null =>
    layTable(columns, rows, room, METER);
  const form = forms.find((one) => laid(one) !== null) ?? null;
  const table = form === null ? null : laid(form);
  const lines: string[] = [];
  if (table === null) {
    for (const station of report.stations) {
      const reads = station.shown === null ? n.NOTHING : visibleLine(station.shown);
      const against = n.signedStops(station.stops_from_aperture);
      const text = `${visibleLine(station.name)}, ${stationReading(station)}: ${reads}${against === n.NOTHING ? "" : `, ${against} against the set aperture`}`;
      lines.push(...indented(text, "  ", view.width));
    }
  } else {
    lines.push(...table.map((line) => `  ${line}`));
  }
  lines.push(...leftOut(full, form, view));
  for (const text of bounceSentences(report)) lines.push(...indented(text, "  ", view.width));
  for (const text of withinSentences(report)) lines.push(...indented(visibleLine(text), "  ", view.width));
  for (const text of roomLightSentences(report)) lines.push(...indented(text, "  ", view.width));
  for (const [reason, names] of reasons(report)) {
    const where = names.length === report.stations.length ? "every place" : names.map(visibleLine).join(", ");
    lines.push(...indented(`${where}: ${visibleLine(reason)}`, "  ", view.width));
  }
  return lines;
}

/** Widest line that is tried for the whole table. */
const WIDEST = 400;

/** Which columns a narrow line leaves out, and how to get them; none where it shows all. */
function leftOut(full: StationTable, shown: StationTable | null, view: ViewOptions): readonly string[] {
  const there = new Set(
    shown?.columns.map(({ title }) => title) ?? ["Where", "Meter", "Reads", "Against set"],
  );
  const lost = full.columns.filter(({ title }) => !there.has(title)).map(({ title }) => title);
  if (lost.length === 0) return [];
  let width = view.width;
  while (width < WIDEST && layTable(full.columns, full.rows, width - 2, METER) === null) width++;
  return indented(
    `Left out for want of room: ${lost.join(", ")}. --width ${width} shows all.`,
    "  ",
    view.width,
  );
}

/** What the surfaces give to shaded readings, and how well bounced light is known; none without bounced light. */
export function bounceSentences(report: Report): readonly string[] {
  const lines = report.stations.flatMap((station) => {
    const given = (station.contributors ?? []).slice(0, 4).map(({ surface, stops }) => ({
      surface: visibleLine(surface),
      stops: stops === null ? "all of it" : n.stops(stops),
    }));
    const [first] = given;
    if (first === undefined) return [];
    const parts = given.map(({ surface, stops }) => `${surface} ${stops}`).join(", ");
    const lost = first.stops === "all of it" ? "all" : first.stops;
    return [
      `Bounced to ${visibleLine(calledIn(report, station))} by ${parts}; with ${first.surface} black it would lose ${lost}.`,
    ];
  });
  const errors = report.stations.flatMap(({ exposure }) => (exposure.error === null ? [] : [exposure.error]));
  const worst = errors.reduce((most, error) => Math.max(most, error), 0);
  return worst >= 0.005
    ? [...lines, `Bounced light leaves readings open by ${n.fixed(worst, 2)} stop at most.`]
    : lines;
}

/** The room's own light, which stands beside the readings: a sentence for each amount; none without any. */
export function roomLightSentences(report: Report): readonly string[] {
  return [...roomLight(report)].map(([ambient, lit]) => {
    const names = lit.map(({ name, looks }) => `${name} ${looks}`);
    const where = names.length === report.stations.length ? "" : ` (${names.map(visibleLine).join(", ")})`;
    const adds = lit.flatMap(({ ambient_adds }) => (ambient_adds === null ? [] : [ambient_adds]));
    const [least, most] = [n.fixed(Math.min(...adds), 2), n.fixed(Math.max(...adds), 2)];
    const counted =
      adds.length === 0
        ? ""
        : `; counted, it would add ${least === most ? "" : `${least} to `}${most} stop to them`;
    return `Room light over the shutter time: ${n.luxSeconds(ambient)}${where}, beside the readings and in none of them${counted}.`;
  });
}

/** Stations by the room light on them, where there is any. */
function roomLight(report: Report): ReadonlyMap<number, Report["stations"]> {
  const found = new Map<number, Report["stations"][number][]>();
  for (const station of report.stations) {
    const { ambient } = station;
    if (ambient === null || !(ambient > 0)) continue;
    const lit = found.get(ambient) ?? [];
    lit.push(station);
    found.set(ambient, lit);
  }
  return found;
}

/** Stations by the reason for what they do not have. */
function reasons(report: Report): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const { name, looks, reason } of report.stations) {
    if (reason === null) continue;
    const names = found.get(reason) ?? [];
    names.push(`${name} ${looks}`);
    found.set(reason, names);
  }
  return found;
}
