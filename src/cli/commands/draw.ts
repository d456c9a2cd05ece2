import { visibleLine } from "../../diagnostics/print-visible.js";
import type { FigureOptions } from "../../report/figures/figures.js";
import { near } from "../arguments/near.js";
import { evaluateChosen } from "../evaluate-file.js";
import { figureForm, giveFigure } from "../give-figure.js";
import { misuse, type Session } from "../session.js";
import { type Draw, draw, language } from "../stages/load.js";

/** `halfshade draw FILE [FIGURE]`: draws a figure of a set-up as SVG, PNG or PDF. */
export async function drawCommand(session: Session): Promise<number> {
  const [file = "", asked = "plan"] = session.operands;
  const drawing = await draw();
  const names = drawing.figureTable.map((row) => row.name);
  const figure = names.find((name) => name === asked);
  if (figure === undefined) {
    const help = near(asked, names) || ` There are ${names.join(", ")}.`;
    return misuse(session, `There is no figure "${visibleLine(asked)}".${help}`);
  }
  const form = figureForm(session, "halfshade draw plan.light plan -o plan");
  if ("problem" in form) return misuse(session, form.problem);
  const options = optionsOf(session, drawing.gapOf);
  if ("problem" in options) return misuse(session, options.problem);
  if (options.light !== undefined && !drawing.figuresOfLight.includes(figure))
    return misuse(
      session,
      `--light belongs to ${drawing.figuresOfLight.join(", ")}; ${figure} shows all lights.`,
    );
  if (options.gap !== undefined && figure !== "edge")
    return misuse(session, "--gap belongs to edge: how far behind the edge the surface stands.");
  const stage = await language();
  const result = await evaluateChosen(session, stage, file);
  if (result.setUp === null) return result.exit;
  const { scene } = result.setUp;
  const named = options.light;
  const lights = scene.sources.filter((source) => source.spillOf === undefined).map(({ name }) => name);
  if (named !== undefined && !lights.includes(named))
    return misuse(session, `There is no light "${visibleLine(named)}".${near(named, lights)}`);
  const drawn = drawing.drawFigure(result.setUp, figure, options);
  if (typeof drawn === "string") return misuse(session, drawn);
  return giveFigure(session, stage, drawing, drawn, form);
}

/** What is asked besides the figure. */
function optionsOf(session: Session, gapOf: Draw["gapOf"]): FigureOptions | { readonly problem: string } {
  const named = session.options.get("light");
  const gap = session.options.get("gap");
  const light = named === undefined ? {} : { light: named };
  if (gap === undefined) return light;
  const size = gapOf(gap);
  if (size === null)
    return { problem: `--gap takes a length up to 50 m, as in --gap 25cm, not "${visibleLine(gap)}".` };
  return { ...light, gap: size };
}
