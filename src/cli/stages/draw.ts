/** All that draws figures. Loaded by the command that draws and by no other. */

export { daySheet, drawFigure, lookOf, naturalLookOf } from "../../figures.js";
export { greyPng } from "../../node/grey-png.js";
export { pngOf } from "../../node/png.js";
export { tenCentimetres } from "../../preview/bar.js";
export { greysOf } from "../../preview/grey.js";
export { naturalNames } from "../../preview/natural.js";
export { besideEachOther } from "../../preview/pair.js";
export { renderSvg, usualWidth } from "../../render/figures/svg.js";
export { renderSheet } from "../../render/sheet-html.js";
export { figureTable } from "../../report/figures/figures.js";
export { tableChart } from "../../tables/chart.js";
