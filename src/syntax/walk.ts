import type {
  Argument,
  Block,
  Claim,
  Define,
  Entry,
  Expect,
  Expression,
  File,
  Find,
  Header,
  Hold,
  Item,
  Keep,
  Let,
  Measured,
  Meet,
  Name,
  Path,
  Prefer,
  Property,
  Reading,
  Remove,
  Show,
  Solve,
  Sweep,
  Table,
  TextLiteral,
  Title,
  Use,
  Value,
  Variant,
} from "./ast.js";

/** Any node of the tree that has a kind. */
export type Node =
  | File
  | Header
  | Title
  | Item
  | Entry
  | Value
  | Claim
  | Name
  | Path
  | Reading
  | Sweep
  | Show
  | Remove
  | Keep
  | Find
  | Meet
  | Prefer
  | Use
  | Let
  | Define
  | Expect
  | Hold
  | Table
  | Variant
  | Solve
  | Measured;

const none: readonly Node[] = [];

/** The nodes right below a node, in the order of the text. Arguments and columns are passed through to what they hold. */
export function children(node: Node): readonly Node[] {
  switch (node.kind) {
    case "name":
    case "text":
    case "unknown":
    case "quantity":
    case "f-number":
    case "iso":
    case "ratio":
    case "damaged":
      return none;
    case "header":
      return [node.word];
    case "path":
      return node.parts;
    case "file":
      return [...present(node.header, node.title), ...node.items];
    case "title":
      return [node.word, node.text, ...present(node.of, node.variant ?? null)];
    case "use":
      return [...node.names, node.from];
    case "let":
      return [node.name, node.value];
    case "define":
      return [node.block];
    case "block":
      return blockChildren(node);
    case "property":
      return propertyChildren(node);
    case "list":
      return node.items;
    case "group":
      return node.members;
    case "relation":
      return [node.left, node.right];
    case "negation":
      return [node.operand];
    case "sum":
      return node.terms.map((term) => term.value);
    case "product":
      return node.factors.map((factor) => factor.value);
    case "toleranced":
      return [node.value, node.tolerance];
    case "reference":
      return [node.path, ...(node.args ?? []).flatMap(argumentChildren)];
    default:
      return statementChildren(node);
  }
}

type Statement = Exclude<
  Node,
  | File
  | Header
  | Title
  | Use
  | Let
  | Define
  | Block
  | Property
  | Value
  | Name
  | Path
  | TextLiteral
  | Expression
>;

function statementChildren(node: Statement): readonly Node[] {
  switch (node.kind) {
    case "expect":
      return [...node.claims, ...present(node.because)];
    case "bare":
      return [node.value];
    case "is":
      return [node.value, node.target, ...present(node.side?.of ?? null, node.within)];
    case "between":
      return [node.value, node.low, node.high];
    case "compare":
      return [node.value, node.target];
    case "hold":
      return [node.reading, ...present(node.target), ...node.by];
    case "reading":
      return [node.reading, node.value];
    case "table":
      return [node.title, ...node.lines];
    case "variant":
      return [node.title, ...present(node.from), ...node.lines];
    case "solve":
      return [...present(node.title), ...node.lines];
    case "measured":
      return node.lines;
    case "sweep":
      return sweepChildren(node);
    case "show":
      return node.columns.flatMap((column) => [column.value, ...present(column.title)]);
    case "remove":
      return [node.path];
    case "keep":
      return [node.what];
    case "find":
      return [node.path, node.low, node.high, ...present(node.near)];
    case "meet":
      return [node.claim];
    case "prefer":
      return [node.direction, node.value];
    default:
      return node satisfies never;
  }
}

function present(...nodes: readonly (Node | null)[]): readonly Node[] {
  return nodes.filter((node) => node !== null);
}

function blockChildren(block: Block): readonly Node[] {
  return [...block.words, ...present(block.like), ...block.companions, ...block.entries];
}

function propertyChildren(property: Property): readonly Node[] {
  return [property.path, ...present(property.companion), property.value];
}

function argumentChildren(argument: Argument): readonly Node[] {
  return [...present(argument.name), argument.value];
}

function sweepChildren(sweep: Sweep): readonly Node[] {
  const { range } = sweep;
  if (range.kind === "over") return [sweep.path, range.values];
  return [sweep.path, range.from, range.to, ...present(range.step)];
}

/** Calls `visit` for a node and everything below it, parents first. Trees are at most a few hundred levels deep. */
export function walk(node: Node, visit: (node: Node) => void): void {
  visit(node);
  for (const child of children(node)) walk(child, visit);
}
