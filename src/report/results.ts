import { dot, subtract } from "../math/vector.js";
import { writeName } from "../model/make/points.js";
import type { Expr, PointValue, ResultType } from "../model/values.js";
import { lightPlace } from "../scene/lit/seen.js";
import type { Scene, Source } from "../scene/types.js";
import { type Asked, evaluate } from "./evaluate/expression.js";
import type { Found } from "./evaluate/found.js";
import type { MeasuredInput } from "./evaluate/inputs.js";
import { judgedScale, placeOnScale, valueAtPlace } from "./evaluate/scales.js";
import { reportValue, show, unitOf } from "./evaluate/show.js";
import { spreadOf } from "./evaluate/spread.js";
import { keyOf, lightsOn, partName } from "./plan.js";
import type { ReportResult } from "./schema/report.js";

type ResultExpr = Extract<Expr, { kind: "result" }>;

/** A result with the words in which a recipe asks for it. */
interface Wanted {
  readonly text: string;
  readonly expr: ResultExpr;
}

const named = (name: string): PointValue => ({
  kind: "named",
  path: name.split("."),
  written: name,
});

const result = (
  text: string,
  type: ResultType,
  name: string,
  of: string | null,
  args: ResultExpr["args"] = [],
): Wanted => ({ text, expr: { kind: "result", type, name, of, args } });

/** The results that matter for any set-up, each as it would be asked for in a recipe. */
function wanted(scene: Scene): readonly Wanted[] {
  const list: Wanted[] = [];
  const first = scene.subjects[0];
  const face = first === undefined ? "" : partName(scene, first, "face");
  const shin = first === undefined ? "" : partName(scene, first, "shin");
  const on = lightsOn(scene);
  const key = keyOf(scene);
  for (const subject of scene.subjects) {
    const own = partName(scene, subject, "face");
    list.push(
      result(`lit_to_shadow(${own})`, "contrast", "lit_to_shadow", null, [{ name: "face", value: own }]),
    );
  }
  if (key !== null && first !== undefined) {
    for (const other of on) {
      if (other.name === key.name) continue;
      list.push(
        result(
          `key_to_fill(${writeName(key.name)}, ${writeName(other.name)})`,
          "contrast",
          "key_to_fill",
          null,
          [
            { name: "key", value: key.name },
            { name: "fill", value: other.name },
          ],
        ),
      );
    }
  }
  for (const source of on) {
    const name = writeName(source.name);
    if (first !== undefined && scene.stations.some((row) => row.name === shin)) {
      list.push(
        result(`${name}.fall_off(from: ${face}, to: ${shin})`, "stops", "fall_off", source.name, [
          { name: "from", value: named(face) },
          { name: "to", value: named(shin) },
        ]),
      );
    }
    list.push(result(`${name}.reserve`, "stops", "reserve", source.name));
  }
  list.push(...background(scene, face, key));
  list.push(...outlines(scene), ...rims(scene));
  if (scene.camera !== null && first !== undefined) list.push(result("headroom", "length", "headroom", null));
  return list;
}

/** The hair of every head against what lies behind it, to either side and above. */
function outlines(scene: Scene): readonly Wanted[] {
  if (scene.camera === null || scene.polygons.length === 0) return [];
  return scene.subjects.flatMap((subject) => {
    const hair = partName(scene, subject, "hair");
    return ["left", "right", "top"].map((side) =>
      result(`separation(${hair}, side: ${side})`, "stops", "separation", null, [
        { name: "outline", value: hair },
        { name: "side", value: side },
      ]),
    );
  });
}

/** The width of the rim that each light with this role draws, on the side of the picture on which it stands. */
function rims(scene: Scene): readonly Wanted[] {
  const [{ camera }, first] = [scene, scene.subjects[0]];
  if (camera === null || first === undefined) return [];
  return lightsOn(scene)
    .filter((source) => source.role === "rim")
    .map((source) => {
      const side = dot(subtract(lightPlace(source), first.head), camera.right) < 0 ? "left" : "right";
      return result(`rim_width(${writeName(source.name)}, side: ${side})`, "length", "rim_width", null, [
        { name: "light", value: source.name },
        { name: "side", value: side },
      ]);
    });
}

/** Background against the face, and how even it is, for every piece of the set with stations of its own. */
function background(scene: Scene, face: string, key: Source | null): readonly Wanted[] {
  const list: Wanted[] = [];
  const reading = (station: string): Expr => ({
    kind: "reading",
    type: "reading",
    station,
    receptor: "disc",
    towards: null,
    lights: [],
  });
  for (const station of scene.stations) {
    const { name } = station;
    const sides = [`${name}.left`, name, `${name}.right`];
    if (!station.natural || !sides.every((side) => scene.stations.some((row) => row.name === side))) continue;
    list.push(
      result(
        `evenness(${sides.join(", ")})`,
        "stops",
        "evenness",
        null,
        sides.map((side) => ({ name: "reading", value: reading(side) })),
      ),
    );
    if (key === null || face === "") continue;
    const towards = named(key.name);
    list.push(
      result(`stops(${name}, ${face}.disc(towards: ${writeName(key.name)}))`, "stops", "stops", null, [
        { name: "a", value: reading(name) },
        {
          name: "b",
          value: {
            kind: "reading",
            type: "reading",
            station: face,
            receptor: "disc",
            towards,
            lights: [],
          },
        },
      ]),
    );
  }
  return list;
}

/** The ends of the interval of a value, each as the value would be; null where it cannot be had. */
function endsOf(
  asked: Asked,
  expr: Expr,
  found: Found,
  inputs: readonly MeasuredInput[],
): [Found, Found] | null {
  const interval = found.value === null ? null : spreadOf(asked, expr, inputs);
  const place = judgedScale(found.type) === "own" ? found.value : placeOnScale(found);
  if (interval === null || place === null) return null;
  const end = (off: number): Found => ({
    ...found,
    value: judgedScale(found.type) === "own" ? place + off : valueAtPlace(found.type, place + off),
  });
  return [end(-interval.below), end(interval.above)];
}

/**
 * Whether an unasked result is given with its interval: not for an outline against what lies behind it, since each input
 * would take as long as the readings of many places. An expectation that says `surely` works it out.
 */
const hasInterval = (expr: ResultExpr): boolean => expr.name !== "separation";

/** The results of the report, null with a reason where one cannot be had. */
export function reportResults(asked: Asked, inputs: readonly MeasuredInput[]): readonly ReportResult[] {
  return wanted(asked.plan.scene).map(({ text, expr }) => {
    const found = evaluate(asked, expr);
    const ends = hasInterval(expr) ? endsOf(asked, expr, found, inputs) : null;
    const [low, high] = (ends ?? []).map((end) => ({ value: reportValue(end), shown: show(end) }));
    return {
      name: expr.name,
      text,
      value: reportValue(found),
      unit: unitOf(found),
      interval: low?.value == null || high?.value == null ? null : [low.value, high.value],
      shown: show(found) ?? "not known",
      shown_interval:
        low?.shown == null || high?.shown == null || low.shown === high.shown
          ? null
          : `${low.shown} to ${high.shown}`,
      reason: found.reason,
    };
  });
}
