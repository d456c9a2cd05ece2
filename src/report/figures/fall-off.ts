import { pointFalloff } from "../../physics/falloff.js";
import type { Source } from "../../scene/types.js";
import { type LinePlace, type LineWalk, walkLine } from "../light/along-line.js";
import { type Reading, sumOf } from "../light/reading.js";
import { lightsOn, type Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { type ChartCurve, chartDrawing, roundTicks, type Tick } from "./chart.js";
import type { Drawing, Ink, Place } from "./drawing.js";

/** What is less than this many stops under the spot is not drawn. */
const DEEPEST = -8;

/** One part of the readings along the line, as a luminous exposure. */
interface Part {
  readonly name: string;
  readonly ink: Ink;
  readonly of: (reading: Reading) => number;
}

/**
 * How light falls off along the line from a light through the first subject's face to what is behind: all light together,
 * each light by itself, the chosen light's straight light and what bounces, in stops from the reading at the face; beside them
 * the straight light as it would be from a point, by the inverse square. Null where the meter would stand in the light, or
 * reads nothing at the face.
 */
export function fallOffDrawing(plan: Plan, source: Source): Drawing | null {
  const walk = walkLine(plan, source);
  if (walk === null) return null;
  const { line, spot, places } = walk;
  const zero = spot.reading.exposure;
  const parts = partsOf(plan, source, walk);
  const stops = (exposure: number): number | null => {
    const value = exposure > 0 ? Math.log2(exposure / zero) : Number.NEGATIVE_INFINITY;
    return value >= DEEPEST ? value : null;
  };
  const others = new Set(lightsOn(plan.scene).map(({ name }) => name));
  others.delete(source.name);
  const curves = parts.flatMap(({ name, ink, of }) =>
    runsOf(places, (place) => stops(of(place.reading))).map(
      (through, i): ChartCurve => ({
        name,
        ink,
        through,
        dots: false,
        labelled: i === 0 && others.has(name),
      }),
    ),
  );
  const anchor = straightOf(source)(spot.reading) || ownOf(source)(spot.reading);
  if (!(anchor > 0)) return null;
  const pointAt = (away: number): number => Math.log2(anchor / zero) - pointFalloff(line.spot, away);
  const point = runsOf(places, ({ away }) => (pointAt(away) < DEEPEST ? null : pointAt(away))).map(
    (through): ChartCurve => ({ name: POINT, ink: "contour", through, dots: false, labelled: false }),
  );
  const heights = [...curves, ...point].flatMap(({ through }) => through.map(([, y]) => y));
  const least = Math.floor(Math.min(-1, ...heights));
  const most = Math.ceil(Math.max(1, ...heights));
  const behind = places[places.length - 1] as LinePlace;
  const found = parts.map(({ name, of }) => {
    const value = of(behind.reading);
    return `${name} ${value > 0 ? signed(Math.log2(value / zero)) : "nothing"}`;
  });
  const far = `${sayLength(line.end)} from ${source.name}`;
  const there = `${line.endName ?? "the end of the line"}, ${far}`;
  const ends = line.endName === null ? `${far}, where nothing stands` : `at ${there}`;
  return chartDrawing({
    title: `Fall-off of ${source.name}: ${plan.recipe.title}`,
    description: `Along the line from ${source.name} through ${line.spotName}, ${sayLength(line.spot)} off, in stops from the reading there. At ${there}: ${list(
      [...found, `by the ${POINT} ${signed(pointAt(line.end))}`],
    )}.`,
    notes: [
      `A flat receptor looks at ${source.name} all along the line through ${line.spotName}; 0 is its reading there.`,
      `The line ends ${ends}. People are left out: a meter on the line would stand in them.`,
      `Inverse square: the straight light of ${source.name} if it came from a point in its middle.`,
      ...(parts.some(({ name }) => name === BOUNCED)
        ? ["Bounced: what comes from the lights by way of the room and the set."]
        : []),
    ],
    across: {
      title: `from the middle of ${source.name}, m`,
      least: 0,
      most: line.end * 1.02,
      ticks: roundTicks(0, line.end * 1.02, 9),
    },
    up: {
      title: `stops over (+) or under (-) ${line.spotName}`,
      least,
      most,
      ticks: Array.from({ length: most - least + 1 }, (_, i): Tick => {
        const at = least + i;
        return { at, text: at > 0 ? `+${at}` : String(at) };
      }),
    },
    curves: [...curves, ...point],
    uprights: [
      { at: line.spot, text: line.spotName },
      ...(line.endName === null || line.end - line.spot < 0.03 ? [] : [{ at: line.end, text: line.endName }]),
    ],
    key: [...parts, { name: POINT, ink: "contour" }],
    size: [46, 30],
  });
}

const BOUNCED = "bounced";
const POINT = "inverse square";
const inksOfOthers: readonly Ink[] = ["second", "fourth"];

/** The curves of a walk: what is the same as another of them, or nothing, is left out. */
function partsOf({ scene }: Plan, source: Source, { spot, places }: LineWalk): readonly Part[] {
  const zero = spot.reading.exposure;
  const isThere = (of: Part["of"]): boolean =>
    places.some(({ reading }) => Math.log2(of(reading) / zero) > DEEPEST);
  const all = (reading: Reading): number => reading.exposure;
  const others = lightsOn(scene).filter(({ name }) => name !== source.name);
  const seen = others.filter((other) => isThere(ownOf(other)));
  const bounced = (reading: Reading): number => sumOf(reading.shares.map((share) => share.bounced));
  const own = ownOf(source);
  return [
    ...(seen.length === 0 ? [] : [{ name: "all together", ink: "frame" as const, of: all }]),
    ...(isThere(own) ? [{ name: source.name, ink: "curve" as const, of: own }] : []),
    ...seen.map(
      (other, i): Part => ({
        name: other.name,
        ink: inksOfOthers[i % inksOfOthers.length] as Ink,
        of: ownOf(other),
      }),
    ),
    ...(isThere(bounced)
      ? [
          ...(isThere(straightOf(source))
            ? [
                {
                  name: `${source.name}, straight`,
                  ink: "thin" as const,
                  of: straightOf(source),
                },
              ]
            : []),
          { name: BOUNCED, ink: "third" as const, of: bounced },
        ]
      : []),
  ];
}

/** What a reading has of one light, straight and bounced. */
const ownOf =
  ({ name }: Source) =>
  ({ shares }: Reading): number =>
    sumOf(shares.filter((share) => share.name === name).map((share) => share.direct + share.bounced));

/** What a reading has straight of one light. */
const straightOf =
  ({ name }: Source) =>
  ({ shares }: Reading): number =>
    sumOf(shares.filter((share) => share.name === name).map((share) => share.direct));

/** The places that have a value, those that follow one another together. */
function runsOf(
  places: readonly LinePlace[],
  of: (place: LinePlace) => number | null,
): readonly (readonly Place[])[] {
  const runs: Place[][] = [[]];
  for (const place of places) {
    const value = of(place);
    if (value === null) runs.push([]);
    else runs[runs.length - 1]?.push([place.away, value]);
  }
  return runs.filter((run) => run.length > 1).sort((a, b) => b.length - a.length);
}

const signed = (stops: number): string => (stops > 0.05 ? `+${fixed(stops, 1)}` : fixed(stops, 1));
