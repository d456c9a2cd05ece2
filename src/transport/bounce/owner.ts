import type { Sides } from "./sides.js";
import type { World } from "./world.js";

/** Parts of the figure of a person that is the only one; of several, each part bears its person's name before it. */
const FIGURE: ReadonlySet<string> = new Set(["head", "neck", "trunk", "leg", "arm"]);

/** What the only person of a scene is called. */
export const PERSON = "person";

/** What each side belongs to, in the words of a recipe: `floor`, `wall left`, a piece of the set, a person. */
export function ownersOf(world: World, sides: Sides): readonly string[] {
  return Array.from({ length: sides.count }, (_, side) => {
    const name = sides.names[sides.surface[side] as number] as string;
    const whole = name.split(".")[0] as string;
    const body = (sides.thing[side] as number) >= world.polygons;
    return body && FIGURE.has(whole) ? PERSON : whole;
  });
}
