import type { PartModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import type { Scene } from "../../scene/types.js";
import { type Seam, seamsOf } from "../frame/seams.js";
import { ceilTo, fixed, list } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";

type Paper = Extract<PartModel<"set">, { block: "paper" }>;
type Word = "run" | "width" | "hangs";

/** How far a paper is made longer or wider in search of one that leaves the picture. */
const LONGEST = 3;
const HALVINGS = 10;

const words: Readonly<Record<Word, string>> = { run: "run", width: "width", hangs: "height" };

function wordOf(side: Seam["side"]): Word | null {
  if (side === "bottom") return "run";
  if (side === "top") return "hangs";
  return side === null ? null : "width";
}

/** The edges of a paper that a scene's picture shows, one for each measure that ends there. */
function edges(scene: Scene, name: string): readonly Seam[] {
  return seamsOf(scene, name).filter(({ kind }) => kind === "edge");
}

const shows = (seams: readonly Seam[], word: Word): boolean =>
  seams.some(({ side }) => wordOf(side) === word);

/** The least measure with which that edge leaves the picture; null up to three times of it. */
function longEnough(recipe: Recipe, paper: Paper, name: string, word: Word): number | null {
  const length = paper[word];
  const { set } = recipe;
  if (length === undefined || set === null) return null;
  const free = (value: number): boolean => {
    const changed: Paper = { ...paper, [word]: { ...length, value } };
    const parts = set.parts.map((part) => (part === paper ? changed : part));
    const scene = buildScene({ ...recipe, set: { ...set, parts } }, () => undefined);
    return !shows(edges(scene, name), word);
  };
  let [bad, good] = [length.value, LONGEST * length.value];
  if (!free(good)) return null;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (bad + good) / 2;
    if (free(middle)) good = middle;
    else bad = middle;
  }
  const value = ceilTo(good, 0.05);
  return free(value) ? value : null;
}

const sideWords: Readonly<Record<NonNullable<Seam["side"]>, string>> = {
  left: "left",
  right: "right",
  top: "upper",
  bottom: "front",
};

function placeOf({ side, from, to }: Seam): string {
  if (side === "left") return `${fixed(50 * (1 + Math.min(from[0], to[0])), 0)} % in from the left`;
  if (side === "right") return `${fixed(50 * (1 - Math.max(from[0], to[0])), 0)} % in from the right`;
  if (side === "top") return `${fixed(50 * (1 - Math.max(from[1], to[1])), 0)} % below the top`;
  return `${fixed(50 * (1 + Math.min(from[1], to[1])), 0)} % above the bottom`;
}

/** An edge of a paper is in the picture. */
export const paperEdge: Rule = {
  code: "paper-edge",
  thresholds: [],
  safety: false,
  page: {
    when: "The front end, a side or the upper end of a paper lies inside the frame, and nothing stands before it.",
    means: "The paper ends in the picture: its edge, and what lies beyond, have to be painted over.",
    todo: "A longer run or a wider roll, a tighter picture, or the edge cut out afterwards.",
    source: "Projection through the lens, exact along 32 places of each edge.",
  },
  check: ({ scene, recipe }) =>
    (recipe.set?.parts ?? []).flatMap((part): readonly RuleFinding[] => {
      if (part.block !== "paper") return [];
      const name = part.name ?? "paper";
      const found = edges(scene, name).filter(({ side }) => side !== null);
      if (found.length === 0) return [];
      const ends = found.map((seam) => `its ${sideWords[seam.side ?? "bottom"]} edge ${placeOf(seam)}`);
      const measures = (["run", "width", "hangs"] as const).filter((word) => shows(found, word));
      const ways = measures.map((word) => {
        const value = longEnough(recipe, part, name, word);
        return value === null ? null : `a ${words[word]} of ${sayLength(value)}`;
      });
      const possible = ways.filter((way) => way !== null);
      const remedy =
        possible.length < ways.length || possible.length === 0
          ? "Take a tighter picture, or cut the edge out afterwards."
          : `It takes ${list(possible)}; else a tighter picture, or the edge cut out afterwards.`;
      return [
        { severity: "check", message: `${name} ends in the picture: ${list(ends)}.`, remedy, about: name },
      ];
    }),
};
