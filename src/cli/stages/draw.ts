/** All that draws figures. Loaded by the command that draws and by no other. */
export { pngOf } from "../../node/png.js";
export { renderSvg, usualWidth } from "../../render/figures/svg.js";
export { renderSheet } from "../../render/sheet-html.js";
export { drawFigure, figureTable } from "../../report/figures/figures.js";
export { daySheet } from "../../report/sheet/sheet.js";
export { sceneLight } from "../../transport/scene-light.js";
