import { array, enum as choice, number, type output as Output, object, string } from "zod";

const maybe = number().nullable();

const light = object({
  name: string(),
  bare: number().meta({ description: "Before its gels, K" }),
  gels: array(
    object({
      tint: choice(["warm", "cool", "neutral"]),
      mired: number().meta({ description: "Size of the shift" }),
      loses: number().meta({ description: "stops" }),
    }),
  ),
  loses: number().meta({ description: "What the gels cost together, stops" }),
  colour: number().meta({ description: "Behind its gels, K" }),
  mired: number(),
  from_balance: number().meta({ description: "Mired from the camera's white balance, + comes out warm" }),
  from_key: maybe.meta({ description: "Mired from the key, + is warmer; null for the key and without one" }),
});

const place = object({
  name: string(),
  receptor: choice(["disc", "dome"]),
  looks: string(),
  colour: maybe.meta({ description: "Correlated colour temperature of all light there, K" }),
  duv: maybe.meta({ description: "Distance from the black bodies in CIE 1960 u, v, + greenish" }),
  direct: maybe.meta({ description: "Of what comes straight, K" }),
  bounced: maybe.meta({ description: "Of what comes by way of surfaces, taken as grey, K" }),
  from_balance: maybe.meta({ description: "Mired from the camera's white balance, + comes out warm" }),
  from_face: maybe.meta({ description: "Mired from the first face's disc to the key, + is warmer" }),
});

/** The colours of the lights, and of the light at every station. */
export const colourSchema = object({
  balance: number().meta({ description: "The camera's white balance, K" }),
  best_balance: maybe.meta({ description: "At which the first face comes out neutral, K" }),
  face_from_balance: maybe.meta({
    description: "Mired of the first face from the white balance, + comes out warm",
  }),
  wanted_from_balance: maybe.meta({
    description:
      "How warm the sun that is wished for and its sky come out at daylight balance, mired; null without such a wish",
  }),
  set_balance: maybe.meta({
    description:
      "White balance to set, in steps of 50 K, at which the first face comes out so, or else neutral; null where none does",
  }),
  lights: array(light),
  stations: array(place),
  advice: array(string()),
});

/** The colours of a set-up. */
export type ReportColour = Output<typeof colourSchema>;
