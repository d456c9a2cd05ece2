import type { Drawing } from "../report/figures/drawing.js";
import { chosenForm, deliver } from "./output.js";
import { misuse, type Session, wholeNumber } from "./session.js";
import type { Draw, Language } from "./stages/load.js";

const LEAST = 200;
const MOST = 8000;

/** How a figure is wanted. */
export interface FigureForm {
  readonly form: "svg" | "png" | "pdf";
  /** Width in px; null where nothing is said. */
  readonly pixels: number | null;
}

/**
 * How a figure is wanted, by `--format` or the ending of `--output`, and `--pixels`; a sentence where that cannot be.
 * @param example - A command that makes a file of such a figure, up to its ending.
 */
export function figureForm(session: Session, example: string): FigureForm | { readonly problem: string } {
  const pixels = wholeNumber(session.options, "pixels", LEAST, MOST);
  if (pixels !== null && typeof pixels !== "number") return pixels;
  const form = chosenForm(session, "svg");
  if (form !== "svg" && form !== "png" && form !== "pdf")
    return { problem: "A figure is drawn as svg, png or pdf: name the file so, or say --format." };
  const output = session.options.get("output");
  if (form !== "svg" && (output === undefined || output === "-"))
    return { problem: `A ${form.toUpperCase()} goes into a file: ${example}.${form}` };
  return { form, pixels };
}

/** Gives a figure out as it is wanted. The exit code. */
export async function giveFigure(
  session: Session,
  language: Language,
  drawing: Draw,
  drawn: Drawing,
  { form, pixels }: FigureForm,
): Promise<number> {
  const files = session.operands.slice(0, 1);
  const width = pixels ?? drawing.usualWidth;
  if (form === "pdf") {
    const maker = drawing.pdfMaker();
    if ("problem" in maker) return misuse(session, maker.problem);
    const page = drawing.pointsOf(drawing.figurePage(drawn, { width }));
    return deliver(session, language, await maker.write([page], drawn.title), files);
  }
  const theme = session.options.get("theme") === "dark" ? "dark" : "light";
  const svg = drawing.renderSvg(drawn, { width: form === "svg" ? width : drawing.usualWidth, theme });
  if (form === "svg") return deliver(session, language, svg, files);
  const png = drawing.pngOf(svg, width);
  return "problem" in png ? misuse(session, png.problem) : deliver(session, language, png.bytes, files);
}
