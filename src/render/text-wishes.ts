import { visibleLine } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import { fixed, kelvin, significant } from "./number.js";
import { indented, labelled, type ViewOptions } from "./report-lines.js";

type Intent = NonNullable<Report["intent"]>;
type Criterion = Intent["criteria"][number];

/** What each point of a wish is called. */
const names: readonly (readonly [name: string, words: string])[] = [
  ["angular_size", "size of the light from the face"],
  ["shadow_depth", "depth of its shadow on set or floor"],
  ["shadows", "shadows"],
  ["elevation", "elevation at the face"],
  ["fan", "spread of shadows across the set"],
  ["head_to_shin", "fall-off from face to shin"],
  ["warmth", "warmth at the camera's white balance"],
  ["shade_cooler", "shade cooler than the lit side by"],
  ["top_over_front", "top of the head over the front of the face"],
  ["top_over_sides", "top of the head over the darker side"],
  ["lit_to_shadow", "lit over shaded cheek"],
  ["straight_shadow", "shadow of what reaches the face straight"],
  ["fall_off", "fall-off behind the face"],
  ["background", "background"],
  ["pattern", "pattern on the face"],
  ["side", "side of the face"],
];

/** A point of a wish in words. */
export function criterionName({ wish, name }: Criterion): string {
  if (wish === "edges" && name === "angular_size") return "size of the light for its edges";
  return names.find((row) => row[0] === name)?.[1] ?? name;
}

/** What was found and what is wanted, in words. */
export function criterionFound({ found, wanted, reason }: Criterion): string {
  return found === null
    ? `wanted ${wanted}; not known, because ${reason ?? ""}`
    : `found ${found}, wanted ${wanted}`;
}

/** The plane on which the light of each kind is given. */
const planeWords = {
  sunlight: "a plane turned to it",
  overcast: "an upright plane",
  window: "a plane at the face turned to it",
} as const;

/** The natural light in sentences: `sunlight(elevation: 30 deg): 0.53 deg wide, ...`, then where the numbers come from. */
export function naturalSentences({ passes_for }: Intent): readonly string[] {
  if (passes_for === null) return [];
  const {
    kind,
    text,
    elevation,
    azimuth,
    angular_size,
    shadow_depth,
    colour,
    mixed_colour,
    level_illuminance,
    illuminance,
    output,
    shown,
    fall_off,
    planes,
  } = passes_for;
  const say = (value: number | null, words: (text: string) => string, decimals = 1): readonly string[] =>
    value === null ? [] : [words(fixed(value, decimals))];
  const parts = [
    ...say(elevation, (n) => `${n} deg above the horizon`),
    ...say(azimuth, (n) => `${n} deg from north over east`, 0),
    ...say(angular_size, (n) => `${n} deg wide`, angular_size !== null && angular_size < 1 ? 2 : 0),
    ...say(shadow_depth, (n) => `shadows on level ground ${n} stop deep`),
    ...(colour === null ? [] : [`${kelvin(colour)} straight from the sun`]),
    ...(mixed_colour === null ? [] : [`${kelvin(mixed_colour)} with its sky on a plane turned to it`]),
    ...(level_illuminance === null ? [] : [`${significant(level_illuminance, 2)} lx on open level ground`]),
    ...(illuminance === null ? [] : [`${significant(illuminance, 2)} lx on ${planeWords[kind]}`]),
    ...(shown === null ? [] : [`a disc there would read ${shown}`]),
    ...say(fall_off, (n) => `${n} stop lost over the next metre behind the face`),
    ...planes
      .filter(({ stops }) => stops !== 0)
      .map(({ plane, stops }) => `${plane} ${fixed(-stops, 1)} stop under the top`),
    ...(output === null
      ? []
      : [`a steady light of its size with \`output: ${significant(output, 3)} lm\` gives as much`]),
  ];
  return [`${text}: ${parts.join(", ")}.`, ...passes_for.basis];
}

/** The wishes as lines of the text. */
export function wishLines(intent: Intent, view: ViewOptions): readonly string[] {
  const lines = naturalSentences(intent).flatMap((text) => indented(visibleLine(text), "  ", view.width));
  if (lines.length > 0 && intent.criteria.length > 0) lines.push("");
  const say = (label: string, text: string): readonly string[] =>
    labelled(label, visibleLine(text), "  ", 11, view.width);
  for (const row of intent.criteria) {
    lines.push(...say(row.verdict, `${criterionName(row)}: ${criterionFound(row)}`));
    if (row.remedy !== null) lines.push(...say("", row.remedy));
  }
  return lines;
}
