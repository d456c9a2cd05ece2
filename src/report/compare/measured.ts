import { sayBearing } from "../say/bearing.js";
import { sayAngle, sayEdge, sayFNumber, sayLength } from "../say/quantity.js";
import type { Report, ReportLight, ReportStation } from "../schema/report.js";

/** How two values of one kind are held against each other. */
export type Scale =
  /** By their difference, in stops: readings, contrasts, levels. */
  | "stops"
  /** By their difference, in degrees: directions. */
  | "degrees"
  /** By their share of the first, in per cent: sizes, tapes, widths. */
  | "share";

/** One value of a report that can be compared. */
export interface Measured {
  /** What it is, the same words in every report: `key: angular size`. */
  readonly what: string;
  readonly scale: Scale;
  /** On its scale: stops, deg, m or mm. Null where it cannot be had. */
  readonly value: number | null;
  readonly unit: string;
  /** In words; null without a value. */
  readonly shown: string | null;
}

/** What a report measures, in the order in which people ask: lights, readings, results. */
export function measuredIn(report: Report): readonly Measured[] {
  return [
    ...report.lights.filter((light) => light.on).flatMap(ofLight),
    ...report.stations.flatMap(ofStation),
    ...report.results.flatMap((result): readonly Measured[] => {
      const scale = scaleOf(result.unit);
      if (scale === null) return [];
      const shown = result.value === null ? null : result.shown;
      return [{ what: result.text, scale, value: result.value, unit: result.unit, shown }];
    }),
  ];
}

function scaleOf(unit: string): Scale | null {
  if (unit === "stop") return "stops";
  if (unit === "deg") return "degrees";
  return unit === "m" || unit === "mm" ? "share" : null;
}

/** The gap whose edge is compared, m; those of other gaps change by the same share. */
const GAP = 0.1;

function ofLight(light: ReportLight): readonly Measured[] {
  const row = (
    what: string,
    scale: Scale,
    unit: string,
    value: number | null,
    say: (value: number) => string,
  ): Measured => ({
    what: `${light.name}: ${what}`,
    scale,
    value,
    unit,
    shown: value === null ? null : say(value),
  });
  const size = light.angular_size;
  return [
    row("distance from the face", "share", "m", light.distance, sayLength),
    row("elevation", "degrees", "deg", light.elevation, sayAngle),
    row("bearing", "degrees", "deg", light.bearing, (degrees) => sayBearing(degrees, sayAngle)),
    row("angular size", "share", "deg", size.equivalent, sayAngle),
    ...light.shadow_edges
      .filter(({ gap }) => gap === GAP)
      .map((edge) =>
        row(`shadow edge, ${sayLength(edge.gap)} behind`, "share", "mm", edge.full, (mm) =>
          sayEdge(mm / 1000),
        ),
      ),
    row("shadow on the floor", "share", "m", light.shadow.length, sayLength),
    row("output", "stops", "stop", light.energy > 0 ? Math.log2(light.energy) : null, () =>
      light.power.below_full === null ? "off" : light.power.setting,
    ),
  ];
}

function ofStation(station: ReportStation): readonly Measured[] {
  const { total } = station.exposure;
  const meter = station.receptor === "disc" ? "" : " (dome)";
  return [
    {
      what: `${station.name}${station.looks === "along its surface" ? "" : `, ${station.looks}`}${meter}`,
      scale: "stops",
      value: total > 0 ? Math.log2(total) : null,
      unit: "stop",
      shown:
        station.f_number === null
          ? total > 0
            ? `${total.toPrecision(3)} lx s`
            : null
          : sayFNumber(station.f_number),
    },
  ];
}
