import type { ResultRow } from "./results.js";

const face = { name: "face", type: "face", needed: false } as const;

/** Results of a light's shadows as they fall, and of what it does on a face. */
export const shadowResults = [
  {
    name: "shadow_growth",
    of: "light",
    args: [{ name: "on", type: "surface-name", needed: true }],
    type: "number",
    help: "Size of the shadow of the first subject's head on a surface over the size of the head.",
    example: "key.shadow_growth(on: back)",
    needs: ["subject"],
  },
  {
    name: "shadow_fan",
    of: "light",
    args: [],
    type: "angle",
    help: "Spread, seen from above, of the directions of its shadows across the upright pieces of the set.",
    example: "key.shadow_fan",
    needs: ["set"],
  },
  {
    name: "azimuth_to_nose",
    of: "light",
    args: [face],
    type: "angle",
    help: "How far it stands to the side of the nose line, 0 to 180 deg, from the first subject's face or another.",
    example: "key.azimuth_to_nose",
    needs: ["subject"],
  },
  {
    name: "elevation_to_nose",
    of: "light",
    args: [face],
    type: "angle",
    help: "How far it stands above the plane in which the nose line turns from side to side.",
    example: "key.elevation_to_nose",
    needs: ["subject"],
  },
  {
    name: "nose_shadow_side",
    of: "light",
    args: [face],
    type: "length",
    help: "How far to the side the shadow of the tip of a nose 25 mm long falls on the face.",
    example: "key.nose_shadow_side",
    needs: ["subject"],
  },
  {
    name: "nose_shadow_drop",
    of: "light",
    args: [face],
    type: "length",
    help: "How far down it falls.",
    example: "key.nose_shadow_drop",
    needs: ["subject"],
  },
  {
    name: "catchlight_share",
    of: "light",
    args: [face],
    type: "number",
    help: "Width of its mirror image in the eye as a share of the iris; the eye looks into the lens.",
    example: "key.catchlight_share",
    needs: ["subject", "camera"],
  },
  {
    name: "catchlight_offset",
    of: "light",
    args: [face],
    type: "number",
    help: "How far that image lies from the middle of the iris, as a share of its radius.",
    example: "key.catchlight_offset",
    needs: ["subject", "camera"],
  },
] as const satisfies readonly ResultRow[];
