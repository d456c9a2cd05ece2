import { partsTree } from "../index.js";
import { fenceParts } from "./fence.js";
import type { PageOptions } from "./page.js";

/** What is asked of a node of the page's tree; any node of mdast has it. */
export interface TreeNode {
  readonly type: string;
  readonly position?:
    | { readonly start: { readonly line: number; readonly column: number }; readonly end: object }
    | undefined;
  children?: TreeNode[];
}

/** The file that a tree was made from, as unified hands it over. */
export interface TreeFile {
  readonly path?: string | undefined;
}

interface Messages extends TreeFile {
  message?(reason: string, place: object): unknown;
}

interface CodeNode extends TreeNode {
  readonly lang?: string | null;
  readonly meta?: string | null;
  readonly value: string;
}

const isCode = (node: TreeNode): node is CodeNode => node.type === "code";

/**
 * A plugin of remark: every fence ` ```halfshade ` of a page becomes its report, table or figure, as nodes of the tree and
 * never as HTML. What is wrong stands in the page in place of the fence, and is a message of the file.
 */
export function remarkHalfshade(options: PageOptions = {}): (tree: TreeNode, file?: TreeFile) => void {
  return (tree, file) => {
    const page = options.page ?? file?.path;
    replaceFences(tree, page === undefined ? options : { ...options, page }, file ?? {});
  };
}

function replaceFences(parent: TreeNode, options: PageOptions, file: TreeFile): void {
  if (parent.children === undefined) return;
  parent.children = parent.children.flatMap((node) => {
    replaceFences(node, options, file);
    if (!isCode(node)) return [node];
    const line = node.position?.start.line ?? 1;
    const made = fenceParts(
      { info: `${node.lang ?? ""} ${node.meta ?? ""}`, text: node.value, line },
      options,
    );
    if (made === null) return [node];
    if (made.problem !== null) tell(file, node, made.problem.message);
    return partsTree(made.parts) as unknown as TreeNode[];
  });
}

function tell(file: TreeFile, node: TreeNode, message: string): void {
  const place = { place: node.position, source: "halfshade", ruleId: "recipe" };
  (file as Messages).message?.(message, place);
}
