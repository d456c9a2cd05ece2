/**
 * A tree of boxes along the axes, each round one thing or round the two boxes below it; the search along a ray leaves
 * out whatever the ray's way does not enter.
 */
export interface BoxTree {
  /** Six numbers a node: least and greatest x, y, z in pairs. The root is node 0. */
  readonly bounds: Float64Array;
  /** Two numbers a node: its children, or -1 and the thing it holds. */
  readonly links: Int32Array;
  readonly nodes: number;
  /** Room for the nodes that wait; written over by every search. */
  readonly waiting: Int32Array;
}

/** Builds the tree over some things whose boxes are given six numbers each, cut where the boxes' area comes out least. */
export function boxTree(boxes: Float64Array, things: readonly number[]): BoxTree {
  const most = Math.max(1, 2 * things.length - 1);
  const bounds = new Float64Array(most * 6);
  const links = new Int32Array(most * 2);
  const nodes = things.length === 0 ? 0 : build(boxes, things, bounds, links, 0);
  return { bounds, links, nodes, waiting: new Int32Array(things.length + 1) };
}

/** Writes the tree over some of the things with its root at `node`, and gives the first number after its nodes. */
function build(
  boxes: Float64Array,
  part: readonly number[],
  bounds: Float64Array,
  links: Int32Array,
  node: number,
): number {
  enclose(boxes, part, bounds, node * 6);
  if (part.length === 1) {
    links[2 * node] = -1;
    links[2 * node + 1] = part[0] as number;
    return node + 1;
  }
  const { order, cut } = bestCut(boxes, part);
  const right = build(boxes, order.slice(0, cut), bounds, links, node + 1);
  links[2 * node] = node + 1;
  links[2 * node + 1] = right;
  return build(boxes, order.slice(cut), bounds, links, right);
}

function enclose(boxes: Float64Array, part: readonly number[], out: Float64Array, at: number): void {
  for (let axis = 0; axis < 3; axis++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const thing of part) {
      low = Math.min(low, boxes[6 * thing + 2 * axis] as number);
      high = Math.max(high, boxes[6 * thing + 2 * axis + 1] as number);
    }
    // Room for rounding, and a thickness for what is flat.
    out[at + 2 * axis] = low - 1e-7;
    out[at + 2 * axis + 1] = high + 1e-7;
  }
}

/** The order along an axis, and where to cut it, with the least sum of area times number of things. */
function bestCut(boxes: Float64Array, part: readonly number[]): { order: readonly number[]; cut: number } {
  let least = Number.POSITIVE_INFINITY;
  let best = part;
  let cut = part.length >> 1;
  const areas = new Float64Array(part.length);
  const box = new Float64Array(6);
  for (let axis = 0; axis < 3; axis++) {
    const order = [...part].sort((a, b) => middle(boxes, a, axis) - middle(boxes, b, axis) || a - b);
    empty(box);
    for (let i = 0; i < order.length; i++) areas[i] = grow(box, boxes, 6 * (order[i] as number));
    empty(box);
    for (let i = order.length - 1; i > 0; i--) {
      const after = grow(box, boxes, 6 * (order[i] as number));
      const cost = after * (order.length - i) + (areas[i - 1] as number) * i;
      if (cost < least) {
        least = cost;
        best = order;
        cut = i;
      }
    }
  }
  return { order: best, cut };
}

/** Twice the middle of a thing's box along an axis. */
const middle = (boxes: Float64Array, thing: number, axis: number): number =>
  (boxes[6 * thing + 2 * axis] as number) + (boxes[6 * thing + 2 * axis + 1] as number);

function empty(box: Float64Array): void {
  for (let k = 0; k < 6; k += 2) {
    box[k] = Number.POSITIVE_INFINITY;
    box[k + 1] = Number.NEGATIVE_INFINITY;
  }
}

/** Widens a box to hold another and gives half its surface. */
function grow(box: Float64Array, boxes: Float64Array, at: number): number {
  for (let k = 0; k < 6; k += 2) {
    box[k] = Math.min(box[k] as number, boxes[at + k] as number);
    box[k + 1] = Math.max(box[k + 1] as number, boxes[at + k + 1] as number);
  }
  const x = (box[1] as number) - (box[0] as number);
  const y = (box[3] as number) - (box[2] as number);
  const z = (box[5] as number) - (box[4] as number);
  return x * y + y * z + z * x;
}
