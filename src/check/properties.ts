import type { Place } from "../core/span.js";
import { printNode } from "../format/print-node.js";
import type { Property, Value } from "../syntax/ast.js";
import { hasSpread } from "../units/spread.js";
import type { BlockRow, PropertyRow } from "../vocabulary/property.js";
import { propertySynonyms } from "../vocabulary/synonyms.js";
import { type Context, here, type Owned, type Reporter, replace, report } from "./context.js";
import { listNames, nearNames } from "./suggest.js";
import { readValue } from "./values/read.js";
import { aKind, bare } from "./words.js";

/** Properties that have been read, by name, and where each stands. */
export interface ReadProperties {
  readonly values: Map<string, unknown>;
  readonly places: Map<string, Place>;
  /** Names that were written, also where their value could not be read. */
  readonly given: Set<string>;
}

/** Reads the properties among the entries of a block by its row of the vocabulary. */
export function readProperties(row: BlockRow, entries: readonly Owned[]): ReadProperties {
  const read: ReadProperties = { values: new Map(), places: new Map(), given: new Set() };
  const first = new Map<string, Place>();
  for (const { entry, ctx } of entries) {
    if (entry.kind !== "property") continue;
    const [head, ...rest] = entry.path.parts;
    if (head === undefined) continue;
    if (rest.length > 0) {
      const last = rest[rest.length - 1]?.text ?? "";
      report(
        ctx,
        "property.path",
        entry.path.span,
        { path: entry.path.parts.map((part) => part.text).join(".") },
        { fixes: [replace(ctx, `write \`${last}\``, entry.path.span, last)] },
      );
      continue;
    }
    const name = head.text;
    const property = row.properties.find((candidate) => candidate.name === name);
    if (property === undefined) {
      // What was probably meant counts as given, so that it is not also called missing.
      for (const meant of unknownProperty(ctx, row, entry, name)) read.given.add(meant);
      continue;
    }
    const before = first.get(name);
    if (before !== undefined) {
      report(
        ctx,
        "property.twice",
        entry.path.span,
        { name },
        {
          label: "second value",
          related: [{ place: before, text: "first value" }],
        },
      );
      continue;
    }
    first.set(name, here(ctx, entry.path.span));
    if (entry.companion !== null && name !== "calibration") {
      report(ctx, "property.companion", entry.companion.span, { name });
    }
    readOne(ctx, property, entry, read);
  }
  return read;
}

function readOne(ctx: Context, property: PropertyRow, entry: Property, read: ReadProperties): void {
  read.given.add(property.name);
  const value = readValue(ctx, property, entry.value);
  if (value === null) return;
  if (property.sure === true && hasSpread(value)) {
    report(ctx, "value.tolerance-idle", entry.value.span, { name: property.name });
  }
  read.values.set(property.name, value);
  read.places.set(property.name, here(ctx, entry.span));
}

/** A number without unit, or several joined by x, as written; null for anything else. */
function plainNumbers(value: Value): string | null {
  const inner = bare(value);
  if (inner.kind !== "quantity" || inner.amounts.some((amount) => amount.unit !== null)) return null;
  return printNode(inner);
}

/** Reports a property that there is not. Gives the names that may have been meant. */
export function unknownProperty(
  ctx: Reporter,
  row: BlockRow,
  entry: Property,
  name: string,
): readonly string[] {
  const names = row.properties.map((property) => property.name);
  const synonym = propertySynonyms.find(
    (candidate) =>
      candidate.kinds.includes(row.kind) && candidate.wrong.includes(name) && !names.includes(name),
  );
  if (synonym !== undefined && (names.includes(synonym.right) || row.parts.includes(synonym.right))) {
    const plain = plainNumbers(entry.value);
    const template = plain !== null && synonym.plain !== undefined ? synonym.plain : synonym.say;
    const text = template.replace("{value}", plain ?? printNode(entry.value));
    report(
      ctx,
      "property.unknown",
      entry.path.span,
      { kind: aKind(row.kind), name, names: listNames(names) },
      {
        help: `${aKind(row.kind)} says \`${text}\`.`,
        fixes: [replace(ctx, `write \`${text}\``, entry.span, text)],
      },
    );
    return [synonym.right];
  }
  const near = nearNames(name, [...names, ...row.parts]);
  report(
    ctx,
    "property.unknown",
    entry.path.span,
    { kind: aKind(row.kind), name, names: listNames(names, 40) },
    {
      ...(near.length > 0
        ? { help: `Perhaps ${near.map((candidate) => `\`${candidate}\``).join(" or ")}?` }
        : {}),
      ...(names.length === 0 ? { help: "It holds blocks only." } : {}),
      fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, entry.path.span, candidate)),
    },
  );
  return near;
}
