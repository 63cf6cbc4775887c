/** The parts that make a problem a multi-mode project, each null where the problem asks for more. */
import { stocksOf } from '../learning/model/budgets.ts';
import type { LatestTier, Problem } from '../problem.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import { inOrder } from './plain-project.ts';

export interface ModeList {
  /** Modes of a task: `firstMode[task] … firstMode[task + 1] − 1`, in the order of its choice's options. */
  readonly firstMode: Int32Array;
  /** By mode: minutes. */
  readonly length: Int32Array;
  /** By choice: its one task. */
  readonly choiceTask: Int32Array;
}

/** Modes of fixed length, always one of them; each choice is one task's own. */
export function modesOf({ tasks, choices, horizon }: Problem): ModeList | null {
  const choiceTask = new Int32Array(choices.length).fill(-1);
  const firstMode = new Int32Array(tasks.length + 1);
  const lengths: number[] = [];
  for (const [t, { when = [], choice, modes }] of tasks.entries()) {
    if (when.length > 0) return null;
    if (choice !== undefined) {
      const c = choices.findIndex(({ id }) => id === choice);
      if (choiceTask[c] !== -1) return null;
      choiceTask[c] = t;
    }
    for (const mode of modes) {
      if (mode === null || mode.shortest !== mode.longest || mode.shortest > horizon) return null;
      const { state, uses } = mode;
      const soils = uses.some((use) => use.leaves !== undefined || use.avoids !== undefined || use.cleans === true);
      if (state !== undefined || soils) return null;
      lengths.push(mode.shortest);
    }
    firstMode[t + 1] = lengths.length;
  }
  if (choices.length === 0 || choiceTask.includes(-1)) return null;
  return { firstMode, length: Int32Array.from(lengths), choiceTask };
}

export interface ModeDraws {
  readonly stocks: number;
  /** By stock: what there is. */
  readonly stock: Int32Array;
  /** By mode: what it draws from each stock: `drawn[mode × stocks + stock]`. */
  readonly drawn: Int32Array;
}

/** Reservoirs that are stocks, drawn from by the modes taken alone. */
export function drawsOf(problem: Problem, { firstMode, length }: ModeList): ModeDraws | null {
  const choiceOf = new Map(problem.tasks.map(({ id, choice }) => [id, choice]));
  for (const { initial, capacity = initial, events } of problem.reservoirs) {
    if (capacity < initial) return null;
    for (const { point, if: when = [] } of events)
      if (when.some(({ choice }) => choice !== choiceOf.get(point.task))) return null;
  }
  const stocks = stocksOf(problem);
  if (stocks.length !== problem.reservoirs.length) return null;
  const drawn = new Int32Array(length.length * stocks.length);
  stocks.forEach((stock, s) =>
    stock.drawn.forEach((byMode, t) =>
      byMode.forEach((amount, m) => (drawn[(firstMode[t]! + m) * stocks.length + s] = amount)),
    ),
  );
  return { stocks: stocks.length, stock: Int32Array.from(stocks, ({ amount }) => amount), drawn };
}

export interface ModeLags {
  /** By task: earliest start that lags from the origin allow. */
  readonly release: Int32Array;
  /** For each task those that must wait for it, and those it waits for. */
  readonly after: SparseLists;
  readonly before: SparseLists;
  /** By entry of `after`: 1 where the lag counts from the end, 0 where from the start; its minutes, ≥ 0. */
  readonly fromEnd: Int32Array;
  readonly least: Int32Array;
  /** By entry of `before`: the same lag's entry of `after`. */
  readonly entryOfBefore: Int32Array;
  /** Tasks in an order that respects all lags. */
  readonly topological: Int32Array;
}

/** Shortest lags to starts, without a cycle. */
export function lagsOf({ tasks, lags }: Problem): ModeLags | null {
  const taskIndex = new Map(tasks.map(({ id }, t) => [id, t]));
  const release = new Int32Array(tasks.length);
  const byFrom = tasks.map((): { to: number; end: 0 | 1; least: number }[] => []);
  for (const { from, to, least, if: when = [] } of lags) {
    if (when.length > 0 || to === 'origin' || to.at === 'end' || least < 0) return null;
    const t = taskIndex.get(to.task)!;
    if (from === 'origin') release[t] = Math.max(release[t]!, least);
    else byFrom[taskIndex.get(from.task)!]!.push({ to: t, end: from.at === 'end' ? 1 : 0, least });
  }
  const before = emptyLists(tasks.length);
  const entries = emptyLists(tasks.length);
  let entry = 0;
  byFrom.forEach((list, from) =>
    list.forEach(({ to }) => {
      before[to]!.push(from);
      entries[to]!.push(entry++);
    }),
  );
  const after = byFrom.map((list) => list.map(({ to }) => to));
  const topological = inOrder(after, before);
  if (topological === null) return null;
  const all = byFrom.flat();
  return {
    release,
    after: packLists(after),
    before: packLists(before),
    fromEnd: Int32Array.from(all, ({ end }) => end),
    least: Int32Array.from(all, ({ least }) => least),
    entryOfBefore: packLists(entries).items,
    topological,
  };
}

export interface ModeUses {
  /** By task: the resources that any of its modes uses, ascending. */
  readonly uses: SparseLists;
  /** By mode: amounts of those, 0 where the mode has no length. */
  readonly amounts: readonly Int32Array[];
}

export function usesOf({ tasks, resources }: Problem): ModeUses {
  const index = new Map(resources.map(({ id }, r) => [id, r]));
  const uses = tasks.map(({ modes }) => {
    const used = modes.flatMap((mode) => mode?.uses.map(({ resource }) => index.get(resource)!) ?? []);
    return [...new Set(used)].sort((a, b) => a - b);
  });
  const amounts = tasks.flatMap(({ modes }, t) =>
    modes.map((mode) =>
      Int32Array.from(uses[t]!, (r) =>
        mode === null || mode.longest === 0
          ? 0
          : mode.uses.reduce((sum, use) => sum + (index.get(use.resource) === r ? use.amount : 0), 0),
      ),
    ),
  );
  return { uses: packLists(uses), amounts };
}

export interface ModeDues {
  /** By task: minutes that the tier adds to its start, and to its end; −1 where it does not count it. */
  readonly dueOfStart: Int32Array;
  readonly dueOfEnd: Int32Array;
}

/** A tier that is the latest of some starts and ends, each with minutes added. */
export function duesOf({ tasks }: Problem, { terms }: LatestTier): ModeDues | null {
  const taskIndex = new Map(tasks.map(({ id }, t) => [id, t]));
  const dueOfStart = new Int32Array(tasks.length).fill(-1);
  const dueOfEnd = new Int32Array(tasks.length).fill(-1);
  for (const { point, plus = 0, minus = false } of terms) {
    if (minus || plus < 0) return null;
    const due = point.at === 'end' ? dueOfEnd : dueOfStart;
    const t = taskIndex.get(point.task)!;
    due[t] = Math.max(due[t]!, plus);
  }
  return { dueOfStart, dueOfEnd };
}
