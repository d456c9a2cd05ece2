/** All that draws figures. Loaded by the command that draws and by no other. */

export { greyPng } from "../../node/grey-png.js";
export { pngOf } from "../../node/png.js";
export { tenCentimetres } from "../../preview/bar.js";
export { greysOf } from "../../preview/grey.js";
export { lookOf } from "../../preview/look.js";
export { renderSvg, usualWidth } from "../../render/figures/svg.js";
export { renderSheet } from "../../render/sheet-html.js";
export { drawFigure, figureTable } from "../../report/figures/figures.js";
export { daySheet } from "../../report/sheet/sheet.js";
export { sceneLight } from "../../transport/scene-light.js";
