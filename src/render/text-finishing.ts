import type { Report } from "../report/schema/report.js";
import * as n from "./number.js";

type Finishing = NonNullable<Report["finishing"]>;

const where: Readonly<Record<Finishing["extensions"][number]["side"], string>> = {
  left: "on the left",
  right: "on the right",
  top: "at the top",
  bottom: "at the bottom",
  within: "between the pieces",
};

const place = ([left, top]: readonly [number, number]): string => `${n.perCent(left)}, ${n.perCent(top)}`;
const slope = (value: number): string => `${n.signedStops(value).replace(/ stop$/, "")} stop/m`;

function share(value: number): string {
  return value < 0.02 ? `${n.fixed(value * 100, 1)} %` : n.perCent(value);
}

function rampWords({
  at,
  surface,
  per_metre,
  error,
  strip,
  across,
}: Finishing["extensions"][number]["ramps"][number]) {
  const over =
    strip === null || across === null
      ? ""
      : `, ${n.signedStops(across)} over the ${n.metres(strip)} to the edge`;
  // What is less than it may be off has no direction.
  const light =
    Math.abs(per_metre) <= error
      ? `level within ${n.fixed(error, 1)} stop/m`
      : `${slope(per_metre)} outwards${over}`;
  return `${surface} at ${place(at)}: ${light}`;
}

function extensionWords({
  side,
  share: bare,
  depth,
  pixels,
  ramps,
  reason,
}: Finishing["extensions"][number]): string {
  const reach =
    side === "within" ? "" : `, up to ${pixels === null ? share(depth) : `${n.fixed(pixels, 0)} px`} in`;
  const light =
    ramps.length === 0
      ? `no light to go on with, ${reason ?? ""}`
      : `go on with ${ramps.map(rampWords).join("; ")}`;
  return `Add ${share(bare)} of the picture ${where[side]}${reach}: ${light}.`;
}

function lineWords({ kind, name, from, to, from_pixel: a, to_pixel: b }: Finishing["lines"][number]): string {
  const px = (at: readonly [number, number]): string => `${n.fixed(at[0], 0)}, ${n.fixed(at[1], 0)} px`;
  const [start, end] = a === null || b === null ? [place(from), place(to)] : [px(a), px(b)];
  return `${kind} of ${name} from ${start} to ${end}`;
}

/** What remains to be done with the picture, in sentences. */
export function finishingSentences(finishing: Finishing): readonly string[] {
  const { extensions, lines, white_balance: balance, contrast, lifts } = finishing;
  return [
    ...extensions.map(extensionWords),
    ...(lines.length === 0
      ? []
      : [`Lines to remove, where they are not meant: ${lines.map(lineWords).join("; ")}.`]),
    ...(balance === null
      ? []
      : [
          `White balance: ${n.signedMired(balance.shift)} mired${balance.set === null ? "" : `, set ${n.kelvin(balance.set)}`} (${balance.from}).`,
        ]),
    ...contrast.map(({ of, wanted, found, slope: times, pivot, from }) => {
      const round = pivot === null ? "" : ` round the skin (sRGB ${n.fixed(pivot, 0)})`;
      return `Contrast: ${of} are ${n.stops(found)}, ${n.stops(wanted)} wanted: slope ${n.fixed(times, 2)}${round} (${from}).`;
    }),
    ...lifts.map(({ of, stops, as_iso, from }) => {
      const noise = as_iso === null ? "" : `; noise there is that of ISO ${n.significant(as_iso, 2)}`;
      return `Lift the ${of} by ${n.stops(stops)}${noise} (${from}).`;
    }),
  ];
}
