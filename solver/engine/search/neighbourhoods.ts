/**
 * Parts of a plan to build anew while the rest is kept: a stretch of time, the users of a resource, one group, the tasks that
 * decide the first tier, a few blocks by chance. Always whole blocks, with the containers that their tasks open or close.
 */
import type { Compiled, CompiledMode } from '../compiled.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';
import type { Plan } from './plan.ts';

export const neighbourhoodKinds = ['window', 'resource', 'group', 'late', 'random'] as const;
export type NeighbourhoodKind = (typeof neighbourhoodKinds)[number];

export interface Neighbourhood {
  /** 1 for the tasks to build anew. */
  readonly free: Uint8Array;
  /** What is kept at or after this minute may be moved as one; where nothing is to be moved, a minute past all. */
  readonly after: number;
}

/**
 * Chooses what to build anew.
 *
 * @param share about how much of the blocks, per cent
 */
export function chooseNeighbourhood(
  kind: NeighbourhoodKind,
  compiled: Compiled,
  structure: Structure,
  plan: Plan,
  share: number,
  random: Random,
): Neighbourhood {
  const { taskCount } = compiled;
  const free = new Uint8Array(taskCount);
  const present: number[] = [];
  let finish = 1;
  for (let task = 0; task < taskCount; task++) {
    if ((plan.start[task] as number) < 0) continue;
    present.push(task);
    finish = Math.max(finish, plan.end[task] as number);
  }
  if (present.length === 0) return { free, after: finish + 1 };
  const add = (task: number): void => freeBlock(structure, free, structure.block[task] as number);
  const width = Math.max(2, Math.ceil((finish * share) / 100));
  let after = finish + 1;
  switch (kind) {
    case 'window': {
      const from = random.below(finish + width) - width;
      after = from + width;
      for (const task of present)
        if (
          (plan.start[task] as number) < after &&
          (plan.end[task] as number) > from &&
          structure.isContainer[task] === 0
        )
          add(task);
      break;
    }
    case 'resource': {
      const users = present.filter((task) => modeOf(compiled, plan, task).uses.length > 0);
      if (users.length === 0) break;
      const { uses } = modeOf(compiled, plan, users[random.below(users.length)] as number);
      const resource = uses[random.below(uses.length)]?.resource ?? -1;
      const span = Math.min(finish, width * 3);
      const from = random.below(Math.max(1, finish - span + 1));
      for (const task of users) {
        if ((plan.start[task] as number) >= from + span || (plan.end[task] as number) <= from) continue;
        if (modeOf(compiled, plan, task).uses.some((use) => use.resource === resource)) add(task);
      }
      break;
    }
    case 'group': {
      const group = compiled.group[present[random.below(present.length)] as number];
      for (const task of present) if (compiled.group[task] === group) add(task);
      break;
    }
    case 'late': {
      const from = finish - width;
      for (const task of present) if ((plan.end[task] as number) > from && structure.isContainer[task] === 0) add(task);
      addRandom(structure, present, free, Math.ceil((structure.blockTasks.start.length * share) / 300), random);
      break;
    }
    case 'random':
      addRandom(structure, present, free, Math.ceil((structure.blockTasks.start.length * share) / 100), random);
      break;
  }
  freeContainers(structure, free);
  return { free, after };
}

function modeOf(compiled: Compiled, plan: Plan, task: number): CompiledMode {
  return compiled.modes[plan.mode[task] as number] as CompiledMode;
}

function addRandom(
  structure: Structure,
  present: readonly number[],
  free: Uint8Array,
  count: number,
  random: Random,
): void {
  for (let k = 0; k < count; k++)
    freeBlock(structure, free, structure.block[present[random.below(present.length)] as number] as number);
}

function freeBlock(structure: Structure, free: Uint8Array, block: number): void {
  const { start, items } = structure.blockTasks;
  for (let k = start[block] as number; k < (start[block + 1] as number); k++) free[items[k] as number] = 1;
}

function freeContainers(structure: Structure, free: Uint8Array): void {
  const { closes, opens } = structure;
  for (let task = 0; task < free.length; task++) {
    if (free[task] === 0) continue;
    for (let k = closes.start[task] as number; k < (closes.start[task + 1] as number); k++)
      free[closes.items[k] as number] = 1;
    for (let k = opens.start[task] as number; k < (opens.start[task + 1] as number); k++)
      free[opens.items[k] as number] = 1;
  }
}
