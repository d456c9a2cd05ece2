import type { Evaluated } from "./pipeline.js";
import { type Look, lookOf as lookOfPlan } from "./preview/look.js";
import { type NaturalLook, type NaturalName, naturalLookOf as naturalOfPlan } from "./preview/natural.js";
import type { Drawing } from "./report/figures/drawing.js";
import { type FigureName, type FigureOptions, drawFigure as figureOfPlan } from "./report/figures/figures.js";
import type { Plan } from "./report/plan.js";
import { type DaySheet, daySheet as sheetOfPlan } from "./report/sheet/sheet.js";
import { sceneLight } from "./transport/scene-light.js";

/** A set-up that was worked out: what `evaluate` gives, and what `evaluateSetUps` gives of each variant. */
type WorkedOut = Pick<Evaluated, "recipe" | "scene" | "report">;

const planOf = ({ recipe, scene }: WorkedOut): Plan => ({ recipe, scene, light: sceneLight(scene) });

/**
 * A figure of a set-up as plain data: lines, areas, tapes and texts in metres, which `renderSvg` puts on a page. A text
 * says why there is none.
 */
export function drawFigure(
  setUp: WorkedOut,
  name: FigureName,
  options: FigureOptions = {},
): Drawing | string {
  return figureOfPlan(name, { plan: planOf(setUp), report: setUp.report }, options);
}

/** What somebody needs who rebuilds a set-up: lamps by tape and bearing, readings to check, what to bring; plain data. */
export function daySheet(setUp: WorkedOut): DaySheet {
  return sheetOfPlan(planOf(setUp), setUp.report);
}

/**
 * The set-up as the camera would record it, a luminance for every pixel; `greysOf` makes greys of them. A text says why
 * there is none.
 *
 * @param width - Pixels across; the height follows from the frame.
 */
export function lookOf(setUp: Pick<Evaluated, "recipe" | "scene">, width: number): Look | string {
  const { recipe, scene } = setUp;
  return lookOfPlan({ recipe, scene, light: sceneLight(scene) }, width);
}

/**
 * The set-up with all lamps exchanged for a natural light, as the camera would record it: the sun, an overcast sky, a
 * window, or what its `pass_for` names, from where the key is seen; exposed so that the face reads the same. A text says
 * why there is none.
 *
 * @param width - Pixels across; the height follows from the frame.
 */
export function naturalLookOf(
  setUp: Pick<Evaluated, "recipe" | "scene">,
  light: NaturalName,
  width: number,
): NaturalLook | string {
  const { recipe, scene } = setUp;
  return naturalOfPlan({ recipe, scene, light: sceneLight(scene) }, light, width);
}
