/**
 * What search reads off a problem once: which tasks belong together, which are containers, what comes before what, which choices
 * shape the plan and which are made only on demand.
 *
 * A **block** joins tasks that lags hold within a narrow window of each other (segments of one step, the body around them); they are
 * scheduled together. A **container** is a task of flexible length whose start others follow and whose end others push: it is
 * placed after its contents.
 */
import type { Arc, Compiled, CompiledMode } from './compiled.ts';
import { emptyLists, packLists, placesOf, type SparseLists } from './sparse-lists.ts';

export interface Structure {
  readonly block: Int32Array;
  readonly blockTasks: SparseLists;
  readonly isContainer: Uint8Array;
  /** For each task the containers whose end it pushes, and those whose start it follows. */
  readonly closes: SparseLists;
  readonly opens: SparseLists;
  /** For each task the tasks with a lag from it (so that they bound its latest times) and to it (its earliest), with conditions. */
  readonly bounders: SparseLists;
  readonly bounderCondition: Int32Array;
  readonly raisers: SparseLists;
  readonly raiserCondition: Int32Array;
  /** For each task the tasks that lags put before it and after it, through containers too; each with the condition of it. */
  readonly before: SparseLists;
  readonly beforeCondition: Int32Array;
  readonly after: SparseLists;
  readonly afterCondition: Int32Array;
  /** For each task the choices that its own mode and its conditional lags hang on. */
  readonly ownChoices: SparseLists;
  /** Choices that decide which tasks there are and are made first, in order of the problem. */
  readonly shaping: readonly number[];
  /** 1 for those. */
  readonly shapes: Uint8Array;
  /** 1 for choices whose optional tasks only clean or fill: made when something needs them. */
  readonly onDemand: Uint8Array;
  /** For each choice its options, those with the fewest optional tasks first. */
  readonly leanest: SparseLists;
}

/** Two nodes this close (minutes of play between them) are of one block. */
const NARROW = 60;

export function readStructure(compiled: Compiled): Structure {
  const { taskCount, arcs } = compiled;
  const isContainer = findContainers(compiled);
  const block = findBlocks(compiled);
  const blockCount = block.reduce((most, b) => Math.max(most, b + 1), 0);
  const blockTasks = emptyLists(blockCount);
  block.forEach((b, task) => blockTasks[b]?.push(task));
  const closes = emptyLists(taskCount);
  const opens = emptyLists(taskCount);
  for (const arc of arcs) {
    const from = arc.from >> 1;
    const to = arc.to >> 1;
    if (from === to || from === taskCount || to === taskCount || arc.least < 0) continue;
    if (isContainer[to] === 1 && (arc.to & 1) === 1) closes[from]?.push(to);
    if (isContainer[from] === 1 && (arc.from & 1) === 0) opens[to]?.push(from);
  }
  const ties = new Pairs();
  for (const arc of arcs) {
    const from = arc.from >> 1;
    const to = arc.to >> 1;
    if (from === to || from === taskCount || to === taskCount) continue;
    if (isContainer[from] === 1 || isContainer[to] === 1) continue;
    ties.add(from, to, arc.all);
  }
  const bounders = ties.byFirst(taskCount);
  const raisers = ties.bySecond(taskCount);
  const { before, after } = findOrder(compiled, isContainer);
  const { shaping, onDemand, leanest } = readChoices(compiled);
  const shapes = new Uint8Array(onDemand.length);
  for (const choice of shaping) shapes[choice] = 1;
  return {
    block,
    blockTasks: packLists(blockTasks),
    isContainer,
    closes: packLists(closes),
    opens: packLists(opens),
    bounders: bounders.tasks,
    bounderCondition: bounders.conditions,
    raisers: raisers.tasks,
    raiserCondition: raisers.conditions,
    before: before.tasks,
    beforeCondition: before.conditions,
    after: after.tasks,
    afterCondition: after.conditions,
    ownChoices: packLists(findOwnChoices(compiled)),
    shaping,
    shapes,
    onDemand,
    leanest,
  };
}

/** Shortest and longest length of a task over all its modes. */
function lengths(compiled: Compiled, task: number): [number, number] {
  let shortest = 2 ** 30;
  let longest = 0;
  const { start, items } = compiled.taskModes;
  for (let k = start[task] as number; k < (start[task + 1] as number); k++) {
    const mode = compiled.modes[items[k] as number] as CompiledMode;
    shortest = Math.min(shortest, mode.shortest);
    longest = Math.max(longest, mode.longest);
  }
  return [shortest, longest];
}

/** True for lags that put their second task after something of the first. */
function isOrdering(arc: Arc): boolean {
  return arc.least >= 0 && !((arc.from & 1) === 0 && (arc.to & 1) === 1);
}

/** Tasks two by two, each pair with the condition of it. */
class Pairs {
  private readonly firsts: number[] = [];
  private readonly seconds: number[] = [];
  private readonly conditions: number[] = [];

  add(first: number, second: number, condition: number): void {
    this.firsts.push(first);
    this.seconds.push(second);
    this.conditions.push(condition);
  }

  /** For each task the seconds of the pairs in which it is first, and the conditions, as the pairs came. */
  byFirst(taskCount: number): Partners {
    return this.partners(placesOf(taskCount, this.firsts), this.seconds);
  }

  bySecond(taskCount: number): Partners {
    return this.partners(placesOf(taskCount, this.seconds), this.firsts);
  }

  private partners({ start, items }: SparseLists, others: readonly number[]): Partners {
    return {
      tasks: { start, items: items.map((pair) => others[pair] as number) },
      conditions: items.map((pair) => this.conditions[pair] as number),
    };
  }
}

interface Partners {
  readonly tasks: SparseLists;
  readonly conditions: Int32Array;
}

interface Ordered {
  readonly task: number;
  readonly condition: number;
}

/**
 * Which tasks come before which. A lag from the end of a container stands for one from each task that closes it, a lag to its start
 * for one to each task that opens it.
 */
function findOrder(compiled: Compiled, isContainer: Uint8Array): { before: Partners; after: Partners } {
  const { taskCount, arcs, table } = compiled;
  // Of containers alone.
  const closers: Ordered[][] = [];
  const openers: Ordered[][] = [];
  const between = arcs.filter(
    (arc) => arc.from >> 1 !== arc.to >> 1 && arc.from >> 1 !== taskCount && arc.to >> 1 !== taskCount,
  );
  for (const arc of between) {
    if (arc.least < 0) continue;
    const from = arc.from >> 1;
    const to = arc.to >> 1;
    if (isContainer[to] === 1 && (arc.to & 1) === 1 && isContainer[from] === 0)
      (closers[to] ??= []).push({ task: from, condition: arc.all });
    if (isContainer[from] === 1 && (arc.from & 1) === 0 && isContainer[to] === 0)
      (openers[from] ??= []).push({ task: to, condition: arc.all });
  }
  const order = new Pairs();
  for (const arc of between) {
    if (!isOrdering(arc)) continue;
    const from = arc.from >> 1;
    const to = arc.to >> 1;
    // The lags that tie a container to its contents are no order.
    if (isContainer[from] === 1 && (arc.from & 1) === 0) continue;
    if (isContainer[to] === 1 && (arc.to & 1) === 1) continue;
    if (isContainer[from] === 0 && isContainer[to] === 0) {
      order.add(from, to, arc.all);
      continue;
    }
    const firsts = isContainer[from] === 1 ? (closers[from] ?? []) : [{ task: from, condition: 0 }];
    const seconds = isContainer[to] === 1 ? (openers[to] ?? []) : [{ task: to, condition: 0 }];
    for (const first of firsts)
      for (const second of seconds) {
        if (first.task === second.task) continue;
        order.add(first.task, second.task, table.and(arc.all, first.condition, second.condition));
      }
  }
  return { before: order.bySecond(taskCount), after: order.byFirst(taskCount) };
}

function findContainers(compiled: Compiled): Uint8Array {
  const { taskCount, arcs } = compiled;
  const followed = new Uint8Array(taskCount + 1);
  const pushed = new Uint8Array(taskCount + 1);
  for (const arc of arcs) {
    if (arc.from >> 1 === arc.to >> 1 || arc.least < 0) continue;
    if ((arc.from & 1) === 0) followed[arc.from >> 1] = 1;
    if ((arc.to & 1) === 1) pushed[arc.to >> 1] = 1;
  }
  return Uint8Array.from({ length: taskCount }, (_, task) => {
    const [shortest, longest] = lengths(compiled, task);
    return longest > shortest && followed[task] === 1 && pushed[task] === 1 ? 1 : 0;
  });
}

function findBlocks(compiled: Compiled): Int32Array {
  const { taskCount, arcs, origin } = compiled;
  // The end of a task of one length is its start with an offset, so that lags between different endpoints are compared.
  const fixed = Int32Array.from({ length: taskCount }, (_, task) => {
    const [shortest, longest] = lengths(compiled, task);
    return shortest === longest ? shortest : -1;
  });
  const place = (node: number): [number, number] => {
    const length = fixed[node >> 1] ?? -1;
    return (node & 1) === 1 && length >= 0 ? [node - 1, length] : [node, 0];
  };
  const least = new Map<number, number>();
  const width = origin + 1;
  for (const arc of arcs) {
    if (arc.from === origin || arc.to === origin) continue;
    const [from, fromOffset] = place(arc.from);
    const [to, toOffset] = place(arc.to);
    const key = from * width + to;
    least.set(key, Math.max(least.get(key) ?? -Infinity, arc.least + fromOffset - toOffset));
  }
  const root = Int32Array.from({ length: taskCount }, (_, task) => task);
  const find = (task: number): number => {
    let at = task;
    while (root[at] !== at) at = root[at] as number;
    return at;
  };
  for (const [key, gap] of least) {
    const from = Math.floor(key / width);
    const to = key % width;
    const back = least.get(to * width + from);
    if (back === undefined || -back - gap > NARROW) continue;
    root[find(from >> 1)] = find(to >> 1);
  }
  const number = new Map<number, number>();
  return Int32Array.from({ length: taskCount }, (_, task) => {
    const top = find(task);
    if (!number.has(top)) number.set(top, number.size);
    return number.get(top) ?? 0;
  });
}

function findOwnChoices(compiled: Compiled): number[][] {
  const { taskCount, taskChoice, arcs, table } = compiled;
  const own = emptyLists(taskCount);
  const add = (task: number, choice: number): void => {
    const list = own[task];
    if (list !== undefined && choice >= 0 && !list.includes(choice)) list.push(choice);
  };
  taskChoice.forEach((choice, task) => add(task, choice));
  for (const arc of arcs) {
    if (arc.asked === 0) continue;
    for (const literal of table.literalsOf(arc.asked)) {
      add(arc.from >> 1, literal.choice);
      add(arc.to >> 1, literal.choice);
    }
  }
  return own;
}

function readChoices(compiled: Compiled): { shaping: number[]; onDemand: Uint8Array; leanest: SparseLists } {
  const { taskCount, presence, table, optionCount, modes, taskModes, reservoirs } = compiled;
  const count = optionCount.length;
  const serves = new Uint8Array(taskCount);
  for (const mode of modes) if (mode.uses.some((use) => use.cleans)) serves[mode.task] = 1;
  for (const { events } of reservoirs)
    for (const event of events) if (event.amount > 0 && event.node >> 1 < taskCount) serves[event.node >> 1] = 1;
  const shapes = new Uint8Array(count);
  const onDemand = new Uint8Array(count);
  const tasksUnder = Array.from(optionCount, (options) => new Float64Array(options));
  const needed = new Uint8Array(count);
  for (let task = 0; task < taskCount; task++) {
    if (taskModes.start[task] === taskModes.start[task + 1]) continue;
    for (const literal of table.literalsOf(presence[task] as number)) {
      shapes[literal.choice] = 1;
      if (serves[task] === 0) needed[literal.choice] = 1;
      for (const option of literal.options) {
        const under = tasksUnder[literal.choice];
        if (under !== undefined) under[option] = (under[option] ?? 0) + 1;
      }
    }
  }
  const shaping: number[] = [];
  for (let choice = 0; choice < count; choice++) {
    if (shapes[choice] === 0) continue;
    const least = Math.min(...(tasksUnder[choice] ?? [0]));
    if (needed[choice] === 0 && least === 0) onDemand[choice] = 1;
    else shaping.push(choice);
  }
  const leanest = tasksUnder.map((under) => {
    const options = Array.from({ length: under.length }, (_, option) => option);
    return under.every((tasks) => tasks === 0)
      ? options
      : options.sort((a, b) => (under[a] ?? 0) - (under[b] ?? 0) || a - b);
  });
  return { shaping, onDemand, leanest: packLists(leanest) };
}
