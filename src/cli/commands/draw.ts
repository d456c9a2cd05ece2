import { visibleLine } from "../../diagnostics/print-visible.js";
import type { FigureOptions } from "../../report/figures/figures.js";
import { near } from "../arguments/near.js";
import { evaluateChosen } from "../evaluate-file.js";
import { chosenForm, deliver } from "../output.js";
import { misuse, type Session, wholeNumber } from "../session.js";
import { draw, language } from "../stages/load.js";

const LEAST = 200;
const MOST = 8000;

/** `halfshade draw FILE [FIGURE]`: draws a figure of a set-up as SVG or PNG. */
export async function drawCommand(session: Session): Promise<number> {
  const [file = "", asked = "plan"] = session.operands;
  const drawing = await draw();
  const names = drawing.figureTable.map((row) => row.name);
  const figure = names.find((name) => name === asked);
  if (figure === undefined) {
    const help = near(asked, names) || ` There are ${names.join(", ")}.`;
    return misuse(session, `There is no figure "${visibleLine(asked)}".${help}`);
  }
  const pixels = wholeNumber(session.options, "pixels", LEAST, MOST);
  if (pixels !== null && typeof pixels !== "number") return misuse(session, pixels.problem);
  const form = chosenForm(session, "svg");
  if (form !== "svg" && form !== "png")
    return misuse(session, "A figure is drawn as svg or png: name the file so, or say --format.");
  const output = session.options.get("output");
  if (form === "png" && (output === undefined || output === "-"))
    return misuse(session, "A PNG goes into a file: halfshade draw plan.light plan -o plan.png");
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
  const width = pixels ?? drawing.usualWidth;
  const theme = session.options.get("theme") === "dark" ? "dark" : "light";
  const svg = drawing.renderSvg(drawn, { width: form === "svg" ? width : drawing.usualWidth, theme });
  if (form === "svg") return deliver(session, stage, svg, [file]);
  const png = drawing.pngOf(svg, width);
  if ("problem" in png) return misuse(session, png.problem);
  return deliver(session, stage, png.bytes, [file]);
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
