/** Strongly connected components of a directed graph (Kosaraju; Sharir 1981). */

/**
 * @param nodes how many nodes there are
 * @param edges pairs of nodes, from and to
 * @returns the least node of each node's component
 */
export function componentLeaders(nodes: number, edges: readonly (readonly [number, number])[]): Int32Array {
  const leaving: number[][] = Array.from({ length: nodes }, () => []);
  const entering: number[][] = Array.from({ length: nodes }, () => []);
  for (const [from, to] of edges) {
    leaving[from]!.push(to);
    entering[to]!.push(from);
  }
  const finished: number[] = [];
  const visited = new Uint8Array(nodes);
  const next = new Int32Array(nodes);
  for (let root = 0; root < nodes; root++) {
    if (visited[root] === 1) continue;
    const path = [root];
    visited[root] = 1;
    while (path.length > 0) {
      const node = path.at(-1)!;
      const to = leaving[node]![next[node]!++];
      if (to === undefined) finished.push(path.pop()!);
      else if (visited[to] === 0) {
        visited[to] = 1;
        path.push(to);
      }
    }
  }
  const leader = new Int32Array(nodes).fill(-1);
  for (const root of finished.reverse()) {
    if (leader[root]! >= 0) continue;
    const members = [root];
    leader[root] = root;
    for (let at = 0; at < members.length; at++)
      for (const from of entering[members[at]!]!)
        if (leader[from]! < 0) {
          leader[from] = root;
          members.push(from);
        }
    const least = Math.min(...members);
    for (const member of members) leader[member] = least;
  }
  return leader;
}
