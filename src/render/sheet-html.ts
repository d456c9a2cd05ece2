import { visible } from "../diagnostics/print-visible.js";
import type { Drawing } from "../report/figures/drawing.js";
import type { BothWays, DaySheet } from "../report/sheet/sheet.js";
import { widthToScale } from "./figures/page.js";
import { renderSvg } from "./figures/svg.js";
import { htmlText } from "./html-escape.js";
import { bringsLeft, type SheetSize, sheetSize } from "./sheet-pages.js";
import { type Paper, sheetScale } from "./sheet-scale.js";
import { noReadings, sideWays, warningWords } from "./sheet-words.js";

const safe = (text: string): string => htmlText(visible(text));

/** Room for a figure, px: half of a page's width, and what is left of its height. */
const WIDE = 345;
const HIGH = 390;

/** Empty edge of a figure's page, and what it has below its scale bar, px; a sheet needs less. */
const EDGE = 10;

const style = (paper: Paper, { letters }: SheetSize): string => `
@page { size: ${paper === "a4" ? "A4" : "letter"} portrait; margin: 9mm 10mm; }
* { box-sizing: border-box; }
body { font: ${(7.8 * letters).toFixed(2)}pt/1.24 "Noto Sans", sans-serif; color: #111; background: #fff; margin: 0 auto; width: ${paper === "a4" ? "190mm" : "196mm"}; }
h1 { font-size: 13pt; margin: 0 0 1mm; }
h2 { font-size: 9pt; line-height: 1.2; margin: 1.6mm 0 0.6mm; border-bottom: 0.3mm solid #111; }
p { margin: 0 0 0.8mm; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; border-bottom: 0.15mm solid #999; padding: 0.25mm 1.2mm 0.25mm 0; }
th { font-weight: 600; }
td small { display: block; color: #333; font-size: 0.87em; line-height: 1.15; }
table.readings td { white-space: nowrap; }
td.blank { border-bottom: 0.3mm solid #111; width: 11mm; }
.two { display: flex; gap: 5mm; align-items: flex-start; }
.two > * { flex: 1 1 0; min-width: 0; }
ul { margin: 0; padding-left: 3.5mm; }
ul.build { columns: 2; column-gap: 5mm; }
ul.bring { list-style: none; padding: 0; columns: 2; column-gap: 3mm; }
ul.bring li { break-inside: avoid; }
.tick { display: inline-block; width: 2.6mm; height: 2.6mm; border: 0.3mm solid #111; }
figure { margin: 0; }
figcaption { color: #333; }
svg { display: block; max-width: 100%; height: auto; margin: -${EDGE}px 0; clip-path: inset(${EDGE + 1}px 0); }
.stop { font-weight: 700; }
@media print { body { width: auto; } h2, tr, li, figure { break-inside: avoid; } }
`;

function figure(drawing: Drawing, what: string, { figures }: SheetSize): string {
  const scale = sheetScale(drawing, figures * WIDE, figures * HIGH);
  const svg = renderSvg(drawing, { width: widthToScale(drawing, scale), theme: "light", bare: true });
  return `<figure>${svg}<figcaption>${safe(what)}, 1:${scale} where the page is printed at its full size</figcaption></figure>`;
}

const both = (value: BothWays | null): string =>
  value === null ? "-" : `${safe(value.metric)}<small>${safe(value.feet)}</small>`;

const row = (cells: readonly string[]): string =>
  `<tr>${cells.map((cell) => `<td>${cell}</td>`).join("")}</tr>`;

const classed = (kind: string): string => (kind === "" ? "" : ` class="${kind}"`);

const table = (titles: readonly string[], rows: readonly string[], kind = ""): string =>
  `<table${classed(kind)}><thead><tr>${titles.map((title) => `<th scope="col">${safe(title)}</th>`).join("")}</tr></thead><tbody>${rows.join("\n")}</tbody></table>`;

const list = (items: readonly string[], kind = ""): string =>
  `<ul${classed(kind)}>${items.map((item) => `<li>${item}</li>`).join("")}</ul>`;

function lamps(sheet: DaySheet): string {
  return table(
    ["Lamp", "From the mark", "From the lens", "At the mark", "Height", "To the face", "Tilt", "Power"],
    sheet.lamps.map((lamp) =>
      row([
        `<b>${safe(lamp.name)}</b><small>${safe(lamp.opening)}</small>`,
        both(lamp.fromMark),
        both(lamp.fromLens),
        safe(lamp.bearing),
        both(lamp.height),
        both(lamp.slant),
        safe(lamp.tilt),
        safe(lamp.power),
      ]),
    ),
  );
}

function places(sheet: DaySheet): string {
  if (sheet.places.length === 0) return "";
  return `<h2>Set, from the mark</h2>${table(
    ["Middle of", "Along the lens", "Across", "Up"],
    sheet.places.map((place) =>
      row([safe(place.what), safe(place.away), both(sideWays(place.right)), both(place.up)]),
    ),
  )}`;
}

/**
 * The sheet for the day as one page of HTML that prints by itself: no script, nothing from outside, texts as texts.
 * Lengths stand in metres and in feet and inches.
 */
export function renderSheet(sheet: DaySheet, paper: Paper): string {
  const size = sheetSize(sheet, paper);
  const left = bringsLeft(sheet);
  const bring = `<h2>Bring</h2>
${list(
  sheet.kit.map((item) => `<span class="tick"></span> ${safe(item)}`),
  "bring",
)}`;
  const readings = sheet.readings.map(
    ({ where, meter, reads }) =>
      `<tr><td>${safe(where)}</td><td>${safe(meter)}</td><td><b>${safe(reads)}</b></td><td class="blank"></td><td class="blank"></td><td><span class="tick"></span></td></tr>`,
  );
  const warnings = sheet.warnings.map((warning) => {
    const { lead, text } = warningWords(warning);
    return `<span class="${warning.severity === "stop" ? "stop" : "check"}">${lead}</span>${safe(text)}`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${safe(sheet.title)}: sheet for the day</title>
<style>${style(paper, size)}</style>
</head>
<body>
<h1>${safe(sheet.title)}</h1>
<p>${safe(sheet.headline)}</p>
${sheet.mattersMost === null ? "" : `<p><b>The tape that matters most:</b> ${safe(sheet.mattersMost)}</p>`}
<h2>Lamps</h2>
${lamps(sheet)}
<div class="two">
<div>
${figure(sheet.plan, "From above", size)}
<h2>Readings to check, at ISO as set</h2>
${readings.length === 0 ? `<p>${safe(noReadings)}</p>` : table(["Where", "Meter", "Reads", "Actual", "Off by", ""], readings, "readings")}
${left ? bring : ""}
</div>
<div>
${figure(sheet.side, "From camera-right", size)}
<h2>Camera</h2>
${table(
  ["Setting", "Value"],
  sheet.camera.map(([name, value]) => row([safe(name), safe(value)])),
)}
${places(sheet)}
${left ? "" : bring}
</div>
</div>
<h2>Build</h2>
${list(sheet.build.map(safe), "build")}
${warnings.length === 0 ? "" : `<h2>Warnings</h2>${list(warnings)}`}
<h2>Take care</h2>
${list(sheet.cautions.map(safe))}
</body>
</html>
`;
}
