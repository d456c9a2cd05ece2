import type { LayerRow } from "./layer-table.js";
import { importsOf, type SourceFile, targetOf } from "./source-tree.js";

/** The folder of a path below `src`: `syntax`, or `/pipeline` for a file at the top. */
export function layerOf(path: string): string {
  const slash = path.indexOf("/");
  return slash < 0 ? `/${path.replace(/\.ts$/, "")}` : path.slice(0, slash);
}

/** The name of the package in an import: `a/b` of `a/b/c` when it starts with `@`, else `a`. */
export function packageOf(from: string): string {
  const parts = from.split("/");
  return from.startsWith("@") ? parts.slice(0, 2).join("/") : (parts[0] ?? from);
}

/** Every import that the table does not allow, in words with file and line. */
export function wrongImports(
  files: readonly SourceFile[],
  layers: ReadonlyMap<string, LayerRow>,
  topFiles: readonly string[],
): readonly string[] {
  const wrong: string[] = [];
  const known = new Set(files.map((file) => file.path));
  for (const file of files) {
    const layer = layerOf(file.path);
    const row = layers.get(layer);
    const top = layer.startsWith("/");
    if (top && !topFiles.includes(file.path))
      wrong.push(`${file.path}: no such file is planned at the top of src`);
    if (!top && row === undefined) wrong.push(`${file.path}: folder ${layer} has no row in the table`);
    for (const item of importsOf(file)) {
      const where = `${file.path}:${item.line}`;
      const target = targetOf(file, item.from);
      if (item.from.startsWith("node:")) {
        if (row?.node !== true) wrong.push(`${where}: ${item.from} outside of node and cli`);
      } else if (target === null) {
        const name = packageOf(item.from);
        if (row?.packages.includes(name) !== true)
          wrong.push(`${where}: package ${name} is not allowed in ${layer}`);
      } else if (target.startsWith("..")) {
        wrong.push(`${where}: ${item.from} is outside of src`);
      } else {
        if (!known.has(target)) wrong.push(`${where}: ${item.from} does not exist`);
        const other = layerOf(target);
        const allowed = top
          ? layers.get(other)?.node !== true || other === layer
          : other === layer || row?.imports.includes(other) === true;
        if (!allowed) wrong.push(`${where}: ${layer} may not import ${other}`);
      }
    }
  }
  return wrong;
}

/** A ring of files that import each other, or null. Imports of types are erased and do not count. */
export function ring(files: readonly SourceFile[]): readonly string[] | null {
  const edges = new Map<string, readonly string[]>();
  for (const file of files) {
    const targets = importsOf(file)
      .filter((item) => !item.typeOnly && !item.dynamic)
      .map((item) => targetOf(file, item.from))
      .filter((target): target is string => target !== null);
    edges.set(file.path, targets);
  }
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (name: string): readonly string[] | null => {
    const at = path.indexOf(name);
    if (at >= 0) return [...path.slice(at), name];
    if (done.has(name)) return null;
    path.push(name);
    for (const next of edges.get(name) ?? []) {
      const found = visit(next);
      if (found !== null) return found;
    }
    path.pop();
    done.add(name);
    return null;
  };
  for (const file of files) {
    const found = visit(file.path);
    if (found !== null) return found;
  }
  return null;
}

/** A ring in the table itself, or null. */
export function tableRing(layers: ReadonlyMap<string, LayerRow>): readonly string[] | null {
  const files = [...layers].map(([name, row]) => ({
    name,
    imports: row.imports.filter((other) => !other.startsWith("/")),
  }));
  const left = new Map(files.map((file) => [file.name, new Set(file.imports)]));
  for (;;) {
    const free = [...left].filter(([, imports]) => [...imports].every((other) => !left.has(other)));
    if (free.length === 0) return left.size === 0 ? null : [...left.keys()];
    for (const [name] of free) left.delete(name);
  }
}
