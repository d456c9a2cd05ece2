import type { Compiled } from "../../compile.js";
import { type Place, placeIn } from "../../core/span.js";
import type { BlockModel, Recipe } from "../../model/types.js";
import type { ReportWarning } from "../../report/schema/report.js";
import type { WarningCode } from "../../vocabulary/warnings.js";

/** Where something is written that a warning may be about. Plain data: it may come from another thread. */
export interface NamedPlace {
  /** The name as warnings have it; null for the recipe itself. */
  readonly about: string | null;
  readonly place: Place;
}

/** The places of all that has a name in a recipe, and of the recipe's title. */
export function warningPlaces({ file, source, recipe }: Compiled): readonly NamedPlace[] {
  const { title } = file;
  const whole = title === null ? [] : [{ about: null, place: placeIn(source.name, title.span) }];
  return recipe === null ? whole : [...placesIn(recipe), ...whole];
}

/** The places of the variants, by their titles. */
export function variantPlaces({ source, file }: Compiled): readonly NamedPlace[] {
  return file.items.flatMap((item) =>
    item.kind === "variant"
      ? [{ about: item.title.value, place: placeIn(source.name, { ...item.span, end: item.title.span.end }) }]
      : [],
  );
}

/** The places of all that has a name in one set-up. */
function placesIn(recipe: Recipe): readonly NamedPlace[] {
  const { lights, subjects, points, set, room, camera } = recipe;
  const parts = [...(set?.parts ?? []), ...(room?.parts ?? [])] as readonly BlockModel[];
  // A part that is not written is where its owner is: the floor of a room.
  const owners = [set, room, camera].filter((block) => block !== null) as readonly BlockModel[];
  return [...lights, ...subjects, ...points, ...parts, ...owners].flatMap((block): readonly NamedPlace[] => {
    const place = block.origins?.block;
    return place === undefined
      ? []
      : namesOf(block)
          .filter((name) => name !== "")
          .map((about) => ({ about, place }));
  });
}

/** What warnings may call a block: its name, and the words for a wall. */
function namesOf({ block, name }: BlockModel): readonly string[] {
  if (block === "wall") return [`wall ${name}`];
  if (block === "room") return ["room", "wall", "floor", "ceiling"];
  return name === null ? [block] : [name];
}

/** Warnings about the camera, which has no name. */
const ofCamera: ReadonlySet<string> = new Set<WarningCode>(["camera-through-wall", "sync-band", "too-close"]);

/** The name of what a warning is about; null where it is the set-up as a whole. */
export const aboutOf = ({ about, code }: ReportWarning): string | null =>
  about ?? (ofCamera.has(code) ? "camera" : null);

/** The place that a name has: of `ana.face` that of `ana`; else that of the recipe. Null where there is none. */
export function placeAbout(places: readonly NamedPlace[], about: string | null): Place | null {
  const names = about === null ? [] : [about, about.split(".")[0], about.split(" ")[0]];
  for (const name of [...names, null]) {
    const found = places.find((row) => row.about === name);
    if (found !== undefined) return found.place;
  }
  return null;
}
