/**
 * Moves from one way to go on to another: a neighbour on the critical chain is overtaken, or goes elsewhere.
 *
 * Only what is tight between now and the finish can make it earlier, so moves are taken from there (critical arcs, as in the
 * neighbourhoods for job shops: Van Laarhoven, Aarts, Lenstra 1992; with a change of machine: Mastrolilli, Gambardella 2000).
 */
import { byNumber, endNode, startNode } from '../explain/by-number.ts';
import type { OrderArc } from '../explain/plan-order.ts';
import type { Problem } from '../problem.ts';

/** The sequences of exclusive resources, and the options taken. */
export interface Way {
  readonly choices: readonly number[];
  readonly sequences: ReadonlyMap<string, readonly number[]>;
}

const taskOf = (node: number): number => (node - 1) >> 1;

/** Arcs along one longest chain from a finish node back to a bound. */
export function criticalArcs(
  arcs: readonly OrderArc[],
  times: Int32Array,
  lower: Int32Array,
  finish: readonly number[],
): readonly OrderArc[] {
  const tightInto = new Map<number, OrderArc[]>();
  for (const arc of arcs) {
    if (arc.to === 0 || arc.from === 0 || times[arc.from]! < 0 || times[arc.to]! < 0) continue;
    if (times[arc.from]! + arc.least !== times[arc.to]!) continue;
    const list = tightInto.get(arc.to);
    if (list === undefined) tightInto.set(arc.to, [arc]);
    else list.push(arc);
  }
  const latest = Math.max(...finish.map((node) => times[node]!));
  const seen = new Set<number>();
  const chain: OrderArc[] = [];
  let frontier = finish.filter((node) => times[node] === latest);
  while (frontier.length > 0) {
    const next: number[] = [];
    for (const node of frontier) {
      if (seen.has(node) || times[node] === lower[node]) continue;
      seen.add(node);
      for (const arc of tightInto.get(node) ?? []) {
        chain.push(arc);
        next.push(arc.from);
      }
    }
    frontier = next;
  }
  return chain;
}

/** A task moved along the sequence of a resource to right before another. */
export function overtaken(way: Way, resource: string, task: number, before: number): Way {
  const list = way.sequences.get(resource)!.filter((each) => each !== task);
  list.splice(list.indexOf(before), 0, task);
  return { ...way, sequences: new Map(way.sequences).set(resource, list) };
}

/** A choice that takes another option; the tasks on it join the sequences of their new resources by time. */
export function elsewhere(
  problem: Problem,
  way: Way,
  choice: number,
  option: number,
  present: (task: number, choices: readonly number[]) => boolean,
  times: Int32Array,
): Way | null {
  const choices = way.choices.with(choice, option);
  const lists = new Map(way.sequences);
  for (const task of byNumber(problem).tasksOf[choice]!) {
    const { modes } = problem.tasks[task]!;
    if (present(task, way.choices) !== present(task, choices)) return null;
    if (!present(task, choices)) continue;
    const uses = (mode: number): readonly string[] =>
      (modes[mode]?.uses ?? []).filter((use) => use.amount > 0).map((use) => use.resource);
    const [before, after] = [uses(way.choices[choice]!), uses(option)];
    for (const resource of before)
      if (!after.includes(resource) && lists.has(resource))
        lists.set(
          resource,
          lists.get(resource)!.filter((each) => each !== task),
        );
    for (const resource of after) {
      if (before.includes(resource)) continue;
      const known = lists.get(resource);
      if (known === undefined) {
        if (exclusive(problem, resource)) lists.set(resource, [task]);
        continue;
      }
      const list = [...known];
      const start = times[startNode(task)]!;
      // Behind what is under way then, before what comes later.
      const at = list.findIndex((each) => times[startNode(each)]! + times[endNode(each)]! > 2 * start);
      list.splice(at < 0 ? list.length : at, 0, task);
      lists.set(resource, list);
    }
  }
  return { choices, sequences: lists };
}

const exclusive = (problem: Problem, resource: string): boolean =>
  problem.resources.some((each) => each.id === resource && each.capacity === 1);

export interface MoveGround {
  readonly problem: Problem;
  readonly way: Way;
  readonly times: Int32Array;
  /** Tasks that may not move: begun, or due soon. */
  readonly still: (task: number) => boolean;
  /** Choices that may not change. */
  readonly fixed: (choice: number) => boolean;
  readonly present: (task: number, choices: readonly number[]) => boolean;
}

/** Ways one move away that could shorten the chain, each once. */
export function* moves(ground: MoveGround, chain: readonly OrderArc[]): Generator<Way> {
  const { problem, way, times, still, fixed, present } = ground;
  const position = byNumber(problem).choices;
  const tried = new Set<string>();
  const fresh = (name: string): boolean => !tried.has(name) && tried.add(name) !== undefined;
  for (const { from, to, why } of chain) {
    if (why.kind !== 'resource' && why.kind !== 'soil') continue;
    const [earlier, later] = [taskOf(from), taskOf(to)];
    for (const task of [later, earlier]) {
      const id = problem.tasks[task]!.choice;
      if (still(task) || id === undefined) continue;
      const choice = position.get(id)!;
      if (fixed(choice)) continue;
      for (const option of problem.choices[choice]!.options.keys()) {
        if (option === way.choices[choice] || !fresh(`${choice}=${option}`)) continue;
        const moved = elsewhere(problem, way, choice, option, present, times);
        if (moved !== null) yield moved;
      }
    }
    const list = way.sequences.get(why.resource);
    if (why.kind !== 'resource' || list === undefined || still(earlier) || still(later)) continue;
    if (fresh(`${later}<${earlier}`)) yield overtaken(way, why.resource, later, earlier);
    // Farther forward, past all that has not begun and is not due.
    const first = list.find((task) => !still(task));
    if (
      first !== undefined &&
      first !== earlier &&
      list.indexOf(first) < list.indexOf(earlier) &&
      fresh(`${later}<${first}`)
    )
      yield overtaken(way, why.resource, later, first);
    const last = list.at(-1)!;
    if (last !== later && fresh(`${last}<${earlier}`)) yield overtaken(way, why.resource, last, earlier);
  }
}
