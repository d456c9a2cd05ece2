import type { ISerializedGast } from "chevrotain";
import { sharedParser } from "../../src/syntax/parse.js";
import { tokenKinds } from "../../src/text/kinds.js";

/** A node of the grammar as the parser hands it out. */
export type Production = ISerializedGast & {
  readonly name?: string;
  readonly definition?: readonly Production[];
};

/** The rules of the running parser, the start rule first. */
export function productions(): readonly Production[] {
  const rules = sharedParser().getSerializedGastProductions() as readonly Production[];
  const start = rules.filter((rule) => rule.name === "file");
  return [...start, ...rules.filter((rule) => rule.name !== "file")];
}

const written: ReadonlyMap<string, string> = new Map([
  ["NewLine", "NL"],
  ["Word", "WORD"],
  ["Name", "NAME"],
  ["Text", "TEXT"],
  ["TextBlock", "TEXT_BLOCK"],
  ["Numeral", "NUMBER"],
  ["Fraction", "FRACTION"],
  ["FNumber", "F_NUMBER"],
  ["Ratio", "RATIO"],
  ["By", "BY"],
  ["CompoundUnit", "COMPOUND_UNIT"],
  ["PlusMinus", '"+-"'],
  ["Minus", '"-"'],
  ["LessEqual", '"<="'],
  ["GreaterEqual", '">="'],
  ["EOF", "EOF"],
]);

/** A terminal as it stands in the grammar: a word or sign in quotation marks, or the name of a kind of token. */
function terminal(name: string): string {
  const own = written.get(name);
  if (own !== undefined) return own;
  const kind = tokenKinds.find((each) => each.type.name === name);
  if (kind?.role === "keyword") return `"${kind.label}"`;
  return `"${(kind?.pattern ?? name).replaceAll("\\", "")}"`;
}

function sequence(parts: readonly Production[]): string {
  return parts.map(shape).join(" ");
}

function shape(node: Production): string {
  const parts = node.definition ?? [];
  switch (node.type) {
    case "Terminal":
      return terminal(node.name ?? "");
    case "NonTerminal":
      return snake(node.name ?? "");
    case "Option":
      return `[ ${sequence(parts)} ]`;
    case "Repetition":
      return `{ ${sequence(parts)} }`;
    case "RepetitionMandatory":
      return `${sequence(parts)} { ${sequence(parts)} }`;
    case "Alternation":
      return `( ${parts.map(shape).join(" | ")} )`;
    default:
      return sequence(parts);
  }
}

function snake(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

function wrapped(text: string): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line.length + word.length > 76 && word !== ";") {
      lines.push(line);
      line = "     ";
    }
    line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line].join("\n");
}

/** The grammar in ISO 14977 style, made from the rules that the parser runs by. */
export function ebnf(): string {
  const rules = productions().map((rule) => {
    const parts = rule.definition ?? [];
    const only = parts.length === 1 ? parts[0] : undefined;
    const body =
      only?.type === "Alternation" ? (only.definition ?? []).map(shape).join(" | ") : sequence(parts);
    return wrapped(`${snake(rule.name ?? "")} = ${body} ;`);
  });
  return `${head}\n${rules.join("\n\n")}\n\n${tail}`;
}

const head = `(* The grammar of halfshade, version 1, made from the running parser. [ ] may be left out, { } may be repeated. *)
`;

const tail = `(* Kinds of tokens; their patterns are in tokens.json.

   NL             one or more line ends, with blanks and comments between
   WORD           a NAME, a name in backticks, or any word of the language: all of them may be names
   NAME           a letter of any alphabet, then letters, digits and _ ; no word of the language
   TEXT           between quotation marks on one line;  TEXT_BLOCK  between two rows of three
   NUMBER         digits, with one point for decimals
   FRACTION       1/200, without blanks;  RATIO  3:1, without blanks;  F_NUMBER  f/8
   BY             x between two numbers
   COMPOUND_UNIT  lm/W, without blanks, behind a number or "as"
   comments       # to the end of the line, anywhere

   Where a word of the language could be a name as well, it is the word of the language when what follows fits:
   a line is a setting when a colon follows its names, a block when a brace or "like" and a name do.
   A chain of an expression is read with the usual precedence: * and / before + and -, from the left.
   The header is required. The title comes once. A third unit word, a number beside another without a unit, a name
   with a space, are findings of their own. *)
`;
