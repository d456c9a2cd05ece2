import { miredFromKelvin, miredShift } from "../../physics/mired.js";
import { bareColour } from "../../scene/lamp/losses.js";
import type { Source } from "../../scene/types.js";
import { readingAt } from "../light/reading.js";
import { keyOf, lightsOf, type Plan } from "../plan.js";
import type { ReportColour } from "../schema/colour.js";
import { balanceAdvice } from "./advice.js";
import { balanceOf, faceBalance } from "./balance.js";
import { mixtureOf } from "./mixture.js";

/** The colours of the lights that are on and of the light at every station; null where no light is on. */
export function reportColour(plan: Plan): ReportColour | null {
  const { scene } = plan;
  const lights = lightsOf(scene).filter(({ energy }) => energy > 0);
  if (lights.length === 0) return null;
  const asked = faceBalance(plan);
  const balance = balanceOf(plan);
  const face = asked?.face ?? null;
  return {
    balance,
    best_balance: face,
    face_from_balance: asked?.now ?? null,
    wanted_from_balance: asked?.wished === true ? asked.wanted : null,
    set_balance: asked?.set ?? null,
    lights: lights.map((source) => lightColour(plan, source, balance)),
    stations: scene.stations.map((station) => {
      const reading = readingAt(plan, station);
      const mixed = mixtureOf(scene, reading);
      const kelvin = mixed?.kelvin ?? null;
      return {
        name: station.name,
        receptor: station.receptor,
        looks: station.looks,
        colour: kelvin,
        duv: mixed?.duv ?? null,
        direct: mixtureOf(scene, reading, "direct")?.kelvin ?? null,
        bounced: mixtureOf(scene, reading, "bounced")?.kelvin ?? null,
        from_balance: kelvin === null ? null : miredShift(balance, kelvin),
        from_face: kelvin === null || face === null ? null : miredShift(face, kelvin),
      };
    }),
    advice: [...balanceAdvice(plan, lights, asked)],
  };
}

function lightColour(
  { scene, recipe }: Plan,
  source: Source,
  balance: number,
): ReportColour["lights"][number] {
  const key = keyOf(scene);
  const light = recipe.lights.find((row) => row.name === source.name);
  const gels = (light?.gel?.items ?? []).map(({ tint, shift, loses }) => ({
    tint,
    mired: shift.value,
    loses: loses.value,
  }));
  return {
    name: source.name,
    bare: light === undefined ? source.colour : bareColour(light),
    gels,
    loses: gels.reduce((sum, gel) => sum + gel.loses, 0),
    colour: source.colour,
    mired: miredFromKelvin(source.colour),
    from_balance: miredShift(balance, source.colour),
    from_key: key === null || key.name === source.name ? null : miredShift(key.colour, source.colour),
  };
}
