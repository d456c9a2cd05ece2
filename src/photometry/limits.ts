/** Longest file that is read, in characters; a table of 181 by 361 values takes about half of it. */
export const MAX_LM63_CHARACTERS = 1_048_576;
/** Most angles of either kind; half a degree around the circle, and the end once more. */
export const MAX_LM63_ANGLES = 721;
/** Most keyword lines. */
export const MAX_LM63_KEYWORDS = 1000;
