import { discTowards } from "../../scene/held-meter.js";
import type { SceneSubject, Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { elevationOf } from "../geometry/directions.js";
import { type Hidden, hiddenBySet, hiddenFromMeter } from "../light/set-hides.js";
import { lightsOn, type Plan } from "../plan.js";
import { sayAngle, sayLength, sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { clearHeight } from "./clear-height.js";
import { fitsRoom } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** What the set hides of a light from the skin of a face, and from a meter that is held before it and looks at the light. */
interface Shade {
  readonly skin: Hidden | null;
  readonly meter: Hidden | null;
}

function shadeOf({ scene }: Plan, source: Source, { face }: SceneSubject): Shade {
  const meter = discTowards(scene.stations, face, source.centre);
  return {
    skin: hiddenBySet(scene, source, face),
    meter: meter === null ? null : hiddenFromMeter(scene, source, meter),
  };
}

/** Stops of straight light that are lost; without end where all of it is. */
function stopsLost(hidden: Hidden | null): number {
  const share = hidden?.share ?? 0;
  return share > 1 - 1e-6 ? Number.POSITIVE_INFINITY : -Math.log2(1 - share);
}

function remedyFor(plan: Plan, source: Source, subject: SceneSubject, { piece }: Hidden): string {
  const name = ownerOf(piece.name);
  if (piece.kind === "scrim") {
    return `To shine through it, say \`through: ${name}\` in ${source.name}; else move one of the two.`;
  }
  const height = clearHeight(source, (raised) => {
    const { skin, meter } = shadeOf(plan, raised, subject);
    return Math.max(skin?.share ?? 0, meter?.share ?? 0);
  });
  const raised = height === null ? null : atHeight(source, height);
  if (raised === null || height === null || !fitsRoom(plan.scene, raised)) {
    return `Move ${source.name} or ${name} to the side.`;
  }
  return `Raise ${source.name} to ${sayLength(height)}, where it clears the edge at ${sayAngle(elevationOf(subject.face, raised.centre))} to the face; or move one of the two.`;
}

function messageFor(source: Source, face: string, hidden: Hidden, more: string): string {
  const name = ownerOf(hidden.piece.name);
  const loss = stopsLost(hidden);
  return Number.isFinite(loss)
    ? `${name} hides ${sayPercent(hidden.share)} of ${source.name} from ${face}, which loses ${sayStops(loss)} of it${more}.`
    : `${name} stands between ${source.name} and ${face}: none of its straight light arrives${more}.`;
}

/** What is said of the meter behind a sentence on the skin, where it gets clearly more or less. */
function meterWords(skin: number, meter: number, least: number): string {
  if (skin === meter || Math.abs(skin - meter) <= least + 1e-9) return "";
  const loses = Number.isFinite(meter) ? `loses ${sayStops(meter)}` : "gets none";
  return `; a meter held before the face ${loses}`;
}

function lossOf(plan: Plan, source: Source, subject: SceneSubject): RuleFinding[] {
  const { skin, meter } = shadeOf(plan, source, subject);
  const [least, stop] = [threshold(plan.recipe, "panel_shade"), threshold(plan.recipe, "panel_shade_stop")];
  const [onSkin, onMeter] = [stopsLost(skin), stopsLost(meter)];
  const face = subject.name === "" ? "the face" : `${subject.name}'s face`;
  const about = source.name;
  if (skin !== null && onSkin > least + 1e-9) {
    return [
      {
        severity: onSkin > stop + 1e-9 ? "stop" : "check",
        message: messageFor(source, face, skin, meterWords(onSkin, onMeter, least)),
        remedy: remedyFor(plan, source, subject, skin),
        about,
      },
    ];
  }
  if (meter === null || onMeter <= stop + 1e-9) return [];
  return [
    {
      severity: "stop",
      message: messageFor(
        source,
        `the meter held before ${face}`,
        meter,
        onSkin > 0 ? `; the skin loses ${sayStops(onSkin)}` : "; the skin loses nothing",
      ),
      remedy: remedyFor(plan, source, subject, meter),
      about,
    },
  ];
}

/** A piece of the set hides a light from a face, wholly or in part. */
export const panelShadesKey: Rule = {
  code: "panel-shades-key",
  thresholds: ["panel_shade", "panel_shade_stop"],
  safety: false,
  page: {
    when: "Flats, cards, panels, paper, scrims, tables, boxes, discs, spheres or capsules take more than `panel_shade` (0.3 stop) of the straight light of a light that is on from a subject's face; it is a stop above `panel_shade_stop` (1 stop). The part of the opening that is hidden counts, seen from the skin of the face. What a meter held before it loses is said too where it differs by more than `panel_shade`; where the skin loses less, and the meter more than `panel_shade_stop`, that is the stop. Background lights are not asked, nor heads that shine into a surface.",
    means:
      "The face lies in the shade of the set, or in the edge of it. The readings know it; the picture may not be meant so.",
    todo: "Raise the light over the edge, open the flat, or move one of the two.",
    source: "Geometry; the thresholds are common practice, no source.",
  },
  check: (plan) =>
    lightsOn(plan.scene)
      .filter((source) => source.role !== "background" && source.patch === undefined)
      .flatMap((source) => plan.scene.subjects.flatMap((subject) => lossOf(plan, source, subject))),
};
