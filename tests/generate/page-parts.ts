import { layers } from "../arch/layer-table.js";
import { commandDocs, commandsDocs } from "./command-docs.js";
import { quantityDocs } from "./quantity-docs.js";
import { type Region, table } from "./regions.js";
import { blockDocs, vocabularyDocs } from "./vocabulary-docs.js";

function layersDocs(): string {
  const rows = [...layers].map(([folder, { imports, packages, node }]) => [
    `\`${folder}\``,
    imports.map((name) => `\`${name.startsWith("/") ? `${name.slice(1)}.ts` : name}\``).join(", ") ||
      "nothing",
    [...packages, ...(node === true ? ["`node:`"] : [])].join(", ") || "-",
  ]);
  return table(["folder", "may import, besides itself", "packages"], rows);
}

/** The text of a made part of a page. */
export function makePart({ kind, of }: Region): string {
  switch (kind) {
    case "quantity":
      return quantityDocs(of);
    case "block":
      return blockDocs(of);
    case "command":
      return commandDocs(of);
    case "commands":
      return commandsDocs();
    case "layers":
      return layersDocs();
    default: {
      const made = vocabularyDocs(kind);
      if (made === null) throw new Error(`nothing is known of the made part "${kind}"`);
      return made;
    }
  }
}
