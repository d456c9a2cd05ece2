import { fixed, list } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import type { SessionCause, SessionPair } from "../schema/session.js";
import type { Cause } from "./causes.js";
import type { Pair } from "./pairs.js";
import type { Pattern } from "./patterns.js";

/** Stops with a sign: `+0.4 stop`. */
export const signed = (stops: number): string => `${stops > 0 ? "+" : ""}${fixed(stops, 1)} stop`;

const more = (stops: number): string => `${fixed(Math.abs(stops), 1)} stop ${stops > 0 ? "more" : "less"}`;

/** A cause in words, with what to look at. */
export function sayCause(cause: Cause): SessionCause {
  const { kind, about, amount, unit, left } = cause;
  return { kind, about, amount, unit, left, ...wordsOf(cause) };
}

function wordsOf({ kind, about, amount }: Cause): { readonly message: string; readonly advice: string } {
  const name = about ?? "";
  switch (kind) {
    case "all":
      return {
        message: `Every reading shows ${more(amount)} than the set-up as built should give.`,
        advice:
          "Look at the power, the ISO value of the meter, a gel or cloth left on or off, a dirty cloth.",
      };
    case "output":
      return {
        message: `${name} gives ${more(amount)} than its setting says.`,
        advice: `Look at the dial of ${name}, at what is in front of it, and at its calibration.`,
      };
    case "distance":
      return {
        message: `${name} stands ${sayLength(Math.abs(amount))} ${amount > 0 ? "farther" : "nearer"} than the tape says.`,
        advice: `Measure ${name} again, from the tape's zero to its lit opening.`,
      };
    case "height":
      return {
        message: `${name} stands ${sayLength(Math.abs(amount))} ${amount > 0 ? "higher" : "lower"} than written, or is aimed so.`,
        advice: `Measure the height of ${name} to the middle of its lit opening, and look where it is aimed.`,
      };
    case "bearing":
      return {
        message: `${name} stands ${sayAngle(Math.abs(amount))} farther to camera-${amount > 0 ? "right" : "left"} than written, or is aimed so.`,
        advice: `Measure the bearing of ${name}, and look where it is aimed.`,
      };
    case "reflectance":
      return {
        message: `The reflectance of ${name} is ${fixed(Math.abs(amount) * 100, 0)} percentage points ${amount > 0 ? "higher" : "lower"} than written.`,
        advice:
          amount > 0
            ? "The room fills the shade: black cloth there, a dish or a grid on the lamp; or write the reflectance as it is."
            : "The room fills the shade less: a white board there; or write the reflectance as it is.",
      };
    default:
      return kind satisfies never;
  }
}

/** A pattern in words. */
export function sayPattern({ kind, about }: Pattern): SessionCause {
  const none = { amount: null, unit: null, left: null } as const;
  if (kind === "background")
    return {
      kind,
      about,
      ...none,
      message: "Only the background is off.",
      advice: "Look at the gap between sitter and background, at flags, and at the aim of what lights it.",
    };
  return {
    kind,
    about,
    ...none,
    message: `At ${about ?? "one place"} the dome agrees and the disc does not.`,
    advice: "The disc looked elsewhere: hold it square to what it is to look at, and read again.",
  };
}

/** Two causes in words. */
export function sayPair({ causes: [a, b], left }: Pair): SessionPair {
  return { causes: [sayCause(a), sayCause(b)], left };
}

/**
 * What the causes come to, in a sentence.
 *
 * @param worst - The furthest that a reading is from what the set-up as built should give, stops; null without one.
 * @param note - From where on that is noted, stops.
 */
export function sayDiagnosis(
  causes: readonly SessionCause[],
  pairs: readonly SessionPair[],
  count: number,
  worst: number | null,
  note: number,
): string {
  if (worst === null) return "There is no reading to judge.";
  if (worst <= note) return "The readings are what the set-up as built should give.";
  if (count === 1)
    return "One reading does not tell what is otherwise than written; it may be any of the lamps, tapes and settings.";
  const [first] = causes;
  const [pair] = pairs;
  if (pair !== undefined) {
    const together = pair.causes.map(({ message }) => message).join(" ");
    const others =
      pairs.length > 1 ? " Other pairs do as well, and the readings do not tell them apart." : "";
    return `No single thing accounts for all readings; two do together. ${together}${others}`;
  }
  if (first === undefined)
    return "No single thing accounts for all readings: more than one is otherwise than written, or a reading is wrong.";
  if (causes.length === 1) return first.message;
  return `These readings do not tell ${list(causes.map(({ kind, about }) => [about, nouns[kind]].filter(Boolean).join(" ")))} apart; each accounts for them.`;
}

const nouns: Readonly<Record<SessionCause["kind"], string>> = {
  all: "all lamps together",
  output: "output",
  distance: "distance",
  height: "height",
  bearing: "bearing",
  reflectance: "reflectance",
  background: "the background",
  "meter-aim": "meter",
};
