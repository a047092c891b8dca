/**
 * The strongly connected component of each vertex of a digraph, numbered from 0 (Tarjan 1972). A component is numbered
 * before those from which it can be reached.
 */
export function strongComponents(arcs: readonly (readonly number[])[]): Int32Array {
  const size = arcs.length;
  const component = new Int32Array(size).fill(-1);
  const reached = new Int32Array(size);
  const low = new Int32Array(size);
  const scanned = new Int32Array(size);
  const open: number[] = [];
  let clock = 0;
  let components = 0;

  const enter = (vertex: number, path: number[]) => {
    reached[vertex] = low[vertex] = ++clock;
    open.push(vertex);
    path.push(vertex);
  };

  for (let root = 0; root < size; root++) {
    if (reached[root]) continue;
    const path: number[] = [];
    enter(root, path);
    for (let vertex = path.at(-1); vertex !== undefined; vertex = path.at(-1)) {
      const next = arcs[vertex]?.[scanned[vertex] ?? 0];
      if (next !== undefined) {
        scanned[vertex] = (scanned[vertex] ?? 0) + 1;
        if (!reached[next]) enter(next, path);
        else if (component[next] === -1) low[vertex] = Math.min(low[vertex] ?? 0, reached[next] ?? 0);
        continue;
      }
      path.pop();
      const parent = path.at(-1);
      if (parent !== undefined) low[parent] = Math.min(low[parent] ?? 0, low[vertex] ?? 0);
      if (low[vertex] !== reached[vertex]) continue;
      let member: number | undefined;
      do {
        member = open.pop();
        if (member !== undefined) component[member] = components;
      } while (member !== undefined && member !== vertex);
      components++;
    }
  }
  return component;
}

/** A closed walk along arcs, each vertex once; absent where there is none. A vertex with an arc to itself is one. */
export function anyCycle(arcs: readonly (readonly number[])[]): number[] | undefined {
  const scanned = new Int32Array(arcs.length);
  const onPath = new Uint8Array(arcs.length);
  const done = new Uint8Array(arcs.length);
  for (let root = 0; root < arcs.length; root++) {
    const path = [root];
    onPath[root] = 1;
    for (let vertex = path.at(-1); vertex !== undefined; vertex = path.at(-1)) {
      const next = arcs[vertex]?.[scanned[vertex] ?? 0];
      if (next === undefined) {
        path.pop();
        onPath[vertex] = 0;
        done[vertex] = 1;
        continue;
      }
      scanned[vertex] = (scanned[vertex] ?? 0) + 1;
      if (onPath[next]) return path.slice(path.indexOf(next));
      if (done[next]) continue;
      path.push(next);
      onPath[next] = 1;
    }
  }
  return undefined;
}
