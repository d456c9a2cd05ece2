import { exp2 } from "../../core/exp2.js";
import type { LightModel } from "../../model/types.js";
import { lampName } from "../../scene/lit/seen.js";
import { recycleTime } from "../frame/timing.js";
import type { Plan } from "../plan.js";
import { fixed, list } from "../say/number.js";
import { sayPercent } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Share of what a flash takes from the mains that gets into its store; common practice, no source. */
const CHARGING = 0.65;

/** What one light takes from the mains. */
export interface Draw {
  readonly name: string;
  /** On the average, W. */
  readonly watts: number;
  /** Whether all of it is known. */
  readonly known: boolean;
}

/**
 * What a light takes on the average: its modelling lamp, or itself where it burns, and what charging takes when it is
 * fired as fast as it fills up or as the burst asks: energy of a flash / time between two / 0.65.
 */
export function drawOf({ scene, recipe }: Plan, light: LightModel): Draw {
  const name = light.name ?? "light";
  const source = scene.sources.find((row) => lampName(row) === name && row.spillOf === undefined);
  const hot = light.modelling_lamp === "hot" ? threshold(recipe, "modelling_draw") : 0;
  const lamp = light.draws?.value ?? hot;
  if (source === undefined || source.below === null) return { name, watts: lamp, known: true };
  if (source.kind === "steady") {
    return { name, watts: lamp * exp2(-source.below), known: light.draws !== undefined };
  }
  const recycle = recycleTime(source);
  const energy = source.wattSeconds;
  if (recycle === null || energy === null) return { name, watts: lamp, known: false };
  const pace = Math.max(recycle, scene.camera?.interval ?? 0);
  return { name, watts: lamp + energy / pace / CHARGING, known: true };
}

const watts = (power: number): string => `${fixed(power, 0)} W`;
const total = (rows: readonly Draw[]): number => rows.reduce((sum, row) => sum + row.watts, 0);

/** The lights to be fed from elsewhere, the largest first, until the rest is no more than allowed. */
function elsewhere(rows: readonly Draw[], allowed: number): readonly Draw[] {
  const sorted = [...rows].sort((a, b) => b.watts - a.watts);
  const count = sorted.findIndex((_, i) => total(sorted.slice(i)) <= allowed);
  return sorted.slice(0, count < 0 ? sorted.length : count);
}

/** The lamps take more than the circuit bears. */
export const circuitLoad: Rule = {
  code: "circuit-load",
  thresholds: ["circuit_share", "circuit_ask", "modelling_draw"],
  safety: true,
  page: {
    when: "What the lamps take on the average is more than `circuit_share` (80 %) of the room's `circuit`; or the recipe does not say what the circuit bears, and they take more than `circuit_ask` (2000 W). A flash takes the energy of a flash / the time from one to the next / 0.65, by `full_power`, `recycles` and the burst's `interval`; to that comes its modelling lamp by `draws`, a hot one without it as `modelling_draw` (150 W). A steady lamp takes what it `draws`, at its setting. What starts at once takes more for a moment; what else hangs on the circuit is not known.",
    means: "A breaker trips and all goes dark, or a cable or a socket gets hot.",
    todo: "Share the lamps among circuits, turn modelling lamps down, shoot slower. Reels of cable are unrolled. Ask those who know the building, and leave sockets, breakers and the inside of a head to an electrician: a flash holds a deadly charge long after it is unplugged, so no head is ever opened.",
    source:
      "Energy over time, with a charging loss that is common practice, no source; so are the thresholds.",
  },
  check: (plan): readonly RuleFinding[] => {
    const { recipe } = plan;
    const rows = recipe.lights.map((light) => drawOf(plan, light));
    const sum = total(rows);
    const open = rows.filter(({ known }) => !known).map(({ name }) => name);
    const more =
      open.length === 0
        ? ""
        : ` What ${list(open)} ${open.length === 1 ? "takes" : "take"} is not known and not in it.`;
    const circuit = recipe.room?.circuit?.value;
    if (circuit === undefined) {
      if (!(sum > threshold(recipe, "circuit_ask") + 1e-9)) return [];
      return [
        {
          severity: "note",
          message: `The lamps take ${watts(sum)} on the average, and nothing says what the circuit bears.${more}`,
          remedy: "Ask what it bears, with all else that hangs on it, and say it as `circuit` of the room.",
          about: null,
        },
      ];
    }
    const allowed = circuit * threshold(recipe, "circuit_share");
    if (!(sum > allowed + 1e-9)) return [];
    const away = elsewhere(rows, allowed);
    const left = rows.filter((row) => !away.includes(row));
    const rest =
      left.length === 0
        ? "nothing is then left on this one"
        : `${watts(total(left))} are then left on this one`;
    return [
      {
        severity: "stop",
        message: `The lamps take ${watts(sum)} on the average, more than ${sayPercent(threshold(recipe, "circuit_share"))} of the ${watts(circuit)} that the circuit bears.${more}`,
        remedy: `Feed ${list(away.map(({ name }) => name))} from another circuit: ${rest}. Or turn modelling lamps down and shoot slower.`,
        about: null,
      },
    ];
  },
};
