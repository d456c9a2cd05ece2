import type { Scene } from "../scene/types.js";

/** What this version does not compute, in plain sentences, as far as it bears on a scene. */
export function notClaimed(scene: Scene): readonly string[] {
  const lines: string[] = [];
  lines.push(
    "Bounced light is not computed: every reading is direct light only, so shadows come out darker than in a room, and a shade that no lamp reaches has no number.",
  );
  lines.push(
    "Nothing hides a light: flats, cards, scrims and bodies do not throw shade on a meter in this version. A warning says where a piece of the set stands between a light and the face.",
  );
  if (scene.sources.some((source) => source.cloth !== undefined)) {
    lines.push("What a head gives past the edges of the cloth it shines through is left out.");
  }
  if (scene.sources.some((source) => source.patch !== undefined)) {
    lines.push(
      "Of a head that shines into a surface only its own direct light is in the readings; what the lit surface gives is bounced light.",
    );
  }
  lines.push(
    "Shadow edges are for an edge at the light's aim and a surface square to the light; outlines of real shadows on real surfaces are not computed.",
  );
  if (scene.camera !== null) {
    lines.push("How much of the frame the set covers, and what gloss mirrors, are not computed.");
  }
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
