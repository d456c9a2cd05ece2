import { visible, visibleLine } from "../diagnostics/print-visible.js";
import type { SessionReport } from "../report/schema/session.js";
import { renderCsv } from "./csv.js";
import { partsMarkdown } from "./markdown.js";
import { fixed, metres, NOTHING } from "./number.js";
import { heading, list, paragraph, strong, type ViewPart, words } from "./parts.js";
import { indented, type ViewOptions, wrapText } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";

type Row = readonly string[];

/** One section of the view: a table or sentences under a title. */
interface Section {
  readonly title: string;
  readonly columns: Row;
  readonly rows: readonly Row[];
  readonly sentences: readonly string[];
}

const verdicts = { same: "same", near: "near", note: "note", act: "act" } as const;

const signed = (stops: number | null): string => {
  if (stops === null) return NOTHING;
  const text = fixed(stops, 1);
  return stops > 0 && text !== "0.0" ? `+${text}` : text;
};

function sectionsOf(report: SessionReport): readonly Section[] {
  const all: readonly Section[] = [
    {
      title: "Built otherwise than planned",
      columns: ["", "planned", "built"],
      rows: report.changes.map((row) => [row.path, row.planned ?? NOTHING, row.built ?? NOTHING]),
      sentences: [],
    },
    {
      title: "Readings, and how far off they are, in stops",
      columns: ["", "meter", "planned", "off", "as built", "off", ""],
      rows: report.readings.map((row) => [
        row.what,
        row.measured.shown ?? NOTHING,
        row.planned.shown ?? NOTHING,
        signed(row.off_plan),
        row.built.shown ?? NOTHING,
        signed(row.off_built),
        row.verdict === null ? NOTHING : verdicts[row.verdict],
      ]),
      sentences: report.readings.flatMap(({ what, reason }) =>
        reason === null ? [] : [`${what}: ${reason}.`],
      ),
    },
    {
      title: "What the lamps give against their settings, in stops",
      columns: ["", "gives", "from", "to", "remark"],
      rows: report.lamps.map(({ name, stops, interval, reason }) => [
        name,
        stops === null ? "not told" : signed(stops),
        signed(interval?.[0] ?? null),
        signed(interval?.[1] ?? null),
        reason ?? "",
      ]),
      sentences:
        report.remains === null ? [] : [`That leaves ${fixed(report.remains, 2)} stop of the readings.`],
    },
    { title: "Why", columns: [], rows: [], sentences: causeSentences(report) },
    { title: "What to do", columns: [], rows: [], sentences: remedySentences(report) },
    { title: "Not claimed", columns: [], rows: [], sentences: report.not_claimed },
  ];
  return all.filter(({ rows, sentences }) => rows.length + sentences.length > 0);
}

function causeSentences({ causes, pairs, diagnosis }: SessionReport): readonly string[] {
  const [only] = causes;
  const [first, ...others] = pairs.map(({ causes: both }) => both);
  if (first !== undefined) {
    const advice = first.map((one) => one.advice).join(" ");
    const rest = others.map((both) => both.map((one) => `${one.message} ${one.advice}`).join(" "));
    return [`${diagnosis} ${advice}`, ...rest];
  }
  if (only !== undefined && causes.length === 1) return [`${diagnosis} ${only.advice}`];
  return [diagnosis, ...causes.map(({ message, advice }) => `${message} ${advice}`)];
}

function remedySentences({ remedy, readings }: SessionReport): readonly string[] {
  if (remedy === null) {
    const off = readings.some(({ verdict }) => verdict === "act" || verdict === "note");
    return off ? ["No turn of a dial brings all readings to the plan."] : [];
  }
  const turns = remedy.turns.map(({ light, by, setting, reason }) => {
    const stand = setting === null ? "" : `, to ${setting}`;
    return `Turn ${light ?? "all lamps"} ${by < 0 ? "down" : "up"} by ${fixed(Math.abs(by), 1)} stop${stand}${reason === null ? "" : ` (${reason})`}.`;
  });
  const after = `The readings are then within ${fixed(remedy.worst, 1)} stop of the plan.`;
  const { carry } = remedy;
  if (carry === null) return [...turns, after];
  return [
    ...turns,
    after,
    `Or carry ${carry.light} from ${metres(carry.from)} to ${metres(carry.to)}: within ${fixed(carry.worst, 1)} stop of the plan, with its shadow edges changed.`,
  ];
}

const titleOf = ({ title, recipe, variant }: SessionReport): string =>
  `${title}: ${recipe}${variant === null ? "" : `, ${variant}`}`;

/** The parts of a short view, and what it leaves out, in words. */
interface Brief {
  readonly sections: readonly Section[];
  readonly left: readonly string[];
}

/** Without readings that need nothing done, the lamps one by one, and what is not claimed. */
function briefOf(report: SessionReport): Brief {
  const off = report.readings.filter(({ verdict }) => verdict !== "same" && verdict !== "near");
  const good = report.readings.length - off.length;
  const left = [
    ...(good === 0 ? [] : [`${good} ${good === 1 ? "reading" : "readings"} near the plan`]),
    ...(report.lamps.length === 0 ? [] : ["what the lamps give"]),
    "what is not claimed",
  ];
  const kept = { ...report, readings: off, lamps: [], remains: null, not_claimed: [] };
  const sections = sectionsOf(kept).filter(({ title }) => title !== "Why" || off.length > 0);
  return { sections, left };
}

/** A session for a terminal. */
export function renderSessionText(report: SessionReport, view: ViewOptions): string {
  const strongly = (text: string): readonly string[] =>
    wrapText(visibleLine(text), view.width).map((line) => view.paint("strong", line));
  const out = [...strongly(titleOf(report)), "", ...wrapText(visibleLine(report.headline), view.width)];
  const { sections, left } =
    view.brief === true ? briefOf(report) : { sections: sectionsOf(report), left: [] };
  for (const section of sections) {
    out.push("", ...strongly(section.title));
    if (section.rows.length > 0) out.push(...tableLines(section, view.width));
    for (const line of section.sentences) out.push(...indented(visibleLine(line), "  ", view.width));
  }
  if (left.length > 0) out.push("", ...wrapText(`Left out for being brief: ${left.join(", ")}.`, view.width));
  return out.map((line) => `${line.trimEnd()}\n`).join("");
}

/** A table, or where the line is too short for it an entry of several lines for each row. */
function tableLines({ columns, rows }: Section, width: number): readonly string[] {
  const clean = rows.map((row) => row.map(visibleLine));
  const laid = layTable(
    columns.map((title): TableColumn => ({ title, align: "left" })),
    clean,
    width - 2,
    0,
  );
  if (laid !== null) return laid.map((line) => `  ${line}`);
  return clean.flatMap((row) => [
    ...indented(row[0] ?? "", "  ", width),
    ...row.slice(1).flatMap((cell, index) => {
      const title = columns[index + 1] ?? "";
      return cell === "" ? [] : indented(title === "" ? cell : `${title}: ${cell}`, "    ", width);
    }),
  ]);
}

/** A session as the parts of a page. */
export function sessionParts(report: SessionReport): readonly ViewPart[] {
  return [
    heading(2, visible(titleOf(report))),
    paragraph(strong(visible(report.headline))),
    ...sectionsOf(report).flatMap(({ title, columns, rows, sentences }): readonly ViewPart[] => [
      heading(3, title),
      ...(rows.length === 0
        ? []
        : [
            {
              kind: "table" as const,
              columns: columns.map((column) => ({ title: column, align: null })),
              rows: rows.map((row) => row.map(visible)),
            },
          ]),
      ...(sentences.length === 0
        ? []
        : sentences.length === 1
          ? [paragraph(words(visible(sentences[0] ?? "")))]
          : [list(sentences.map(visible))]),
    ]),
  ];
}

/** A session as Markdown. */
export function renderSessionMarkdown(report: SessionReport): string {
  return partsMarkdown(sessionParts(report));
}

/** A session as CSV: a row for each reading. */
export function renderSessionCsv(report: SessionReport): string {
  return renderCsv([
    [
      "reading",
      "measured",
      "planned",
      "built",
      "off_plan_stops",
      "off_built_stops",
      "left_stops",
      "after_stops",
      "tolerance_stops",
      "verdict",
      "reason",
    ],
    ...report.readings.map((row) => [
      row.what,
      row.measured.f_number ?? row.measured.shown,
      row.planned.f_number ?? row.planned.shown,
      row.built.f_number ?? row.built.shown,
      row.off_plan,
      row.off_built,
      row.left,
      row.after,
      row.tolerance,
      row.verdict,
      row.reason,
    ]),
  ]);
}
