import { evaluateChosen } from "../evaluate-file.js";
import { CLEAN } from "../exit.js";
import { chosenForm, deliver } from "../output.js";
import { misuse, type Session, wholeNumber } from "../session.js";
import { draw, language } from "../stages/load.js";

const USUAL = 360;
const LEAST = 40;
const MOST = 2000;

/** `halfshade preview FILE -o look.png`: works out what the camera would record, in grey. */
export async function previewCommand(session: Session): Promise<number> {
  const pixels = wholeNumber(session.options, "pixels", LEAST, MOST);
  if (pixels !== null && typeof pixels !== "number") return misuse(session, pixels.problem);
  const output = session.options.get("output");
  if (output === undefined || output === "-" || chosenForm(session, "png") !== "png")
    return misuse(session, "A preview is a picture in a file: halfshade preview plan.light -o look.png");
  const stage = await language();
  const [file = ""] = session.operands;
  const result = await evaluateChosen(session, stage, file);
  if (result.setUp === null) return result.exit;
  const stages = await draw();
  const { greyPng, greysOf, lookOf, tenCentimetres } = stages;
  const look = lookOf(result.setUp, pixels ?? USUAL);
  if (typeof look === "string") return misuse(session, look);
  const options = {
    contours: session.options.has("contours"),
    tenCentimetres: tenCentimetres(result.setUp.scene, look.width),
  };
  const greys = greysOf(look, options);
  const beside = stages.naturalNames.find((name) => name === session.options.get("beside"));
  if (beside === undefined) return deliver(session, stage, greyPng(look.width, look.height, greys), [file]);
  const natural = stages.naturalLookOf(result.setUp, beside, look.width);
  if (typeof natural === "string") return misuse(session, natural);
  const pair = stages.besideEachOther(look.width, look.height, [
    { greys, label: "set-up" },
    { greys: greysOf(natural.look, options), label: natural.label },
  ]);
  const exit = deliver(session, stage, greyPng(pair.width, pair.height, pair.greys), [file]);
  if (exit === CLEAN) session.io.out(`${natural.words}\n`);
  return exit;
}
