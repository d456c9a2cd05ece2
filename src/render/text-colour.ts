import { visibleLine } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import { fixed, kelvin, signedMired } from "./number.js";
import { indented, type ViewOptions } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";

type Colour = NonNullable<Report["colour"]>;

/** Differences below this are not worth a table, mired. */
const SEEN = 5;

/** Whether lights of several colours meet, so that places differ. */
export function isMixed({ lights }: Colour): boolean {
  return lights.some(({ from_key }) => from_key !== null && Math.abs(from_key) >= SEEN);
}

/** Whether there is anything to say of colour: several, a gel, or a face that is not neutral, or not as warm as it should be, at the white balance. */
export function hasColour(colour: Colour): boolean {
  const gelled = colour.lights.some(({ gels }) => gels.length > 0);
  const asked = colour.wanted_from_balance ?? 0;
  const open = colour.face_from_balance !== null && Math.abs(colour.face_from_balance - asked) >= SEEN;
  return isMixed(colour) || gelled || open || Math.abs(colour.face_from_balance ?? 0) >= SEEN;
}

/** What each light is, in sentences, and the advice. */
export function colourSentences(colour: Colour): readonly string[] {
  const lights = colour.lights.map(({ name, bare, gels, loses, colour: behind, from_balance }) => {
    const costs =
      gels.length === 0 ? "" : ` (${kelvin(bare)} before its gels, which cost ${fixed(loses, 1)} stop)`;
    return `${name}: ${kelvin(behind)}${costs}, ${signedMired(from_balance)} mired from the white balance.`;
  });
  return [...lights, ...colour.advice];
}

/** The colour at every station, where it differs from place to place. */
export function colourTable({ stations }: Colour): {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
} {
  const columns: readonly TableColumn[] = [
    { title: "Place", align: "left" },
    { title: "Light", align: "right" },
    { title: "straight", align: "right" },
    { title: "bounced", align: "right" },
    { title: "mired from the face", align: "right" },
  ];
  const rows = stations.map((row) => [
    `${row.name} ${row.receptor} ${row.looks}`,
    kelvin(row.colour),
    kelvin(row.direct),
    kelvin(row.bounced),
    row.from_face === null ? "-" : signedMired(row.from_face),
  ]);
  return { columns, rows };
}

/** The colours as lines of the text. */
export function colourLines(colour: Colour, view: ViewOptions): readonly string[] {
  const lines = colourSentences(colour).flatMap((text) => indented(visibleLine(text), "  ", view.width));
  if (!isMixed(colour)) return lines;
  const { columns, rows } = colourTable(colour);
  const visible = rows.map((row) => row.map(visibleLine));
  const table = layTable(columns, visible, view.width - 2, 0);
  const places =
    table === null
      ? visible.flatMap(([where = "", light = "", , , off = ""]) =>
          indented(`${where}: ${light}, ${off} mired from the face`, "  ", view.width),
        )
      : table.map((line) => `  ${line}`);
  return [...lines, "", ...places];
}
