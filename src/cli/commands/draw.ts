import { visibleLine } from "../../diagnostics/print-visible.js";
import type { FigureOptions } from "../../report/figures/figures.js";
import { near } from "../arguments/near.js";
import { evaluateChosen } from "../evaluate-file.js";
import { figureForm, giveFigure } from "../give-figure.js";
import { misuse, type Session } from "../session.js";
import { draw, language } from "../stages/load.js";

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
  const options = optionsOf(session);
  if ("problem" in options) return misuse(session, options.problem);
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
function optionsOf(session: Session): FigureOptions | { readonly problem: string } {
  const named = session.options.get("light");
  const gap = session.options.get("gap");
  const light = named === undefined ? {} : { light: named };
  if (gap === undefined) return light;
  const found = /^(\d{1,5}(?:\.\d{1,6})?) ?(mm|cm|m)$/.exec(gap);
  const size =
    found === null ? Number.NaN : Number(found[1]) * ({ mm: 0.001, cm: 0.01, m: 1 }[found[2] as "mm"] ?? 1);
  if (!(size > 0 && size <= 50))
    return { problem: `--gap takes a length up to 50 m, as in --gap 25cm, not "${visibleLine(gap)}".` };
  return { ...light, gap: size };
}
