/** One step of the scale of hardness. */
export interface HardnessStep {
  /** The greatest angular size of the step in degrees; the last has none. */
  readonly upTo: number;
  readonly word: string;
  /** The same in a few more words, for a headline. */
  readonly phrase: string;
}

/**
 * The project's own scale of words for how hard the edges of shadows are, by the angular size of the light (cone of
 * the same solid angle). The sun has 0.53 deg. Common practice, no source for the steps.
 */
export const hardnessScale: readonly HardnessStep[] = [
  { upTo: 1, word: "crisp", phrase: "crisp, sun-like" },
  { upTo: 3, word: "hard", phrase: "hard" },
  { upTo: 10, word: "medium-hard", phrase: "medium-hard" },
  { upTo: 25, word: "medium", phrase: "medium" },
  { upTo: 60, word: "soft", phrase: "soft" },
  {
    upTo: Number.POSITIVE_INFINITY,
    word: "very soft",
    phrase: "very soft, sky-like",
  },
];

function step(angularSize: number): HardnessStep {
  const found = hardnessScale.find((row) => angularSize <= row.upTo);
  return found ?? (hardnessScale[hardnessScale.length - 1] as HardnessStep);
}

/** The word for an angular size in degrees: `crisp` up to 1 deg, `very soft` above 60 deg. */
export function hardnessWord(angularSize: number): string {
  return step(angularSize).word;
}

/** The same in the words of a headline. */
export function hardnessPhrase(angularSize: number): string {
  return step(angularSize).phrase;
}
