import type { Scene } from "../scene/types.js";

/** What this version does not compute, in plain sentences, as far as it bears on a scene. */
export function notClaimed(scene: Scene): readonly string[] {
  const lines: string[] = [];
  lines.push(
    "Shadows are those of the plain figure by the middle of each light: noses, hair and clothes are not in their outlines.",
  );
  if ((scene.room?.ambient ?? 0) > 0) {
    lines.push(
      "Room light is given beside the readings and is not added to them; it is taken to be the same everywhere.",
    );
  }
  if (scene.sources.some((source) => source.stand === null)) {
    lines.push("Whether a light stands safely is not looked at where the recipe names no stand.");
  }
  return lines;
}
