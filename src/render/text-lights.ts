import { visibleLine } from "../diagnostics/print-visible.js";
import { sayBearing } from "../report/say/bearing.js";
import { sayOwner } from "../report/say/surfaces.js";
import type { ReportLight } from "../report/schema/report.js";
import * as n from "./number.js";
import { indented, labelled, type ViewOptions, wrapText } from "./report-lines.js";

/** Words and values of one light, in the order in which one asks for them. */
export function lightFacts(light: ReportLight): readonly (readonly [label: string, text: string])[] {
  const facts: [string, string][] = [];
  const size = light.angular_size;
  facts.push(["Opening", visibleLine(light.shape)]);
  facts.push(...placeFacts(light));
  if (light.elevation_at_feet !== null)
    facts.push(["From the floor", `${n.degrees(light.elevation_at_feet)} up, at the subject's place`]);
  if (size.equivalent !== null) {
    const suns = size.times_sun === null ? "" : `, ${n.significant(size.times_sun, 2)} times the sun`;
    const extent =
      size.least === null || size.greatest === null || n.degrees(size.least) === n.degrees(size.greatest)
        ? ""
        : ` (${n.fixed(size.least, 1)} by ${n.degrees(size.greatest)})`;
    facts.push(["Seen size", `${n.degrees(size.equivalent)}${extent}${suns}`]);
  }
  for (const edge of light.shadow_edges) facts.push(["Shadow edge", edgeWords(edge)]);
  if (light.shadow.length !== null) {
    const where = light.shadow.direction === null ? "" : `, ${falls(light.shadow.direction)}`;
    facts.push(["Shadow", `${n.metres(light.shadow.length)} long on the floor${where}`]);
  } else if (light.shadow.reason !== null) {
    facts.push(["Shadow", visibleLine(light.shadow.reason)]);
  }
  if (light.on) {
    facts.push(["Power", powerWords(light.power)]);
    facts.push([
      "Output",
      `${n.lumenSeconds(light.energy)}, +-${n.stops(light.uncertainty)}: ${visibleLine(light.known_by)}`,
    ]);
  } else {
    facts.push(["Power", "off"]);
  }
  facts.push(["Colour", n.kelvin(light.colour)]);
  if (light.head_to_shin !== null)
    facts.push([
      "Face to shin",
      `${n.stops(Math.abs(light.head_to_shin))} ${light.head_to_shin < 0 ? "more" : "less"} on the shin`,
    ]);
  if (light.reason !== null) facts.push(["Note", visibleLine(light.reason)]);
  return facts;
}

type Place = Pick<ReportLight, "distance" | "bearing" | "elevation" | "height">;

/** Where a light stands; of one that shines into or through something, where its head is and where what it lights. */
function placeFacts(light: ReportLight): readonly [label: string, text: string][] {
  const { patch, head } = light;
  const from = light.seen_from === "face" ? "the face" : "its aim";
  const where = ({ distance, bearing, elevation, height }: Place): string =>
    distance === null
      ? `${n.metres(light.floor_distance)} along the floor from the mark, ${n.metres(height)} high`
      : `${n.metres(distance)} from ${from}, ${sayBearing(bearing, n.degrees)} and ${n.degrees(elevation)} up from there, ${n.metres(height)} above the floor`;
  if (patch !== null && head !== null) {
    const { bearing, elevation } = light;
    const size = `${n.metres(patch.width)} x ${n.metres(patch.length)} of ${visibleLine(sayOwner(patch.surface))}`;
    return [
      ["Head", where(head)],
      ["Lit patch", `${size}, its middle ${where({ ...patch, bearing, elevation })}`],
    ];
  }
  return head === null
    ? [["Place", where(light)]]
    : [
        ["Place", where(light)],
        ["Head behind", where(head)],
      ];
}

/** The half-shade of an edge at the aim; both ways across an opening that is longer than it is wide. */
function edgeWords(edge: ReportLight["shadow_edges"][number]): string {
  const widths = (full: number | null, most: number | null): string =>
    `${n.millimetres(full)} wide, ${n.millimetres(most)} of it from 10 to 90 %`;
  const where = `${n.centimetres(edge.gap)} behind an edge at the aim`;
  const long = widths(edge.full, edge.ten_ninety);
  const short = `${n.millimetres(edge.full_least)} and ${n.millimetres(edge.ten_ninety_least)}`;
  const same = edge.full === null || edge.full_least === null || edge.full_least > 0.98 * edge.full;
  return same ? `${where}: ${long}` : `${where}: ${long}; across its narrow way ${short}`;
}

/** A setting, and what it does not say itself: stops below full, energy, energy of full power. */
function powerWords(power: ReportLight["power"]): string {
  const said = visibleLine(power.setting);
  const words = [said];
  if (power.below_full !== null && power.below_full >= 0.05 && !/\bstop/.test(said)) {
    words.push(`${n.stops(power.below_full)} below full`);
  }
  if (power.watt_seconds !== null && power.full_watt_seconds !== null) {
    const full = `of ${n.shortest(power.full_watt_seconds, 3)} Ws`;
    words.push(/\bWs$/.test(said) ? full : `${n.shortest(power.watt_seconds, 3)} Ws ${full}`);
  } else if (power.watt_seconds !== null && !/\bWs$/.test(said)) {
    words.push(`${n.shortest(power.watt_seconds, 3)} Ws`);
  }
  return words.join(", ");
}

/** Where a shadow falls, from above: 0 is straight away from the camera. */
function falls(direction: number): string {
  const size = Math.abs(direction);
  const way = direction > 0 ? "camera-right" : "camera-left";
  if (size < 0.05) return "straight back";
  if (size > 179.95) return "straight towards the camera";
  return size <= 90
    ? `back and ${n.degrees(size)} to ${way}`
    : `forward and ${n.degrees(180 - size)} to ${way}`;
}

/** A light's name with what it is for. */
export function lightTitle(light: ReportLight): string {
  const name = visibleLine(light.name);
  const role = light.role === null || light.role === light.name ? "" : ` as ${visibleLine(light.role)}`;
  return `${name}${role}, ${light.kind === "flash" ? "flash" : "steady light"}`;
}

/** One block of lines per light. */
export function lightBlock(light: ReportLight, view: ViewOptions): readonly string[] {
  const narrow = view.width < 60;
  const lines = wrapText(lightTitle(light), view.width - 2).map((line) => `  ${view.paint("strong", line)}`);
  for (const [label, text] of lightFacts(light)) {
    if (narrow) lines.push(...indented(`${label}: ${text}`, "    ", view.width));
    else lines.push(...labelled(label, text, "    ", 15, view.width));
  }
  return lines;
}
