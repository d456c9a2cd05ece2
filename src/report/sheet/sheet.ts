import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import { distance } from "../../math/vector.js";
import type { Scene, Source } from "../../scene/types.js";
import type { Drawing } from "../figures/drawing.js";
import { planDrawing } from "../figures/plan.js";
import { sideDrawing } from "../figures/side.js";
import { alongFloor, bearingOf } from "../geometry/directions.js";
import { firstFace, headOf, lightsOf, type Plan } from "../plan.js";
import { sayBearing } from "../say/bearing.js";
import { sayFeet } from "../say/feet.js";
import { fixed } from "../say/number.js";
import { sayOpening } from "../say/opening.js";
import { sayFNumber, sayKelvin, sayLength, sayTime } from "../say/quantity.js";
import type { Report, ReportWarning } from "../schema/report.js";
import { buildLines } from "./build-lines.js";
import { kitList } from "./kit-list.js";

/** A length both ways. */
export interface BothWays {
  readonly metric: string;
  readonly feet: string;
}

/** How one lamp is set up again with two tapes, a rule and a clinometer. */
export interface LampMark {
  readonly name: string;
  readonly opening: string;
  /** Along the floor from the subject's mark and from below the lens; null without a camera. */
  readonly fromMark: BothWays;
  readonly fromLens: BothWays | null;
  /** At the mark, from the direction towards the camera's side: `40.0 deg to camera-left`. */
  readonly bearing: string;
  readonly height: BothWays;
  /** From the centre of the lit opening to the first face; null without a subject. */
  readonly slant: BothWays | null;
  /** Of the axis against the horizontal: `23 deg down`. */
  readonly tilt: string;
  readonly power: string;
}

/** One reading to be checked with a meter. */
export interface SheetReading {
  readonly where: string;
  readonly meter: string;
  readonly reads: string;
}

/** The sheet for the day: all that somebody who has never seen the recipe needs to rebuild the set-up. */
export interface DaySheet {
  readonly title: string;
  readonly headline: string;
  readonly mattersMost: string | null;
  readonly lamps: readonly LampMark[];
  /** Places to mark on the floor or to measure, from the subject's mark. */
  readonly places: readonly {
    readonly what: string;
    readonly away: string;
    readonly right: BothWays;
    readonly up: BothWays;
  }[];
  /** Name and value of each setting of the camera. */
  readonly camera: readonly (readonly [string, string])[];
  /** Lamps, people and pieces of the set with what the recipe says of their build, a line each. */
  readonly build: readonly string[];
  readonly readings: readonly SheetReading[];
  readonly warnings: readonly ReportWarning[];
  readonly kit: readonly string[];
  readonly cautions: readonly string[];
  readonly plan: Drawing;
  readonly side: Drawing;
}

const bothWays = (metres: number): BothWays => ({ metric: sayLength(metres), feet: sayFeet(metres) });

/** Letter heights across the small figures of a sheet. */
const LETTERS = 36;

const MARK: Vec3 = [0, 0, 0];

function lampMark({ scene, recipe }: Plan, light: Source): LampMark {
  const { name } = light;
  const source = headOf(scene, light);
  const { centre, axis } = source;
  const up = degrees(Math.asin(Math.min(1, Math.max(-1, axis[2]))));
  const face = firstFace(scene);
  const written = recipe.lights.find((row) => row.name === name)?.power?.written;
  return {
    name,
    opening: sayOpening(source),
    fromMark: bothWays(alongFloor(MARK, centre)),
    fromLens: scene.camera === null ? null : bothWays(alongFloor(scene.camera.at, centre)),
    bearing: sayBearing(bearingOf(MARK, centre), (degrees) => `${fixed(degrees, 1)} deg`),
    height: bothWays(centre[2]),
    slant: face === null ? null : bothWays(distance(face, centre)),
    tilt: Math.abs(up) < 0.05 ? "level" : `${fixed(Math.abs(up), 1)} deg ${up < 0 ? "down" : "up"}`,
    power: source.below === null ? "off" : (written ?? "full"),
  };
}

/** Where pieces of the set stand, by the places that carry their names. */
function setPlaces({ scene, recipe }: Plan): DaySheet["places"] {
  return (recipe.set?.parts ?? []).flatMap((piece) => {
    const place = piece.name === null ? undefined : scene.landmarks.get(piece.name);
    if (piece.name === null || place === undefined) return [];
    const [x, y, z] = place.at;
    const away = `${sayLength(Math.abs(y))} (${sayFeet(Math.abs(y))}) ${y < 0 ? "in front" : "behind"}`;
    return [{ what: `${piece.block} ${piece.name}`, away, right: bothWays(x), up: bothWays(z) }];
  });
}

function cameraRows({ scene, recipe }: Plan): DaySheet["camera"] {
  const { camera } = scene;
  if (camera === null) return [];
  const said = recipe.camera;
  const lengths = (metres: number): string => `${sayLength(metres)} (${sayFeet(metres)})`;
  const rows: (readonly [string, string | null])[] = [
    ["from the mark", lengths(alongFloor(MARK, camera.at))],
    ["lens height", lengths(camera.at[2])],
    ["held", said?.held ?? null],
    ["focal length", camera.focalLength === null ? null : `${fixed(camera.focalLength * 1000, 0)} mm`],
    ["aperture", said?.aperture?.written ?? null],
    ["shutter", camera.shutter === null ? null : sayTime(camera.shutter)],
    ["sensitivity", said?.sensitivity?.written ?? null],
    ["white balance", sayKelvin(camera.balance)],
    ["focus", camera.focus === null ? null : lengths(distance(camera.at, camera.focus))],
  ];
  return rows.flatMap(([name, value]) => (value === null ? [] : [[name, value] as const]));
}

/** The meter in few words: `disc to key`, `dome to camera`, `disc on it`, `disc 45 deg aside`. */
function meterWords({ looks, receptor }: Report["stations"][number]): string {
  const way = looks
    .replace("towards ", "to ")
    .replace("along its surface", "on it")
    .replace("45 deg to the side of the nose line", "45 deg aside");
  return `${receptor} ${way}`;
}

/** Cautions that go with the day whatever the set-up, as far as it has what they are about. */
function cautions(scene: Scene): readonly string[] {
  const lines: string[] = [];
  const flash = scene.sources.some(({ kind }) => kind === "flash");
  if (scene.sources.length > 0)
    lines.push(
      "Bag every stand low on the leg under the load, legs wide; nobody stands under a boom while it moves.",
    );
  if (scene.polygons.some(({ kind }) => kind === "flat" || kind === "panel" || kind === "scrim"))
    lines.push("Weigh down flats and frames; keep a way out of 90 cm clear, and no cable across it untaped.");
  if (flash)
    lines.push(
      "Flash heads hold a dangerous charge after they are unplugged: never open one. Ask all present whether flashing light troubles them.",
    );
  if (scene.sources.some(({ hotModellingLamp }) => hotModellingLamp))
    lines.push(
      "Filament modelling lamps are hot: keep gels, cloth and paper clear, and let heads cool before touching.",
    );
  lines.push(
    "The maker's manual and the rules of the place come first; what needs a licensed person is a licensed person's work. This sheet is no safety approval.",
  );
  return lines;
}

/** The sheet of a set-up. */
export function daySheet(plan: Plan, report: Report): DaySheet {
  return {
    title: report.title,
    headline: report.headline,
    mattersMost: report.matters_most,
    lamps: lightsOf(plan.scene).map((source) => lampMark(plan, source)),
    places: setPlaces(plan),
    camera: cameraRows(plan),
    build: buildLines(plan.recipe),
    readings: report.stations
      .filter((row) => row.f_number !== null)
      .map((row) => ({
        where: row.name,
        meter: meterWords(row),
        reads: row.f_number === null ? "-" : sayFNumber(row.f_number),
      })),
    warnings: report.warnings.filter((row) => row.severity !== "note" || row.caution !== null),
    kit: kitList(plan),
    cautions: cautions(plan.scene),
    plan: planDrawing(plan, report.thrown, LETTERS),
    side: sideDrawing(plan, LETTERS),
  };
}
