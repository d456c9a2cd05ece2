import { addScaled } from "../../math/vector.js";
import { discShare } from "../../physics/edge-profile.js";
import { edgeLightShare, edgeSection } from "../../physics/edge-share.js";
import { sunAngularDiameter } from "../../physics/sun-size.js";
import type { Source } from "../../scene/types.js";
import { edgeAtAim, widestAcross } from "../light/shadow-edge.js";
import { lightsOn, type Plan } from "../plan.js";
import { list } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { type ChartCurve, chartDrawing, roundTicks } from "./chart.js";
import type { Drawing, Place } from "./drawing.js";

/** How far behind the edge the surface stands, m, where nothing else is asked for. */
export const usualGap = 0.5;
/** The longest gap, m. */
const LONGEST = 50;

/** A gap as it is written, `25cm` or `0.5 m`, in m; null for what is no length up to 50 m. */
export function gapOf(text: string): number | null {
  const found = /^(\d{1,5}(?:\.\d{1,6})?) ?(mm|cm|m)$/.exec(text);
  if (found === null) return null;
  const gap = Number(found[1]) * (found[2] === "mm" ? 0.001 : found[2] === "cm" ? 0.01 : 1);
  return gap > 0 && gap <= LONGEST ? gap : null;
}
/** Places of a curve. */
const PLACES = 96;
/** The sun's angular diameter at its mean distance, rad. */
const sun = sunAngularDiameter(1) as number;

interface Profile {
  readonly name: string;
  /** Full width, m. */
  readonly width: number;
  /** mm from the middle of the edge, and the share of the light there. */
  readonly through: readonly Place[];
}

/**
 * The light across the edge of a shadow, for every light that is on or for one of them: an edge at the light's aim, a
 * surface a gap behind it and square to the light; the sun's edge beside. Null where no light has such an edge.
 *
 * @param only - The name of a light; all of them where it is left out.
 */
export function edgeDrawing(plan: Plan, gap: number = usualGap, only?: string): Drawing | null {
  const lights = lightsOn(plan.scene).filter(({ name }) => only === undefined || name === only);
  const profiles = lights.flatMap((source) => {
    const profile = profileOf(source, gap);
    return profile === null ? [] : [profile];
  });
  if (profiles.length === 0) return null;
  const all = [...profiles, sunProfile(gap)];
  const half = 1000 * Math.max(...all.map(({ width }) => width / 2)) * 1.15;
  const curves = all.map(
    ({ name, through }, i): ChartCurve => ({
      name,
      ink: i === 0 ? "curve" : i === all.length - 1 ? "contour" : "second",
      through: [[-half, 0], ...through, [half, 1]],
      dots: false,
    }),
  );
  const widths = all.map(({ name, width }) => `${name} ${sayLength(width)}`);
  return chartDrawing({
    title: `Edge of a shadow: ${plan.recipe.title}`,
    description: `Light across the edge of a shadow ${sayLength(gap)} behind what throws it; full width of the soft edge: ${list(widths)}.`,
    notes: [
      `An edge at the aim, a surface ${sayLength(gap)} behind it and square to the light, across the opening's widest measure.`,
      `Full width: ${list(widths)}.`,
    ],
    across: {
      title: "from the middle of the edge, mm",
      least: -half,
      most: half,
      ticks: roundTicks(-half, half, 9),
    },
    up: { title: "share of the light", least: 0, most: 1, ticks: roundTicks(0, 1, 5) },
    curves,
    size: [46, 24],
  });
}

function profileOf(source: Source, gap: number): Profile | null {
  const edge = edgeAtAim(source, gap, widestAcross(source));
  const section = edge === null ? undefined : edgeSection(edge);
  if (edge === null || section === undefined) return null;
  const { middle, across, dark, light } = section;
  const through: Place[] = [];
  for (let i = 0; i <= PLACES; i++) {
    const at = dark + ((light - dark) * i) / PLACES;
    const share = i === 0 ? 0 : i === PLACES ? 1 : edgeLightShare(edge, addScaled(middle, across, at));
    if (share !== undefined) through.push([1000 * at, share]);
  }
  return { name: source.name, width: light - dark, through };
}

function sunProfile(gap: number): Profile {
  const width = 2 * gap * Math.tan(sun / 2);
  const through = Array.from({ length: PLACES + 1 }, (_, i): Place => {
    const x = (2 * i) / PLACES - 1;
    return [500 * width * x, discShare(x)];
  });
  return { name: "the sun in the sky", width, through };
}
