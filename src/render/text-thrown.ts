import { visibleLine } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import type { ThrownShadow } from "../report/schema/thrown.js";
import * as n from "./number.js";
import { indented, type ViewOptions } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";

/** The shadows of subjects as a table: where each falls, how far, how large, and how wide its own edge is. */
export function thrownTable(report: Report): {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
} {
  const shadows = subjectShadows(report);
  // One person needs no name.
  const several = new Set(shadows.map(({ of }) => of)).size > 1;
  const named: readonly TableColumn[] = several ? [{ title: "Of", align: "left" }] : [];
  const columns: readonly TableColumn[] = [
    ...named,
    { title: "By", align: "left" },
    { title: "Falls on", align: "left" },
    { title: "Reaches", align: "right" },
    { title: "Head grows", align: "right" },
    { title: "In frame", align: "right" },
    { title: "Edge", align: "right" },
  ];
  const rows = shadows.map((row) => [
    ...(several ? [visibleLine(row.of)] : []),
    visibleLine(row.light),
    visibleLine(row.surface),
    n.metres(row.reach),
    row.growth === null ? "-" : `x ${n.fixed(row.growth, 2)}`,
    n.perCent(row.in_frame),
    edge(row),
  ]);
  return { columns, rows };
}

/** The rows that a reader of the text sees: what falls outside of the picture on walls behind the camera stays in the data. */
function subjectShadows({ thrown, camera }: Report): readonly ThrownShadow[] {
  return thrown.shadows.filter(
    (row) =>
      row.kind === "subject" && (camera === null || (row.in_frame ?? 0) > 0 || row.surface === "floor"),
  );
}

function edge({ edge: found }: ThrownShadow): string {
  if (found === null) return "-";
  const { least, middle, greatest } = found.full;
  const ends = `${n.fixed(least, 0)} to ${n.fixed(greatest, 0)}`;
  return `${n.millimetres(middle)} (${ends})`;
}

/** What the table says and does not say. */
export const thrownWords =
  "By the middle of each light. Reaches: along the floor from the subject's place. In frame: how much of it, whatever stands before it. Edge: full width along the outline, middle (least to greatest).";

/** Surfaces with more than one shadow, a sentence each. */
export function doubledSentences({ thrown }: Report): readonly string[] {
  return thrown.doubled.map(({ surface, lights }) => {
    const each = lights.map(
      ({ name, depth }) => `${name} ${depth === null ? "(depth not known)" : `${n.stops(depth)} deep`}`,
    );
    return `Shadows on ${surface} from ${lights.length} lights: ${each.join(", ")}.`;
  });
}

/** The table of shadows as they fall for a terminal; on a narrow one a list. Nothing where none falls. */
export function thrownLines(report: Report, view: ViewOptions): readonly string[] {
  const { columns, rows } = thrownTable(report);
  const say = (text: string): readonly string[] => indented(visibleLine(text), "  ", view.width);
  const table = layTable(columns, rows, view.width - 2, 0);
  const lines =
    table === null
      ? rows.flatMap((row) =>
          say(row.map((cell, i) => `${columns[i]?.title.toLowerCase()} ${cell}`).join(", ")),
        )
      : table.map((line) => `  ${line}`);
  return rows.length === 0 ? [] : [...lines, ...say(thrownWords), ...doubledSentences(report).flatMap(say)];
}
