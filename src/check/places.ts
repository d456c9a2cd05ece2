import { writeName } from "../model/make/points.js";
import type { Name, Reference } from "../syntax/ast.js";
import { blockRow } from "../vocabulary/index.js";
import { type Context, type Declared, replace, report } from "./context.js";
import { listNames, nearNames, suggestion } from "./suggest.js";

/** Points that every subject has. */
export const bodyPoints = [
  "face",
  "chest",
  "knee",
  "shin",
  "hair",
  "feet",
  "lit_cheek",
  "shaded_cheek",
] as const;

/** Points that exist without any subject. */
export const fixedPoints = ["camera", "mark", "floor", "ceiling"] as const;

/** The walls of the room; they are places where there is a room. */
export const wallPoints = ["wall_back", "wall_left", "wall_right", "wall_front"] as const;

/** Parts of a wall besides its middle. */
const wallParts = ["left", "right"] as const;

/** Parts of a flat, paper or card besides its middle. */
export const pieceParts = ["left", "right", "top"] as const;

/** Names that no block may take. */
export const takenNames: ReadonlySet<string> = new Set([
  ...bodyPoints,
  ...fixedPoints,
  ...wallPoints,
  "subject",
  "headroom",
  "no_warnings",
  "coverage",
  "uncovered",
  "subject_share",
  "hand_limit",
  "highlight_headroom",
  "hyperfocal",
  "up",
  "down",
]);

/** Names that a subject's own point may not take: behind the name of a subject they ask for a reading. */
export const readingWords: ReadonlySet<string> = new Set([
  "disc",
  "dome",
  "f_number",
  "exposure",
  "ev",
  "stops_from_aperture",
]);

const isBodyPoint = (name: string): boolean => (bodyPoints as readonly string[]).includes(name);
const isFixed = (name: string): boolean => (fixedPoints as readonly string[]).includes(name) || isWall(name);

/** Whether a name is that of a wall. */
export const isWall = (name: string): boolean => (wallPoints as readonly string[]).includes(name);

/** The named points of a subject, in file order. */
function ownPoints(ctx: Context, owner: string): readonly string[] {
  return [...ctx.declared.values()].filter((d) => d.kind === "point" && d.owner === owner).map((d) => d.name);
}

/** The key under which a declared thing is kept: its name, or `owner.name` for a point of a named subject. */
export function declaredKey(name: string, owner: string | null): string {
  return owner === null || owner === "" ? name : `${owner}.${name}`;
}

/** Everything that may be named as a place, for suggestions. */
export function placeNames(ctx: Context): readonly string[] {
  const single = ctx.subjects.length === 1;
  const bodies = single
    ? [...bodyPoints]
    : ctx.subjects.flatMap((name) => bodyPoints.map((part) => `${writeName(name)}.${part}`));
  const own = [...ctx.declared.values()].map((d) =>
    d.owner === null || d.owner === "" || single
      ? writeName(d.name)
      : `${writeName(d.owner)}.${writeName(d.name)}`,
  );
  return [...own, ...bodies, ...fixedPoints];
}

/**
 * What a path means as a place, as the path by which the scene knows it: a single subject's points without the
 * subject's name. Null after a finding.
 */
export function resolvePlace(ctx: Context, node: Reference): readonly string[] | null {
  const [first, second, ...more] = node.path.parts;
  if (first === undefined) return null;
  if (more.length > 0) return unknown(ctx, node);
  return second === undefined ? resolveOne(ctx, node, first) : resolveTwo(ctx, node, first, second);
}

function resolveOne(ctx: Context, node: Reference, first: Name): readonly string[] | null {
  const name = first.text;
  if (isFixed(name)) return [name];
  if (isBodyPoint(name)) {
    if (ctx.subjects.length === 1) return [name];
    if (ctx.subjects.length > 1) {
      const owners = ctx.subjects.map((subject) => `${writeName(subject)}.${name}`);
      report(
        ctx,
        "name.whose",
        node.span,
        { name, owners: listNames(owners) },
        {
          fixes: owners.map((owner) => replace(ctx, `write \`${owner}\``, node.span, owner)),
        },
      );
      return null;
    }
    report(ctx, "name.unknown", node.span, {
      name,
      known: "There is no subject in this recipe; add `subject { ... }`.",
    });
    return null;
  }
  if (ctx.declared.has(name)) return [name];
  const owned = [...ctx.declared.values()].filter(
    (d) => d.kind === "point" && d.name === name && d.owner !== null,
  );
  const only = owned[0];
  if (owned.length === 1 && only !== undefined && ctx.subjects.length === 1) return [name];
  if (owned.length > 0) {
    const owners = owned.map((d) => `${writeName(d.owner ?? "")}.${writeName(name)}`);
    report(
      ctx,
      "name.whose",
      node.span,
      { name, owners: listNames(owners) },
      { fixes: owners.map((owner) => replace(ctx, `write \`${owner}\``, node.span, owner)) },
    );
    return null;
  }
  if (name === "subject" && ctx.subjects.length === 1) return ["feet"];
  return unknown(ctx, node);
}

function resolveTwo(ctx: Context, node: Reference, first: Name, second: Name): readonly string[] | null {
  const single = ctx.subjects.length === 1;
  const owner = first.text === "subject" && single ? (ctx.subjects[0] ?? "") : first.text;
  if (ctx.subjects.includes(owner)) {
    const points = [...bodyPoints, ...ownPoints(ctx, owner)];
    if (points.includes(second.text)) return single ? [second.text] : [owner, second.text];
    return unknownPart(ctx, first.text, second, [...bodyPoints, ...ownPoints(ctx, owner).map(writeName)]);
  }
  const found = ctx.declared.get(first.text);
  if (isWall(first.text)) {
    if (second.text === "middle") return [first.text];
    if ((wallParts as readonly string[]).includes(second.text)) return [first.text, second.text];
    return unknownPart(ctx, first.text, second, wallParts);
  }
  if (found?.kind === "piece") {
    const parts: readonly string[] = hasParts(found) ? pieceParts : [];
    if (second.text === "middle") return [first.text];
    if (parts.includes(second.text)) return [first.text, second.text];
    return unknownPart(ctx, first.text, second, parts);
  }
  if (found !== undefined && settingOf(ctx, node) === null) return unknownPart(ctx, first.text, second, []);
  return unknown(ctx, node);
}

/** True for pieces of the set that have a left, a right and a top. */
export function hasParts(declared: Declared): boolean {
  return ["flat", "paper", "card", "scrim", "panel"].includes(declared.block.words[0]?.text ?? "");
}

function unknown(ctx: Context, node: Reference): null {
  const name = node.path.parts.map((part) => part.text).join(".");
  const first = node.path.parts[0];
  if (first !== undefined && (ctx.lets.has(first.text) || ctx.definitions.has(first.text))) {
    const what = ctx.lets.has(first.text)
      ? "is a value set by `let`"
      : "is only defined; what is like it and stands in the room has a place";
    report(
      ctx,
      "name.not-a-point",
      first.span,
      { name: first.text },
      {
        help: `\`${first.text}\` ${what}. A place is a name such as \`face\`, (x, y, z) or \`offset(...)\`.`,
      },
    );
    return null;
  }
  const setting = settingOf(ctx, node);
  if (setting !== null) {
    report(ctx, "name.unknown", node.span, { name, known: setting });
    return null;
  }
  const known = placeNames(ctx);
  const rest = node.path.parts.slice(1).map((part) => `.${writeName(part.text)}`);
  const whole = nearNames(name, [...known, ...wallPoints]);
  const isKnown = known.includes(first?.text ?? "");
  const owners = whole.length > 0 || rest.length === 0 || isKnown ? [] : nearNames(first?.text ?? "", known);
  const near = [...whole, ...owners.map((owner) => owner + rest.join(""))];
  report(
    ctx,
    "name.unknown",
    node.span,
    { name, known: suggestion(near, known, "Nothing in this recipe has a name.") },
    {
      fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, node.span, candidate)),
    },
  );
  return null;
}

/** What to say where a path names a setting of a block and not a place; null where it does not. */
function settingOf(ctx: Context, { path }: Reference): string | null {
  const [owner, property, ...more] = path.parts;
  if (owner === undefined || property === undefined || more.length > 0) return null;
  const kind = ctx.declared.get(owner.text)?.block.words[0]?.text ?? owner.text;
  return settingWords(kind, owner.text, property.text);
}

/** Says of a property of a kind of block that it is a setting; null where the kind has none of that name. */
export function settingWords(kind: string, owner: string, property: string): string | null {
  if (blockRow(kind)?.properties.some((row) => row.name === property) !== true) return null;
  return `\`${property}\` is a setting of \`${writeName(owner)}\`, which the recipe says itself: ask for what follows from it.`;
}

function unknownPart(ctx: Context, owner: string, part: Name, parts: readonly string[]): null {
  const near = nearNames(part.text, parts);
  report(
    ctx,
    "name.part",
    part.span,
    { owner, part: part.text, parts: parts.length === 0 ? "none" : listNames(parts) },
    { fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, part.span, candidate)) },
  );
  return null;
}
