import { headOf, lightsOf, type Plan } from "../plan.js";
import { counterweightFor } from "../rules/boom-balance.rule.js";
import { bagFor } from "../rules/stand-tip.rule.js";
import { fixed } from "../say/number.js";
import { sayOpening } from "../say/opening.js";
import { sayLength, sayMass } from "../say/quantity.js";
import { threshold } from "../settings.js";

/** What to bring, a line each: heads with their stands, bags and counterweights, the set, camera, meter and tapes. */
export function kitList(plan: Plan): readonly string[] {
  const { scene, recipe } = plan;
  const lines: string[] = [];
  for (const light of lightsOf(scene)) {
    const { name } = light;
    const source = headOf(scene, light);
    const energy = source.fullWattSeconds === null ? "" : `, ${fixed(source.fullWattSeconds, 0)} Ws at full`;
    const said = recipe.lights.find((row) => row.name === name);
    const gel = said?.gel === undefined ? "" : `, gel ${said.gel.written}`;
    lines.push(
      `${name}: ${source.kind === "flash" ? "flash head" : "steady lamp"}, ${sayOpening(source)}${energy}${gel}`,
    );
    const { stand } = source;
    if (stand === null) {
      lines.push(`stand for ${name}: to at least ${sayLength(source.centre[2] + 0.1)}, with a bag`);
      continue;
    }
    const force = threshold(recipe, "tip_force");
    const bag = Math.max(stand.bag, bagFor(stand, source.centre[2], force));
    const boom =
      stand.boom === null
        ? ""
        : `, boom of ${sayLength(stand.boom)} with a counterweight of ${sayMass(Math.max(stand.counterweight, counterweightFor(stand)))}`;
    lines.push(
      `stand for ${name}: to at least ${sayLength(source.centre[2] + 0.1)}, bag of ${sayMass(bag)}${boom}`,
    );
  }
  for (const piece of recipe.set?.parts ?? []) {
    const size = "size" in piece && piece.size !== undefined ? `, ${piece.size.written}` : "";
    lines.push(`${piece.block}${piece.name === null ? "" : ` ${piece.name}`}${size}`);
  }
  const { camera } = scene;
  if (camera !== null && camera.focalLength !== null)
    lines.push(`camera, ${fixed(camera.focalLength * 1000, 0)} mm lens, trigger`);
  lines.push("incident meter, two tapes, clinometer, floor tape");
  return lines;
}
