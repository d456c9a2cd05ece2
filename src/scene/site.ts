import type { Place } from "../core/span.js";
import { writeNumber } from "../core/write-number.js";
import type { ArgsOf, Code } from "../diagnostics/catalogue/index.js";
import { finding } from "../diagnostics/create.js";
import type { Fix, Sink } from "../diagnostics/diagnostic.js";
import type { Origins, Recipe } from "../model/types.js";
import type { Assumption, Landmark } from "./types.js";

/** One block that puts something into the scene, built when something first asks for its place. */
export interface Owner {
  readonly name: string;
  readonly place: Place;
  state: "waiting" | "busy" | "done";
  readonly build: () => void;
}

/** What the parts of the scene stage share while one scene is built. */
export interface Site {
  readonly recipe: Recipe;
  readonly sink: Sink;
  readonly landmarks: Map<string, Landmark>;
  readonly owners: Map<string, Owner>;
  readonly assumed: Assumption[];
  /** Where the text says what is being worked out now. */
  place: Place;
}

/** The place of what was made by code and not written anywhere. */
export const nowhere: Place = { file: "", start: 0, end: 0 };

/** Where a block, or one of its properties, is written. */
export function placeOfBlock(origins: Origins | undefined, property?: string): Place {
  const own = property === undefined ? undefined : origins?.properties.get(property);
  return own ?? origins?.block ?? nowhere;
}

/** Reports a finding at the place that is being worked on. */
export function report<C extends Code>(
  site: Site,
  code: C,
  args: ArgsOf<C>,
  fixes: readonly Fix[] = [],
): void {
  site.sink(finding(code, site.place, args, { fixes }));
}

/** Builds an owner now, unless it is built; a ring of owners is reported once and left open. */
export function ensure(site: Site, owner: Owner): void {
  if (owner.state === "done") return;
  if (owner.state === "busy") {
    report(site, "point.circular", { name: owner.name });
    return;
  }
  const before = site.place;
  site.place = owner.place;
  owner.state = "busy";
  owner.build();
  owner.state = "done";
  site.place = before;
}

/** The owner that a name belongs to: its own, that of its first word, or the first subject for `face` and the like. */
function ownerOf(site: Site, name: string): Owner | undefined {
  const own = site.owners.get(name);
  if (own !== undefined) return own;
  const dot = name.indexOf(".");
  return site.owners.get(dot < 0 ? "subject" : name.slice(0, dot));
}

/** The landmark of a name; builds what it belongs to if need be. Null, with a finding, where there is none. */
export function find(site: Site, name: string): Landmark | null {
  const ready = site.landmarks.get(name);
  if (ready !== undefined) return ready;
  const owner = ownerOf(site, name);
  const ring = owner?.state === "busy";
  if (owner !== undefined) ensure(site, owner);
  const built = site.landmarks.get(name) ?? null;
  if (built === null && !ring) report(site, "point.unknown", { name });
  return built;
}

/** The face of the only, unnamed subject; null without one. */
export function faceOfSubject(site: Site): Landmark | null {
  return site.owners.has("subject") ? find(site, "face") : null;
}

/** Adds a default that was used to the list that ends every report. */
export function assume(site: Site, what: string, value: string, matters: boolean): void {
  site.assumed.push({ what, value, matters });
}

/** Metres for a message, to the millimetre. */
export function metres(value: number): string {
  return writeNumber(Math.round(value * 1000) / 1000);
}
