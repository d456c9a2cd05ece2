import type { Scene } from "../../scene/types.js";
import type { Intrusion } from "../geometry/intrusion.js";
import { personWords } from "../say/bodies.js";

/**
 * What stands in what, as a sentence.
 *
 * @param first - What stands there, as a sentence begins with it.
 * @param within - The same inside of a sentence.
 */
export function insideWords(
  scene: Scene,
  { name, of, how }: Intrusion,
  first: string,
  within: string,
): string {
  const what = of === "piece" ? name : personWords(scene, name);
  return how === "inside" ? `${first} stands inside ${what}.` : `${what} goes through ${within}.`;
}
