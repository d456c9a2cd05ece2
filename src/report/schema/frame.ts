import { array, enum as choice, number, type output as Output, object, string, tuple } from "zod";

/*
 * What the picture shows and how sharp it is. Places are shares of the frame's width from its left and of its height
 * from its top, 0 to 1; pixels beside them are null where the recipe gives no count.
 */
const maybe = number().nullable();

const place = tuple([number(), number()]).meta({
  description: "From the left and from the top, as shares of the frame's width and height",
});

const pixel = tuple([number(), number()]).nullable().meta({ description: "The same in pixels" });

const side = object({
  side: choice(["left", "right", "top", "bottom", "within"]),
  share: number().meta({ description: "Share of the picture that is bare there, 0 to 1" }),
  depth: number().meta({
    description: "How far in from that side it reaches at most, as a share of the width or height",
  }),
  pixels: maybe.meta({ description: "The same in pixels" }),
});

const box = object({ left: number(), top: number(), right: number(), bottom: number() }).meta({
  description: "Shares of the frame's width from its left and of its height from its top",
});

const closing = object({
  what: string().meta({ description: "The property as a recipe names it" }),
  value: number(),
  unit: choice(["m", "deg"]),
  text: string(),
});

/** The picture: what covers it, what is bare, lines and things in it, and the first subject. */
export const frame = object({
  coverage: maybe.meta({ description: "Share of the picture that is set or subject, 0 to 1" }),
  reason: string().nullable().meta({ description: "Why there is no coverage" }),
  pixels: tuple([number(), number()]).nullable().meta({ description: "Width and height of the picture" }),
  bare_pixels: maybe.meta({ description: "Pixels that are neither set nor subject" }),
  sides: array(side).meta({ description: "Where it is bare; sides that are not are left out" }),
  behind: array(object({ surface: string(), share: number() })).meta({
    description: "What shows in the bare part, `open` for nothing of the room, the largest first",
  }),
  closings: array(closing).meta({
    description: "Single changes by which nothing would be bare; each is enough by itself",
  }),
  seams: array(
    object({
      kind: choice(["fold", "edge", "corner"]),
      name: string(),
      side: choice(["left", "right", "top", "bottom"]).nullable(),
      from: place,
      to: place,
      from_pixel: pixel,
      to_pixel: pixel,
    }),
  ).meta({ description: "Folds between flats, free edges of the set and corners of the room that are seen" }),
  things: array(
    object({
      kind: choice(["lamp", "stand", "boom", "card", "scrim", "opening"]),
      name: string(),
      box,
      share: number(),
    }),
  ).meta({ description: "What is seen besides set and people" }),
  subject: object({
    name: string().nullable(),
    framing: string().nullable().meta({
      description: "full length, three-quarter, half length, head and shoulders, head; null without the face",
    }),
    height: maybe.meta({ description: "Height in the picture as a share of the frame's" }),
    area: number().meta({ description: "Share of the picture, 0 to 1" }),
    above_head: maybe.meta({ description: "From the top of the head to the top of the picture, m" }),
    hand_limit: maybe.meta({ description: "Highest hand that stays in the picture and before the set, m" }),
    hand_limit_by: string()
      .nullable()
      .meta({ description: "`frame`, or the piece of the set that ends there" }),
  })
    .nullable()
    .meta({ description: "The first subject" }),
});

const range = object({
  circle: number().meta({ description: "Circle of confusion, mm" }),
  near: maybe.meta({ description: "m along the lens axis" }),
  far: maybe.meta({ description: "null where there is no end" }),
  hyperfocal: number(),
});

/** What is sharp, and what blurs. */
export const sharpness = object({
  circle: range.meta({ description: "By the circle of confusion of the recipe" }),
  two_pixels: range.nullable().meta({ description: "By a blur of two pixels; null without their count" }),
  airy: number().meta({ description: "Diameter of the Airy disc at 555 nm, mm" }),
  airy_pixels: maybe,
  points: array(
    object({
      name: string(),
      depth: number().meta({ description: "Along the lens axis, m" }),
      blur: number().meta({ description: "Diameter on the sensor, mm" }),
      pixels: maybe,
      sharp: choice(["yes", "no"]),
    }),
  ).meta({ description: "Faces and named points that the picture shows" }),
});

/** What the flashes' and the shutter's times do to the picture. */
export const timing = object({
  flashes: array(
    object({
      light: string(),
      lasts: number().meta({ description: "t0.1 at the set power, s" }),
      lasts_half: number().meta({ description: "t0.5 of an exponential decay with that t0.1, s" }),
      open: maybe.meta({
        description: "How long the whole frame is open to it, s; null without shutter and sync",
      }),
      tail_lost: maybe.meta({
        description: "Stops that the side which closes first loses; null where the whole frame is never open",
      }),
    }),
  ).meta({ description: "Flashes that are on and whose `lasts` is known" }),
  recycling: array(
    object({
      light: string(),
      recycle: number().meta({ description: "From one flash to the next at the set power, s" }),
      under: maybe.meta({
        description: "Stops by which the next frame of a burst is under; null without a burst",
      }),
    }),
  ),
  motion: array(
    object({
      subject: string().nullable(),
      speed: number().meta({ description: "m/s" }),
      light: string().meta({ description: "The key" }),
      acts: number().meta({ description: "How long it acts, s" }),
      path: number().meta({ description: "How far the subject moves meanwhile, mm" }),
      blur: number().meta({ description: "On the sensor, mm" }),
      pixels: maybe,
    }),
  ).meta({ description: "Subjects that move" }),
});

/** What the picture shows. */
export type ReportFrame = Output<typeof frame>;
