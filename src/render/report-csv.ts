import type { ReportFace } from "../report/schema/face.js";
import type { Report, ReportLight, ReportShadow, ReportStation } from "../report/schema/report.js";
import type { ThrownShadow } from "../report/schema/thrown.js";
import { type CsvCell, renderCsv } from "./csv.js";
import { shortest } from "./number.js";
import { nearestWords, titleOf } from "./text-verdicts.js";

type Row = readonly [part: string, name: string, what: string, value: CsvCell, unit: string, note: string];

const lightRows = (light: ReportLight): readonly Row[] => {
  const row = (what: string, value: CsvCell, unit: string): Row => [
    "light",
    light.name,
    what,
    value,
    unit,
    "",
  ];
  const size = light.angular_size;
  return [
    row("role", light.role, ""),
    row("kind", light.kind, ""),
    row("shape", light.shape, ""),
    row("on", light.on ? "yes" : "no", ""),
    row("x", light.position[0], "m"),
    row("y", light.position[1], "m"),
    row("z", light.position[2], "m"),
    row("distance", light.distance, "m"),
    row("floor_distance", light.floor_distance, "m"),
    row("height", light.height, "m"),
    row("bearing", light.bearing, "deg"),
    row("elevation", light.elevation, "deg"),
    row("elevation_at_feet", light.elevation_at_feet, "deg"),
    row("angular_size", size.equivalent, "deg"),
    row("angular_least", size.least, "deg"),
    row("angular_greatest", size.greatest, "deg"),
    row("angular_diagonal", size.diagonal, "deg"),
    row("times_sun", size.times_sun, "1"),
    row("solid_angle", light.solid_angle, "sr"),
    row("projected_solid_angle", light.projected_solid_angle, "sr"),
    row("energy", light.energy, "lm s"),
    row("energy_at_full", light.energy_at_full, "lm s"),
    row("axial_intensity", light.axial_intensity, "cd s"),
    row("uncertainty", light.uncertainty, "stop"),
    row("known_by", light.known_by, ""),
    row("power", light.power.setting, ""),
    row("below_full", light.power.below_full, "stop"),
    row("watt_seconds", light.power.watt_seconds, "Ws"),
    row("full_watt_seconds", light.power.full_watt_seconds, "Ws"),
    row("colour", light.colour, "K"),
    ...light.shadow_edges.flatMap((edge): readonly Row[] => [
      ["light", light.name, "shadow_edge", edge.full, "mm", `gap ${shortest(edge.gap, 4)} m`],
      ["light", light.name, "shadow_edge_10_90", edge.ten_ninety, "mm", `gap ${shortest(edge.gap, 4)} m`],
      ["light", light.name, "shadow_edge_least", edge.full_least, "mm", `gap ${shortest(edge.gap, 4)} m`],
      [
        "light",
        light.name,
        "shadow_edge_least_10_90",
        edge.ten_ninety_least,
        "mm",
        `gap ${shortest(edge.gap, 4)} m`,
      ],
    ]),
    ["light", light.name, "shadow_length", light.shadow.length, "m", light.shadow.reason ?? ""],
    row("shadow_direction", light.shadow.direction, "deg"),
    row("head_to_shin", light.head_to_shin, "stop"),
  ];
};

const stationRows = (station: ReportStation): readonly Row[] => {
  const name = `${station.name} ${station.receptor} ${station.looks}`;
  const row = (what: string, value: CsvCell, unit: string, note = ""): Row => [
    "station",
    name,
    what,
    value,
    unit,
    note,
  ];
  return [
    row("x", station.at[0], "m"),
    row("y", station.at[1], "m"),
    row("z", station.at[2], "m"),
    row("exposure", station.exposure.total, "lx s"),
    row("exposure_direct", station.exposure.direct, "lx s"),
    row("exposure_bounced", station.exposure.bounced, "lx s"),
    row("exposure_error", station.exposure.error, "stop"),
    ...station.exposure.lights.map((light) => row("exposure_direct_by", light.direct, "lx s", light.name)),
    ...station.exposure.lights.map((light) => row("exposure_bounced_by", light.bounced, "lx s", light.name)),
    row("from_key", station.from_key, "stop"),
    row("reflectance", station.tone?.reflectance ?? null, "1"),
    row("lightness", station.tone?.lightness ?? null, "L*"),
    row("srgb", station.tone?.srgb ?? null, "1"),
    ...(station.contributors ?? []).map((item) =>
      row("bounced_by_surface", item.stops, "stop", item.surface),
    ),
    row("ambient", station.ambient, "lx s"),
    row("ambient_adds", station.ambient_adds, "stop"),
    row("f_number", station.f_number, "1", station.reason ?? ""),
    row("interval_under", station.interval?.[0] ?? null, "stop"),
    row("interval_over", station.interval?.[1] ?? null, "stop"),
    row("stops_from_aperture", station.stops_from_aperture, "stop"),
    row("ev100", station.ev100, "EV"),
  ];
};

const shadowRows = (shadow: ReportShadow): readonly Row[] => {
  const row = (what: string, value: CsvCell, unit: string, note = ""): Row => [
    "shadow",
    `${shadow.surface} of ${shadow.light}`,
    what,
    value,
    unit,
    note,
  ];
  return [
    row("in_light", shadow.in_light, "stop"),
    row("in_shadow", shadow.in_shadow, "stop"),
    row("depth", shadow.depth, "stop", shadow.reason ?? ""),
    row("depth_error", shadow.error, "stop"),
    row("gap", shadow.gap, "m"),
    row("edge", shadow.edge, "mm"),
    row("edge_10_90", shadow.edge_10_90, "mm"),
  ];
};

const thrownRows = (shadow: ThrownShadow): readonly Row[] => {
  const name = `${shadow.of} by ${shadow.light} on ${shadow.surface}`;
  const row = (what: string, value: CsvCell, unit: string, note = ""): Row => [
    "thrown",
    name,
    what,
    value,
    unit,
    note,
  ];
  const { edge } = shadow;
  return [
    row("area", shadow.area, "m2"),
    row("in_frame", shadow.in_frame, "1"),
    row("reach", shadow.reach, "m"),
    row("low", shadow.low, "m"),
    row("high", shadow.high, "m"),
    row("growth", shadow.growth, "1"),
    row("depth", shadow.depth, "stop"),
    row("goes_on_to", shadow.crosses.join(", "), ""),
    row("edge_least", edge?.full.least ?? null, "mm"),
    row("edge", edge?.full.middle ?? null, "mm"),
    row("edge_greatest", edge?.full.greatest ?? null, "mm"),
    row("edge_10_90", edge?.ten_ninety?.middle ?? null, "mm"),
    row("edge_share", edge?.share ?? null, "1", "of the frame's width"),
    row("edge_pixels", edge?.pixels ?? null, "1"),
  ];
};

const faceRows = (face: ReportFace): readonly Row[] => {
  const name = face.subject === "" ? "face" : face.subject;
  return [
    ["face", name, "pattern", face.pattern, "", face.nearest === null ? "" : `nearest ${face.nearest.name}`],
    ["face", name, "side", face.side, "", face.side_reason ?? ""],
    ...face.lights.flatMap((light): readonly Row[] => [
      ["face", name, "azimuth", light.azimuth, "deg", light.light],
      ["face", name, "elevation", light.elevation, "deg", light.light],
      ["face", name, "nose_shadow_side", light.nose_shadow?.side ?? null, "mm", light.light],
      ["face", name, "nose_shadow_drop", light.nose_shadow?.drop ?? null, "mm", light.light],
      ["face", name, "catchlight_share", light.catchlight?.size ?? null, "1", light.light],
      ["face", name, "catchlight_offset", light.catchlight?.offset ?? null, "1", light.light],
    ]),
  ];
};

function finishingRows(finishing: NonNullable<Report["finishing"]>): readonly Row[] {
  const { extensions, lines, white_balance: balance, contrast, lifts } = finishing;
  return [
    ...extensions.flatMap((item): readonly Row[] => [
      ["afterwards", item.side, "bare", item.share, "1", item.reason ?? item.from],
      ...item.ramps.map(
        (row): Row => [
          "afterwards",
          `${item.side} ${row.surface}`,
          "per_metre",
          row.per_metre,
          "stop/m",
          item.from,
        ],
      ),
    ]),
    ...lines.map((item): Row => ["afterwards", item.name, item.kind, null, "", item.source]),
    ...(balance === null
      ? []
      : [["afterwards", "white balance", "shift", balance.shift, "mired", balance.from] satisfies Row]),
    ...contrast.map((item): Row => ["afterwards", item.of, "slope", item.slope, "1", item.from]),
    ...lifts.map((item): Row => ["afterwards", item.of, "lift", item.stops, "stop", item.from]),
  ];
}

/** Every number of a report as one long table: part, name, quantity, value, unit, note. For spreadsheets and scripts. */
export function renderReportCsv(report: Report): string {
  const rows: Row[] = [
    ["report", titleOf(report), "headline", report.headline, "", ""],
    ...report.lights.flatMap(lightRows),
    ...report.stations.flatMap(stationRows),
    ...report.shadows.flatMap(shadowRows),
    ...report.gloss.map(
      (item): Row => ["gloss", item.surface, item.light, item.share, "1", item.reason ?? ""],
    ),
    ...report.thrown.shadows.flatMap(thrownRows),
    ...report.faces.flatMap(faceRows),
    ...(report.colour?.stations ?? []).flatMap((item): readonly Row[] => {
      const name = `${item.name} ${item.receptor} ${item.looks}`;
      return [
        ["colour", name, "colour", item.colour, "K", ""],
        ["colour", name, "duv", item.duv, "1", ""],
        ["colour", name, "from_balance", item.from_balance, "mired", ""],
      ];
    }),
    ...(report.intent?.criteria ?? []).map(
      (item): Row => [
        "wish",
        item.name,
        item.verdict,
        item.value,
        item.unit,
        [`wanted ${item.wanted}`, item.reason, item.remedy].filter((text) => text !== null).join("; "),
      ],
    ),
    ...(report.finishing === null ? [] : finishingRows(report.finishing)),
    ...report.results.map(
      (item): Row => [
        "result",
        item.text,
        item.name,
        item.value,
        item.unit,
        item.reason ?? item.shown_interval ?? "",
      ],
    ),
    ...report.expectations.map(
      (item): Row => [
        "expectation",
        item.text,
        item.outcome,
        item.value,
        item.unit ?? "",
        [item.reason, nearestWords(item)].filter((text) => text !== null).join("; "),
      ],
    ),
    ...report.warnings.map(
      (item): Row => ["warning", item.about ?? "", item.code, item.message, item.severity, item.remedy],
    ),
    ...report.silenced.map(
      (item): Row => ["silenced", "", item.code, item.warnings.length, "", item.because],
    ),
    ...report.assumed.map(
      (item): Row => ["assumed", item.what, "value", item.value, "", item.matters ? "matters" : ""],
    ),
    ...report.not_claimed.map((text): Row => ["not claimed", "", "", text, "", ""]),
  ];
  return renderCsv([["part", "name", "quantity", "value", "unit", "note"], ...rows]);
}
