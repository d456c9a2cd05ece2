import { writeNumber } from "../../core/write-number.js";
import type { LightModel } from "../../model/types.js";
import type { PowerValue } from "../../model/values.js";
import { placeOfBlock, report, type Site } from "../site.js";

/** Stops below full power of a setting; null when it is off, undefined where it cannot be said. */
export function stopsBelow(light: LightModel, power: PowerValue): number | null | undefined {
  switch (power.kind) {
    case "full":
      return 0;
    case "off":
      return null;
    case "below":
      return power.stops.value;
    case "fraction":
      return power.fraction.value > 0 ? -Math.log2(power.fraction.value) : null;
    case "energy": {
      const full = light.full_power?.value;
      if (full === undefined) return undefined;
      return power.energy.value > 0 ? Math.log2(full / power.energy.value) : null;
    }
    case "dial": {
      const dial = light.dial;
      if (dial === undefined || !(dial.perStop.value > 0)) return undefined;
      return (dial.full.value - power.number.value) / dial.perStop.value;
    }
    default:
      return power satisfies never;
  }
}

/** The present setting of a lamp in stops below full; null when it is off. A setting above full is reported and taken as full. */
export function settingBelow(site: Site, light: LightModel): number | null {
  if (light.power === undefined) return 0;
  const below = stopsBelow(light, light.power);
  site.place = placeOfBlock(light.origins, "power");
  if (below === undefined) {
    const what = light.power.kind === "dial" ? "what the numbers of its dial mean" : "its full power";
    report(site, "scene.incomplete", { name: light.name ?? "light", what });
    return 0;
  }
  if (below !== null && below < -1e-9) {
    const over = writeNumber(Math.round(-below * 10) / 10);
    report(site, "light.over-full", { name: light.name ?? "light", over });
    return 0;
  }
  return below;
}

/** The lowest setting of a lamp in stops below full; null where it is not known. */
export function lowestBelow(light: LightModel): number | null {
  if (light.lowest_power === undefined) return null;
  return stopsBelow(light, light.lowest_power) ?? null;
}
