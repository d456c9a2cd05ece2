import { visibleLine } from "../diagnostics/print-visible.js";
import type { Report, ReportShadow } from "../report/schema/report.js";
import * as n from "./number.js";
import { indented, type ViewOptions } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";

/** Shadows as a table: how deep they are and how wide their edge is, two numbers that are never one. */
export function shadowTable(report: Report): {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
} {
  const columns: readonly TableColumn[] = [
    { title: "On", align: "left" },
    { title: "Of", align: "left" },
    { title: "In light", align: "right" },
    { title: "In shadow", align: "right" },
    { title: "Depth", align: "right" },
    { title: "Edge", align: "right" },
  ];
  const rows = report.shadows.map((shadow) => [
    visibleLine(shadow.surface),
    visibleLine(shadow.light),
    n.signedStops(shadow.in_light),
    n.signedStops(shadow.in_shadow),
    depth(shadow),
    n.millimetres(shadow.edge),
  ]);
  return { columns, rows };
}

function depth({ depth: stops, error }: ReportShadow): string {
  return stops !== null && error !== null && error >= 0.05
    ? `${n.stops(stops)} +-${n.fixed(error, 1)}`
    : n.stops(stops);
}

/** What the table says and does not say. */
export const shadowWords =
  "In light and in shadow: stops from the reading at the face. Edge: of the head's outline, full width.";

/** Why there are shadows without an edge, a line for each reason. */
function edgeless({ shadows }: Report, view: ViewOptions): readonly string[] {
  const none = shadows.filter(({ edge, reason }) => edge === null && reason !== null);
  return [...new Set(none.map(({ reason }) => reason ?? ""))].flatMap((reason) => {
    const where = none
      .filter((row) => row.reason === reason)
      .map(({ surface, light }) => `${visibleLine(light)} on ${visibleLine(surface)}`);
    return indented(`No edge of ${where.join(", ")}: ${visibleLine(reason)}.`, "  ", view.width);
  });
}

/** The table of shadows for a terminal; on a narrow one a list. */
export function shadowLines(report: Report, view: ViewOptions): readonly string[] {
  const { columns, rows } = shadowTable(report);
  const table = layTable(columns, rows, view.width - 2, 0);
  const lines =
    table === null
      ? rows.flatMap(([on = "", of = "", , , deep = "", edge = ""]) =>
          indented(`${on}, of ${of}: ${deep} deep, edge ${edge}`, "  ", view.width),
        )
      : table.map((line) => `  ${line}`);
  return [...lines, ...indented(shadowWords, "  ", view.width), ...edgeless(report, view)];
}
