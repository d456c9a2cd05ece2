import { daysOfDayAndTime } from "../../core/utc.js";
import { printNode } from "../../format/print-node.js";
import { size } from "../../model/make/sizes.js";
import { overcast, overcastSky, sunlight, window } from "../../model/make/surroundings.js";
import type { NaturalLightValue, OvercastValue, SunValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Angle, Illuminance, Length } from "../../units/quantity.js";
import { naturalLights } from "../../vocabulary/natural-lights.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import type { Context } from "../context.js";
import { readBy } from "../quantities.js";
import { bare } from "../words.js";
import { argumentTrouble, asCall, type SortedArguments, sortArguments } from "./calls.js";
import { readRowMeasure } from "./measure.js";
import { refuseArguments, refuseCall, refuseKind } from "./want.js";

const PLACE_AND_TIME = 'at: [north(51.5 deg), west(0.1 deg)], on: "2026-06-21", time: "10:00 UTC"';

/** A word of a natural light with its arguments. */
interface NaturalCall {
  readonly value: Value;
  readonly call: NonNullable<ReturnType<typeof asCall>>;
  readonly sorted: SortedArguments;
}

/** The call of a natural light with arguments that it may have. Null after a finding. */
function naturalCall(ctx: Context, row: PropertyRow, value: Value): NaturalCall | null {
  const call = asCall(value);
  const known = naturalLights.find((entry) => entry.name === call?.word);
  if (call === null || known === undefined) return refuseCall(ctx, row, value);
  const sorted = sortArguments(call.args);
  const trouble = argumentTrouble(sorted, known.args, 0);
  return trouble === null ? { value, call, sorted } : refuseArguments(ctx, call.call, trouble, row.example);
}

/** `sunlight(elevation: 30 deg)`, `overcast`, `window(size: 90 x 120 cm, distance: 1.6 m)` */
export function readNaturalLight(ctx: Context, row: PropertyRow, value: Value): NaturalLightValue | null {
  const found = naturalCall(ctx, row, value);
  if (found === null) return null;
  if (found.call.word === "overcast") return readOvercast(ctx, row, found);
  return found.call.word === "sunlight" ? readSun(ctx, row, found) : readWindow(ctx, row, found);
}

/** The sun by `elevation`, or by `at`, `on` and `time`, as `sunlight` and `overcast` take it. */
function readSun(ctx: Context, row: PropertyRow, found: NaturalCall): SunValue | null {
  const elevation = found.sorted.named.get("elevation");
  if (elevation === undefined || found.sorted.named.size !== 1) return readSunAt(ctx, row, found);
  const want: PropertyRow = { ...row, name: "elevation", example: "30 deg", range: [0, 90] };
  const angle = readRowMeasure(ctx, want, "deg", elevation.value) as Angle | null;
  return angle === null ? null : sunlight(angle);
}

/** `overcast`, `overcast(elevation: 40 deg)`, `overcast(metered: 9000 lx)` */
function readOvercast(ctx: Context, row: PropertyRow, found: NaturalCall): OvercastValue | null {
  const { named } = found.sorted;
  if (named.size === 0) return overcast;
  const metered = named.get("metered");
  if (metered === undefined) {
    const sun = readSun(ctx, row, found);
    return sun === null ? null : overcastSky(sun);
  }
  if (named.size !== 1) {
    return refuseArguments(
      ctx,
      found.call.call,
      "takes the sun behind its clouds or what a meter found on open level ground, not both",
      "overcast(metered: 9000 lx)",
    );
  }
  const want: PropertyRow = { ...row, name: "metered", example: "9000 lx", range: [1, 200_000] };
  const read = readRowMeasure(ctx, want, "lx", metered.value) as Illuminance | null;
  return read === null ? null : overcastSky(read);
}

/** `window(size: 90 x 120 cm, distance: 1.6 m)`, with `sky: overcast(elevation: 40 deg)` before it. */
function readWindow(ctx: Context, row: PropertyRow, { call, sorted }: NaturalCall): NaturalLightValue | null {
  const given = sorted.named.get("size");
  const distance = sorted.named.get("distance");
  const inner = given === undefined ? null : bare(given.value);
  if (inner === null || inner.kind !== "quantity" || distance === undefined) {
    return refuseArguments(
      ctx,
      call.call,
      "takes its size and its distance",
      "window(size: 90 x 120 cm, distance: 1.6 m)",
    );
  }
  const want = {
    count: 2,
    base: "m",
    name: "size",
    words: "width x height",
    example: "90 x 120 cm",
  } as const;
  const [width, height] = (readBy(ctx, inner, want) ?? []) as readonly Length[];
  const metres = readRowMeasure(
    ctx,
    { ...row, name: "distance", example: "1.6 m", range: [0.05, 100] },
    "m",
    distance.value,
  );
  const before = sorted.named.get("sky")?.value;
  const sky = before === undefined ? undefined : readSky(ctx, row, before);
  if (width === undefined || height === undefined || metres === null || sky === null) return null;
  return window(size(width, height), metres as Length, sky);
}

/** The sky before a window: an overcast one. */
function readSky(ctx: Context, row: PropertyRow, value: Value): OvercastValue | null {
  const want: PropertyRow = { ...row, name: "sky", example: "overcast(elevation: 40 deg)" };
  if (asCall(value)?.word !== "overcast") return refuseKind(ctx, want, value, "an overcast sky");
  const found = naturalCall(ctx, want, value);
  return found === null ? null : readOvercast(ctx, want, found);
}

/** `sunlight(at: [north(51.5 deg), west(0.1 deg)], on: "2026-06-21", time: "10:00 UTC")` */
function readSunAt(ctx: Context, row: PropertyRow, { value, call, sorted }: NaturalCall): SunValue | null {
  const shown = `${call.word}(${PLACE_AND_TIME})`;
  const at = sorted.named.get("at")?.value;
  const on = sorted.named.get("on")?.value;
  const time = sorted.named.get("time")?.value;
  if (
    at === undefined ||
    at.kind !== "list" ||
    on?.kind !== "text" ||
    time?.kind !== "text" ||
    sorted.named.size !== 3
  ) {
    return refuseArguments(
      ctx,
      call.call,
      "takes an elevation, or a place with a date and a time of day",
      shown,
    );
  }
  const [first, second] = at.items;
  const latitude = first === undefined ? null : readCoordinate(ctx, row, first, ["north", "south"], 90);
  const longitude = second === undefined ? null : readCoordinate(ctx, row, second, ["east", "west"], 180);
  if (latitude === null || longitude === null || at.items.length !== 2) {
    return refuseArguments(ctx, call.call, "takes a place as latitude and longitude", shown);
  }
  if (daysOfDayAndTime(on.value, "00:00 UTC") === undefined) {
    return refuseArguments(ctx, call.call, 'takes a day like "2026-06-21"', shown);
  }
  if (daysOfDayAndTime(on.value, time.value) === undefined) {
    const trouble = 'takes a time of day with its offset from UTC, like "10:00 UTC" or "12:00 +02:00"';
    return refuseArguments(ctx, call.call, trouble, shown);
  }
  const written = printNode(value).replace(/^overcast/, "sunlight");
  return { kind: "sun_at", latitude, longitude, on: on.value, time: time.value, written };
}

function readCoordinate(
  ctx: Context,
  row: PropertyRow,
  value: Value,
  words: readonly [plus: string, minus: string],
  most: number,
): Angle | null {
  const call = asCall(value);
  const given = call?.args[0]?.value;
  if (call === null || given === undefined || !words.includes(call.word)) return null;
  const read = readRowMeasure(
    ctx,
    { ...row, name: call.word, example: "51.5 deg", range: [0, most] },
    "deg",
    given,
  );
  if (read === null) return null;
  return { ...(read as Angle), value: call.word === words[1] ? -read.value : read.value };
}
