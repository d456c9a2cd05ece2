import type { Scene } from "../../scene/types.js";
import type { World } from "./world.js";

/** What the sides of a scene's things give back: number 2 i is the back of thing i, 2 i + 1 its front or its body. */
export interface Surfaces {
  /** Share of the light that comes back; 0 for black sides. */
  readonly reflectance: Float64Array;
  /** Index into `owners` of what the side belongs to. */
  readonly owner: Int32Array;
  /** In the words of a recipe: `floor`, `wall left`, a piece of the set, a person. */
  readonly owners: readonly string[];
}

/** A side gives back no more than this: with nothing lost the light in a closed room would never end. */
const MOST = 0.999;

/** Parts of the figure of a person that is the only one; of several, each part bears its person's name before it. */
const FIGURE: ReadonlySet<string> = new Set(["head", "neck", "trunk", "leg", "arm"]);

/** What the only person of a scene is called. */
export const PERSON = "person";

/** The name of a thing without that of its part. */
const wholeName = (name: string): string => name.split(".")[0] as string;

/** Whose a body is, by its name: `person` where there is one person, else the person's name or the prop's own. */
export function bodyOwner(name: string): string {
  const whole = wholeName(name);
  return FIGURE.has(whole) ? PERSON : whole;
}

/** Lists what each side of a scene gives back and whose it is. */
export function surfacesOf(scene: Scene, world: World): Surfaces {
  const reflectance = new Float64Array(2 * world.count);
  const owner = new Int32Array(2 * world.count);
  const owners: string[] = [];
  const places = new Map<string, number>();
  let thing = 0;
  for (const { name, frontReflectance, backReflectance } of scene.polygons) {
    const place = placeIn(owners, places, wholeName(name));
    owner.fill(place, 2 * thing, 2 * thing + 2);
    reflectance[2 * thing + 1] = limited(frontReflectance);
    reflectance[2 * thing] = limited(backReflectance);
    thing++;
  }
  for (const { name, reflectance: share } of scene.bodies) {
    const place = placeIn(owners, places, bodyOwner(name));
    owner.fill(place, 2 * thing, 2 * thing + 2);
    reflectance[2 * thing + 1] = limited(share);
    thing++;
  }
  return { reflectance, owner, owners };
}

const limited = (share: number): number => (share > 0 ? Math.min(share, MOST) : 0);

/** The place of a name in a list, to which it is added where it is new. */
function placeIn(names: string[], places: Map<string, number>, name: string): number {
  const known = places.get(name);
  if (known !== undefined) return known;
  places.set(name, names.length);
  return names.push(name) - 1;
}
