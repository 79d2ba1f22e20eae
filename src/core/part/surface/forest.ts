/** Which corners hang together: a forest of parents (union-find), grown as corners come in. */
export interface Forest {
  parent: Int32Array;
  /** Corners entered so far. */
  count: number;
}

/** A forest with room for about so many corners. */
export const newForest = (expected: number): Forest => ({
  parent: new Int32Array(Math.max(16, Math.ceil(expected))),
  count: 0,
});

/** Enters corners up to, not including, a number; each its own tree. */
export function enterCorners(forest: Forest, upTo: number): void {
  if (upTo > forest.parent.length) {
    const parent = new Int32Array(Math.max(upTo, Math.ceil(1.5 * forest.parent.length)));
    parent.set(forest.parent);
    forest.parent = parent;
  }
  for (; forest.count < upTo; forest.count++) forest.parent[forest.count] = forest.count;
}

/** The corner that represents the tree of a corner. */
function rootOf(parent: Int32Array, corner: number): number {
  let at = corner;
  while (parent[at] !== at) {
    const above = parent[parent[at]!]!;
    parent[at] = above;
    at = above;
  }
  return at;
}

/** Joins the trees of two corners; the smaller number represents both. */
export function join(parent: Int32Array, a: number, b: number): void {
  const rootA = rootOf(parent, a);
  const rootB = rootOf(parent, b);
  if (rootA < rootB) parent[rootB] = rootA;
  else if (rootB < rootA) parent[rootA] = rootB;
}

/** Numbers the trees from 0 in the order of their first corner: the tree of every corner, and how many there are. */
export function numberTrees(forest: Forest): { readonly treeOf: Int32Array; readonly trees: number } {
  const treeOf = new Int32Array(forest.count);
  let trees = 0;
  for (let corner = 0; corner < forest.count; corner++) {
    const root = rootOf(forest.parent, corner);
    treeOf[corner] = root === corner ? trees++ : treeOf[root]!;
  }
  return { treeOf, trees };
}
