import { array, boolean, enum as choice, number, type output as Output, object, string } from "zod";

const maybe = number().nullable();
const pattern = choice(["flat", "butterfly", "loop", "rembrandt", "split", "rim"]);
const side = choice(["short", "broad"]);

const move = object({
  name: pattern,
  azimuth: number().meta({ description: "Further from the nose line (+) or nearer to it, deg" }),
  elevation: number().meta({ description: "Up (+) or down, deg" }),
});

const light = object({
  light: string(),
  azimuth: number().meta({
    description: "From the nose line, deg, + to camera-right for one who faces the camera",
  }),
  elevation: number().meta({ description: "Above the plane in which the nose line turns, deg" }),
  nose_shadow: object({
    side: number().meta({ description: "To the side away from the light, mm" }),
    drop: number().meta({ description: "Down, mm" }),
    on_lip: boolean().meta({ description: "Whether it reaches as far down as the lip" }),
  })
    .nullable()
    .meta({
      description:
        "Of the tip of a nose 25 mm long; null for a light from beside or behind, or more than 45 deg wide",
    }),
  catchlight: object({
    hour: maybe.meta({ description: "As on the face of a clock in the picture; null in the middle" }),
    offset: number().meta({ description: "From the middle of the iris, as a share of its radius" }),
    size: number().meta({ description: "Its width as a share of the iris" }),
    seen: boolean(),
    reason: string().nullable(),
  })
    .nullable()
    .meta({ description: "Its mirror image in an eye that looks into the lens; null without a camera" }),
  glare: object({
    off: number().meta({ description: "Between the light and where flat glasses mirror the lens to, deg" }),
    half: number().meta({ description: "Half of the light's angular width, deg" }),
    seen: boolean().meta({ description: "Whether the lens sees it in the glasses" }),
  })
    .nullable()
    .meta({ description: "Null without spectacles or a camera" }),
});

const face = object({
  subject: string().meta({ description: "Empty for the only one without a name" }),
  key: string().nullable(),
  pattern: pattern
    .nullable()
    .meta({ description: "The pattern in whose range the key stands; null between them" }),
  nearest: move
    .nullable()
    .meta({ description: "The nearest pattern, and the move of the key to it; zeros inside" }),
  next: move.nullable().meta({ description: "The next one, and the move to it" }),
  side: side
    .nullable()
    .meta({ description: "The side of the face that the key lights, as the camera sees it" }),
  side_reason: string().nullable(),
  lights: array(light),
});

/** What the lights do on every face. */
export const facesSchema = array(face);

/** What the lights do on every face of a report. */
export type ReportFaces = Output<typeof facesSchema>;
/** What the lights do on one face. */
export type ReportFace = ReportFaces[number];
