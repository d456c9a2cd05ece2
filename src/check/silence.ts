import type { Place } from "../core/span.js";
import type { Silence } from "../model/types.js";
import type { Block, Property } from "../syntax/ast.js";
import type { BlockRow } from "../vocabulary/property.js";
import { type WarningCode, warningTable } from "../vocabulary/warnings.js";
import { blockName, kindOf } from "./block.js";
import { type Context, here, replace, report } from "./context.js";
import { expand } from "./like.js";
import { nearNames, suggestion } from "./suggest.js";

/** Reads `silence { ... }`: codes of warnings, each with the reason why it is accepted. */
export function checkSilence(ctx: Context, block: Block, row: BlockRow): readonly Silence[] {
  blockName(ctx, block, row);
  const { entries } = expand(ctx, block, row.kind);
  const first = new Map<string, Place>();
  return entries.flatMap(({ entry, ctx: home }): readonly Silence[] => {
    if (entry.kind === "block") {
      kindOf(home, entry, row.parts, "inside `silence`");
      return [];
    }
    const code = knownCode(home, entry);
    if (code === null) return [];
    const before = first.get(code);
    if (before !== undefined) {
      const related = [{ place: before, text: "first value" }];
      report(home, "property.twice", entry.path.span, { name: code }, { label: "second value", related });
      return [];
    }
    first.set(code, here(home, entry.path.span));
    const { value } = entry;
    if (value.kind === "damaged") return [];
    if (value.kind !== "text" || value.value.trim() === "") {
      report(home, "silence.reason", value.span, { code });
      return [];
    }
    return [{ code, because: value.value, origin: here(home, entry.span) }];
  });
}

/** The code of a warning that may be silenced; null after a finding. */
function knownCode(ctx: Context, entry: Property): WarningCode | null {
  const { span } = entry.path;
  const code = entry.path.parts.map((part) => part.text).join(".");
  const found = warningTable.find((candidate) => candidate.code === code);
  if (found === undefined) {
    const near = nearNames(
      code,
      warningTable.map((candidate) => candidate.code),
    );
    report(
      ctx,
      "silence.unknown",
      span,
      { code },
      {
        ...(near.length > 0 ? { help: suggestion(near, [], "") } : {}),
        fixes: near.map((name) => replace(ctx, `write \`${name}\``, span, `\`${name}\``)),
      },
    );
    return null;
  }
  if (found.safety) {
    report(ctx, "silence.safety", span, { code });
    return null;
  }
  return found.code;
}
