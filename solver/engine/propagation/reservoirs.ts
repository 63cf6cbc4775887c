/**
 * Reservoirs: the level after all events of each minute stays between 0 and the capacity.
 *
 * At minute `t` the most there can be is the initial level, plus every filling that may have come by `t`, less every draw that must
 * have come by `t`; the least is the mirror of it. A most below 0 or a least above the capacity is a contradiction. A draw is
 * pushed to the first minute at which the most allows it. (Laborie 2003; Neumann and Schwindt 2003.) After the last event the most is
 * known better: of draws that hang on one choice the cheapest option counts, and options that are too dear are dropped.
 */
import type { CompiledReservoir } from '../compiled.ts';
import { emptyLists, packLists, type SparseLists } from '../sparse-lists.ts';
import type { Store } from './store.ts';

export class Reservoirs {
  readonly dirty: Uint8Array;
  anyDirty = false;
  private readonly store: Store;
  private readonly ofTask: SparseLists;
  /** For each reservoir the choices on which draws hang alone, with what is drawn under each option. */
  private readonly byChoice: readonly (readonly { readonly choice: number; readonly drawn: Int32Array }[])[];
  /** For each event of each reservoir, 1 when it is counted in `byChoice`. */
  private readonly isByChoice: readonly Uint8Array[];
  private readonly ofChoice: SparseLists;

  constructor(store: Store) {
    this.store = store;
    const { reservoirs, taskCount } = store.compiled;
    this.dirty = new Uint8Array(reservoirs.length);
    const lists = emptyLists(taskCount);
    reservoirs.forEach((reservoir, r) => {
      for (const event of reservoir.events) {
        const list = lists[event.node >> 1];
        if (list !== undefined && !list.includes(r)) list.push(r);
      }
    });
    this.ofTask = packLists(lists);
    const { table, optionCount } = store.compiled;
    const ofChoice = emptyLists(optionCount.length);
    this.isByChoice = reservoirs.map((reservoir) =>
      Uint8Array.from(reservoir.events, (event) =>
        event.amount < 0 && table.literalsOf(event.condition).length === 1 ? 1 : 0,
      ),
    );
    this.byChoice = reservoirs.map((reservoir, r) => {
      const drawn = new Map<number, Int32Array>();
      reservoir.events.forEach((event, e) => {
        const [literal] = table.literalsOf(event.condition);
        if (this.isByChoice[r]?.[e] !== 1 || literal === undefined) return;
        const options = drawn.get(literal.choice) ?? new Int32Array(optionCount[literal.choice] ?? 0);
        drawn.set(literal.choice, options);
        for (const option of literal.options) options[option] = (options[option] ?? 0) - event.amount;
      });
      for (const choice of drawn.keys()) {
        ofChoice[choice]?.push(r);
        store.watched[choice] = 1;
      }
      return [...drawn].map(([choice, options]) => ({ choice, drawn: options }));
    });
    this.ofChoice = packLists(ofChoice);
  }

  /** Marks the reservoirs with draws that hang on the choice. */
  touchChoice(choice: number): void {
    const { start, items } = this.ofChoice;
    const until = start[choice + 1] as number;
    for (let k = start[choice] as number; k < until; k++) {
      this.dirty[items[k] as number] = 1;
      this.anyDirty = true;
    }
  }

  /** Marks the reservoirs that the task has events in. */
  touch(task: number): void {
    const { start, items } = this.ofTask;
    const until = start[task + 1] as number;
    for (let k = start[task] as number; k < until; k++) {
      this.dirty[items[k] as number] = 1;
      this.anyDirty = true;
    }
  }

  touchAll(): void {
    this.dirty.fill(1);
    this.anyDirty = this.dirty.length > 0;
  }

  /** Checks and pushes in every marked reservoir. */
  update(): boolean {
    this.anyDirty = false;
    for (let r = 0; r < this.dirty.length; r++) {
      if (this.dirty[r] === 0) continue;
      this.dirty[r] = 0;
      if (!this.balance(r) || !this.updateOne(this.store.compiled.reservoirs[r] as CompiledReservoir)) return false;
    }
    return true;
  }

  /** The most that can be left after all events, with the cheapest option of every choice. */
  private balance(index: number): boolean {
    const { store } = this;
    const choices = this.byChoice[index] ?? [];
    if (choices.length === 0) return true;
    const { events, initial } = store.compiled.reservoirs[index] as CompiledReservoir;
    const counted = this.isByChoice[index] as Uint8Array;
    let most = initial;
    for (let e = 0; e < events.length; e++) {
      const { amount, condition } = events[e] as { amount: number; condition: number };
      if (counted[e] === 1) continue;
      if (amount > 0 ? !store.isFalse(condition) : store.isTrue(condition)) most += amount;
    }
    for (let k = 0; k < choices.length; k++) {
      const { choice, drawn } = choices[k] as { choice: number; drawn: Int32Array };
      most -= this.cheapest(choice, drawn);
    }
    store.work += events.length + choices.length * 3;
    if (most < 0) return false;
    for (let k = 0; k < choices.length; k++) {
      const { choice, drawn } = choices[k] as { choice: number; drawn: Int32Array };
      if (store.openOptions(choice) === 1) continue;
      const spare = most + this.cheapest(choice, drawn);
      for (let option = 0; option < drawn.length; option++)
        if ((drawn[option] as number) > spare && store.isAlive(choice, option) && !store.removeOption(choice, option))
          return false;
    }
    return true;
  }

  private cheapest(choice: number, drawn: Int32Array): number {
    let least = 2 ** 31 - 1;
    for (let option = 0; option < drawn.length; option++)
      if ((drawn[option] as number) < least && this.store.isAlive(choice, option)) least = drawn[option] as number;
    return least;
  }

  private updateOne(reservoir: CompiledReservoir): boolean {
    const { store } = this;
    const { events, initial, capacity } = reservoir;
    for (let e = 0; e < events.length; e++) {
      const { node, amount, condition } = events[e] as { node: number; amount: number; condition: number };
      if (amount === 0 || !store.isTrue(condition)) continue;
      const latest = -(store.cells[2 * node + 1] as number);
      if (amount < 0) {
        if (this.extreme(reservoir, latest, 1) + initial < 0) return false;
        const first = this.firstPossible(reservoir, e);
        if (first > latest || !store.raise(2 * node, first)) return false;
      } else if (this.extreme(reservoir, latest, -1) + initial > capacity) return false;
    }
    store.work += (events.length * events.length) >> 3;
    return true;
  }

  /** The most (`sign` 1) or least (−1) change there can be up to minute t. */
  private extreme(reservoir: CompiledReservoir, t: number, sign: 1 | -1): number {
    const { store } = this;
    let level = 0;
    for (let e = 0; e < reservoir.events.length; e++) {
      const event = reservoir.events[e] as { node: number; amount: number; condition: number };
      if (event.amount * sign > 0) {
        if (!store.isFalse(event.condition) && (store.cells[2 * event.node] as number) <= t) level += event.amount;
      } else if (store.isTrue(event.condition) && -(store.cells[2 * event.node + 1] as number) <= t)
        level += event.amount;
    }
    return level;
  }

  /** First minute at which the draw could come as far as its own minute goes. */
  private firstPossible(reservoir: CompiledReservoir, draw: number): number {
    const { store } = this;
    const { node, amount } = reservoir.events[draw] as { node: number; amount: number };
    let t = store.cells[2 * node] as number;
    const latest = -(store.cells[2 * node + 1] as number);
    while (t < latest) {
      const level = reservoir.initial + this.extreme(reservoir, t, 1) + amount;
      if (level >= 0) return t;
      let next = latest + 1;
      for (let e = 0; e < reservoir.events.length; e++) {
        const event = reservoir.events[e] as { node: number; amount: number; condition: number };
        const earliest = store.cells[2 * event.node] as number;
        if (event.amount > 0 && !store.isFalse(event.condition) && earliest > t && earliest < next) next = earliest;
      }
      t = next;
    }
    return t;
  }
}
