import type { Source } from "../../scene/types.js";
import { keyOf, lightsOf, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import type { Report } from "../schema/report.js";
import type { Drawing } from "./drawing.js";
import { edgeDrawing } from "./edge.js";
import { fallOffDrawing } from "./fall-off.js";
import { frameDrawing } from "./frame.js";
import { planDrawing } from "./plan.js";
import { ratioDrawing } from "./ratio.js";
import { readingsDrawing } from "./readings.js";
import { sideDrawing } from "./side.js";
import { throwDrawing } from "./throw.js";

/** The figures there are, with what each shows. */
export const figureTable = [
  { name: "plan", help: "The set-up from above, with the tapes" },
  { name: "side", help: "The set-up from camera-right, with the heights" },
  { name: "throw", help: "How steeply a light comes down, and where the shadow ends" },
  { name: "frame", help: "The picture through the lens, in outlines" },
  { name: "edge", help: "Light across the edge of a shadow, the sun's beside it" },
  { name: "readings", help: "Every reading against the key's, in stops" },
  { name: "ratio", help: "What each light gives to lit and shaded side, face, background and floor" },
  { name: "falloff", help: "Readings along the line from a light through the face to what is behind" },
] as const;

/** The name of a figure. */
export type FigureName = (typeof figureTable)[number]["name"];

/** The figures that are of one light, or may be. */
export const figuresOfLight: readonly FigureName[] = ["throw", "falloff", "edge"];

/** What figures are made from. */
export interface Figured {
  readonly plan: Plan;
  readonly report: Report;
}

/** What may be asked besides the figure's name. */
export interface FigureOptions {
  /** The light whose throw or fall-off is drawn, the key where nothing is said; or whose edge, every light's where nothing is. */
  readonly light?: string;
  /** From the edge to the surface behind it, m; half a metre where nothing is said. */
  readonly gap?: number;
}

/** A figure of a set-up, or a sentence that says why there is none. */
export function drawFigure(
  name: FigureName,
  { plan, report }: Figured,
  options: FigureOptions = {},
): Drawing | string {
  switch (name) {
    case "plan":
      return planDrawing(plan, report.thrown);
    case "side":
      return sideDrawing(plan);
    case "throw": {
      const light = lightFor(plan, options.light);
      if (typeof light === "string") return light;
      return (
        throwDrawing(plan, light) ?? "A throw needs a subject, and a lamp that is not straight above it."
      );
    }
    case "frame":
      return frameDrawing(plan, report.thrown);
    case "edge": {
      const { gap, light: named } = options;
      if (named === undefined)
        return edgeDrawing(plan, gap) ?? "No light that is on throws an edge at its aim.";
      const light = lightFor(plan, named);
      if (typeof light === "string") return light;
      return edgeDrawing(plan, gap, named) ?? `${named} is off, or throws no edge at its aim.`;
    }
    case "readings":
      return readingsDrawing(report) ?? "There is no reading at a face to compare with.";
    case "ratio":
      return ratioDrawing(plan, report) ?? "There is no reading at a face to compare with.";
    case "falloff": {
      const light = lightFor(plan, options.light);
      if (typeof light === "string") return light;
      return (
        fallOffDrawing(plan, light) ??
        `There is no line from ${light.name} through the face on which a meter reads its light.`
      );
    }
    default:
      return name satisfies never;
  }
}

/** The light of that name, the key where nothing is said, or a sentence on those that there are. */
function lightFor({ scene }: Plan, named: string | undefined): Source | string {
  const lights = lightsOf(scene);
  const light = named === undefined ? keyOf(scene) : lights.find(({ name }) => name === named);
  if (light !== null && light !== undefined) return light;
  const names = lights.map(({ name }) => name);
  return `There is no light of that name; ${names.length === 0 ? "there is none" : `there is ${list(names)}`}.`;
}
