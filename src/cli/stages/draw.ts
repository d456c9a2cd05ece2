/** All that draws figures. Loaded by the command that draws and by no other. */

export { daySheet, drawFigure, lookOf, naturalLookOf } from "../../figures.js";
export { greyPng } from "../../node/grey-png.js";
export { pdfMaker } from "../../node/pdf.js";
export { pngOf } from "../../node/png.js";
export { tenCentimetres } from "../../preview/bar.js";
export { greysOf } from "../../preview/grey.js";
export { naturalNames } from "../../preview/natural.js";
export { besideEachOther } from "../../preview/pair.js";
export { figurePage, usualWidth } from "../../render/figures/page.js";
export { renderSvg } from "../../render/figures/svg.js";
export { pointsOf } from "../../render/paper/points.js";
export { renderSheet } from "../../render/sheet-html.js";
export { sheetPages } from "../../render/sheet-pages.js";
export { gapOf } from "../../report/figures/edge.js";
export { figuresOfLight, figureTable } from "../../report/figures/figures.js";
export { tableChart } from "../../tables/chart.js";
