import type { LightModel } from "../../model/types.js";
import { assume, type Site } from "../site.js";
import type { Stand } from "../types.js";

/** What carries a lamp; null where the recipe names no stand. */
export function standOf(site: Site, light: LightModel): Stand | null {
  const stand = light.parts.find((part) => part.block === "stand");
  if (stand === undefined) return null;
  const whose = `of ${light.name}`;
  if (stand.feet === undefined) assume(site, `radius of the feet of the stand ${whose}`, "50 cm", false);
  if (stand.weight === undefined) assume(site, `mass of the stand ${whose}`, "2.5 kg", false);
  if (stand.head === undefined) assume(site, `mass of the head ${whose}`, "2 kg", false);
  if (stand.boom !== undefined && stand.tail === undefined) {
    assume(site, `short end of the boom ${whose}`, "40 cm", false);
  }
  return {
    highest: stand.highest?.value ?? null,
    feet: stand.feet?.value ?? 0.5,
    weight: stand.weight?.value ?? 2.5,
    head: stand.head?.value ?? 2,
    bag: stand.bag?.value ?? 0,
    boom: stand.boom?.value ?? null,
    tail: stand.tail?.value ?? 0.4,
    counterweight: stand.counterweight?.value ?? 0,
  };
}
