/** Words that people write for a unit and that no edit distance leads to it. */
const slips: ReadonlyMap<string, string> = new Map(
  Object.entries({
    m: ["mt", "mts", "mtr", "mtrs", "mtre", "mtres"],
    cm: ["cms", "centi", "centis"],
    mm: ["mms", "mil", "mils", "millis"],
    ft: ["fts", "f"],
    in: ["ins", "inchs", "zoll"],
    s: ["sek", "secnd"],
    Ws: ["wattseconds", "wattsecond", "watt_seconds", "watt_second", "js"],
    "%": ["percent", "per_cent", "pct", "pc", "prozent"],
    deg: ["dg", "grad", "grads"],
    stop: ["st", "fstop", "fstops", "f_stop", "f_stops", "blende", "blenden"],
    mired: ["mrd", "mireks", "mirek"],
    K: ["kel", "kelvn"],
    kg: ["kgs", "kgm"],
    lx: ["luxes"],
    "lm s": ["lms", "lumenseconds", "lumensecond", "lumen_seconds", "lumen_second"],
    "lx s": ["lxs", "luxseconds", "luxsecond", "lux_seconds", "lux_second"],
  }).flatMap(([unit, words]) => words.map((word) => [word, unit] as const)),
);

/** The unit that was probably meant by a word that is none, or null. */
export function slipOf(word: string): string | null {
  return slips.get(word.toLowerCase()) ?? null;
}
