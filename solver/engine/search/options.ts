/**
 * Which options of a choice a dive tries, and in what order: those asked for, or those under which the task at hand may be soonest.
 */
import type { CompiledMode } from '../compiled.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Store } from '../propagation/store.ts';
import type { Random } from '../random.ts';
import type { Structure } from '../structure.ts';
import type { DiveOrders } from './dive.ts';

/** Open options of a choice, each with what decides ties and the least measure that the task can have under it: lateness times 8, and the tie. */
export interface Candidates {
  readonly options: readonly number[];
  readonly draws: readonly number[];
  readonly promises: number[];
}

/** Levels of chance among options that are equally good. */
const TIES = 8;

export class Options {
  /** Set by the dive before it begins. */
  orders!: DiveOrders;
  private readonly store: Store;

  constructor(
    private readonly propagation: Propagation,
    private readonly structure: Structure,
    private readonly random: Random,
  ) {
    this.store = propagation.store;
  }

  /** The option that the guide asks for, or chance, or without a task the leanest; −1 where the task itself is to be asked. */
  led(choice: number, task: number): number {
    const { store, structure, orders, random } = this;
    const guided = orders.guide[choice] as number;
    if (guided >= 0 && store.isAlive(choice, guided)) return guided;
    const { start, items } = structure.leanest;
    const from = start[choice] as number;
    const until = start[choice + 1] as number;
    const whim = structure.shapes[choice] === 1 ? orders.shapeWhim : orders.whim;
    if (whim > 0 && random.percent(whim)) {
      let pick = random.below(store.openOptions(choice));
      for (let k = from; k < until; k++)
        if (store.isAlive(choice, items[k] as number) && pick-- === 0) return items[k] as number;
    }
    if (task >= 0) return -1;
    for (let k = from; k < until; k++) if (store.isAlive(choice, items[k] as number)) return items[k] as number;
    return -1;
  }

  candidates(choice: number, task: number): Candidates {
    const { store, structure, random } = this;
    const { start, items } = structure.leanest;
    const options: number[] = [];
    const draws: number[] = [];
    const promises: number[] = [];
    for (let k = start[choice] as number; k < (start[choice + 1] as number); k++) {
      const option = items[k] as number;
      if (!store.isAlive(choice, option)) continue;
      const draw = random.below(TIES);
      options.push(option);
      draws.push(draw);
      promises.push(this.soonest(choice, task, option) * TIES + draw);
    }
    return { options, draws, promises };
  }

  /** What an option in force is worth to the task, in the measure of the candidates; less is better. */
  measure(task: number, draw: number): number {
    return this.lateness(task) * TIES + draw;
  }

  /** How late (backward: early) the task is, by start and end together; less is better. */
  private lateness(task: number): number {
    const { cells } = this.store;
    const at = 4 * task + (this.orders.backward ? 1 : 0);
    return (cells[at] as number) + (cells[at + 2] as number);
  }

  /** The least lateness of the task under an option, as far as the room for its mode tells. */
  private soonest(choice: number, task: number, option: number): number {
    const { store, orders, propagation } = this;
    const { taskChoice, optionMode, modes } = store.compiled;
    const index =
      taskChoice[task] === choice ? (optionMode.items[(optionMode.start[task] as number) + option] ?? -1) : -1;
    if (index < 0) return this.lateness(task);
    const mode = modes[index] as CompiledMode;
    const length = Math.max(mode.shortest, store.shortest(task));
    if (orders.backward) {
      const end = propagation.timetable.lastFit(task, mode, length);
      return -end - Math.min(end - length, store.latestStart(task));
    }
    const start = propagation.timetable.firstFit(task, mode, length);
    return start + Math.max(start + length, store.earliestEnd(task));
  }
}
