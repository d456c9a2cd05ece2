import { coverageOf } from "../frame/coverage.js";
import { type Lens, lensOf } from "../frame/project.js";
import type { Place } from "../frame/region.js";
import { seamsOf } from "../frame/seams.js";
import { bareSides } from "../frame/sides.js";
import type { Plan } from "../plan.js";
import type { ReportColour } from "../schema/colour.js";
import type { ReportFinishing } from "../schema/finishing.js";
import type { ReportIntent } from "../schema/intent.js";
import { edgeRamps } from "./edge.js";
import { linesWithin } from "./lines.js";
import { contrastSlopes, liftsOf, whiteBalance } from "./tones.js";

/** Less bare picture than this on a side is no work, as a share of it. */
const NOTHING = 0.0005;

/** What of the report is known already. */
export interface Known {
  readonly colour: ReportColour | null;
  readonly intent: ReportIntent | null;
}

/** What remains to be done with the picture, each item with what it follows from; null where that is nothing. */
export function reportFinishing(plan: Plan, { colour, intent }: Known): ReportFinishing | null {
  const { camera } = plan.scene;
  const lens = camera === null ? null : lensOf(camera);
  const contrast = contrastSlopes(plan, intent);
  const found: ReportFinishing = {
    ...(lens === null ? { extensions: [], lines: [] } : inPicture(plan, lens)),
    white_balance: whiteBalance(colour, intent),
    contrast,
    lifts: liftsOf(plan, intent, contrast),
  };
  const { extensions, lines, white_balance, lifts } = found;
  const nothing = extensions.length + lines.length + contrast.length + lifts.length === 0;
  return nothing && white_balance === null ? null : found;
}

/** What is to be added at the sides, and the lines within the set; nothing where the set is no background. */
function inPicture(plan: Plan, lens: Lens): Pick<ReportFinishing, "extensions" | "lines"> {
  const { scene } = plan;
  const coverage = coverageOf(scene);
  if (typeof coverage === "string") return { extensions: [], lines: [] };
  const { pixels } = lens.camera;
  const corner = ([x, y]: Place): [number, number] => [(1 + x) / 2, (1 - y) / 2];
  const pixel = (place: Place): [number, number] | null => {
    const [left, top] = corner(place);
    return pixels === null ? null : [left * pixels.width, top * pixels.height];
  };
  const sides = coverage.covered === 1 ? [] : bareSides(coverage.bare, coverage.set);
  return {
    extensions: sides
      .filter(({ share }) => share > NOTHING)
      .map(({ side, share, depth }) => {
        const along = side === "top" || side === "bottom" ? pixels?.height : pixels?.width;
        const ramps = side === "within" ? [] : edgeRamps(plan, lens, side);
        return {
          side,
          share,
          depth,
          pixels: side === "within" || along === undefined ? null : depth * along,
          ramps: ramps.map(({ at, surface, perMetre, error, strip }) => ({
            at: corner(at),
            at_pixel: pixel(at),
            surface,
            per_metre: perMetre,
            error,
            strip,
            across: strip === null ? null : perMetre * strip,
          })),
          reason:
            ramps.length > 0
              ? null
              : side === "within"
                ? "it lies between pieces of the set"
                : "no lit flat piece of the set ends there",
          from: "frame.sides",
        };
      }),
    lines: linesWithin(seamsOf(scene), coverage.bare).map(({ kind, name, from, to }) => ({
      kind,
      name,
      from: corner(from),
      to: corner(to),
      from_pixel: pixel(from),
      to_pixel: pixel(to),
      source: "frame.seams",
    })),
  };
}
