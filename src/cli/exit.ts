/** Nothing was found wrong. */
export const CLEAN = 0;
/** An error in a file, a failed or undecidable expectation, a file that is not formatted, too many warnings. */
export const FOUND = 1;
/** Wrong use, a file that cannot be read or written, a fault of our own. */
export const TROUBLE = 2;
