/**
 * Things that a plan under construction still lacks: a cleaning between two placed uses, a filling before a draw, a draw before
 * an overflow. Search asks for the first of them and for the tasks that could serve it.
 */
import type { CompiledEvent, CompiledMode, CompiledReservoir } from '../compiled.ts';
import type { Propagation } from '../propagation/propagation.ts';
import type { Chain } from '../propagation/chain.ts';
import { CHAINS, SEEN_BY_DEMANDS, type Store } from '../propagation/store.ts';

export class Demands {
  /** What the last `find` found: a resource that wants a cleaning, or a reservoir that wants an event. */
  kind: 'none' | 'clean' | 'event' = 'none';
  /** The task that is in want: it must move when nothing serves it. */
  dependent = -1;
  /** For a cleaning: the use that soiled last. */
  source = -1;
  private resource = -1;
  private from = 0;
  private until = 0;
  private reservoir = -1;
  private sign = 1;
  private readonly store: Store;
  /** 1 for tasks that some other may soil, or that may soil some other. */
  private readonly concerned: Uint8Array;
  /** Those that have a known start and are not found in want of nothing. */
  private readonly unsettled: Chain;
  /** Placed tasks not yet looked at. */
  private readonly fresh: number[] = [];

  constructor(private readonly propagation: Propagation) {
    this.store = propagation.store;
    const { soilMarks, modes, taskCount } = this.store.compiled;
    this.concerned = new Uint8Array(taskCount);
    this.unsettled = this.store.chain(CHAINS.unsettled);
    for (const mode of modes)
      if (this.concerned[mode.task] === 0 && soilMarks.concerns(mode)) this.concerned[mode.task] = 1;
  }

  /** Looks for something lacking. @returns true when there is, described in the fields */
  find(): boolean {
    this.kind = 'none';
    this.gatherFresh();
    for (const task of this.fresh) if (this.wantsClean(task)) return true;
    for (let r = 0; r < this.store.compiled.reservoirs.length; r++) if (this.findEvent(r)) return true;
    return false;
  }

  /** Notes the placed tasks not yet looked at, by number. */
  private gatherFresh(): void {
    const { store, unsettled, fresh } = this;
    const { cells, trail } = store;
    const seen = store.searched + SEEN_BY_DEMANDS;
    const before = cells[seen] as number;
    const count = cells[store.anchoredCount] as number;
    for (let k = before; k < count; k++) {
      const task = store.anchored[0][k] as number;
      if (this.concerned[task] === 1) unsettled.add(task);
    }
    if (count > before) trail.set(seen, count);
    fresh.length = 0;
    let last = -1;
    for (let task = unsettled.first(); task >= 0;) {
      const next = unsettled.next(task);
      if (cells[store.settled + task] === 1 || store.isAbsent(task)) unsettled.remove(task, last);
      else {
        if (store.isPlaced(task)) fresh.push(task);
        last = task;
      }
      task = next;
    }
    if (fresh.length > 1) fresh.sort((a, b) => a - b);
  }

  /**
   * True where the task has been placed since the last look and is soiled, or soils one placed before. What was in want of nothing stays so
   * while tasks are only added, so each pair is looked at once, when its second task is placed.
   */
  private wantsClean(task: number): boolean {
    const { store } = this;
    if (this.findClean(task)) return true;
    for (const other of this.soiledSettled(task)) if (this.findClean(other)) return true;
    store.trail.set(store.settled + task, 1);
    return false;
  }

  /** Tasks settled before that the task soils; by number, so that the first in want is the same however they came about. */
  private soiledSettled(task: number): number[] {
    const { store } = this;
    const { compiled, soilUsers } = store;
    const found: number[] = [];
    for (const { resource, soil } of (compiled.modes[store.mode(task)] as CompiledMode).uses) {
      const tasks = soilUsers.tasks[resource] as Int32Array;
      const soils = soilUsers.soils[resource] as Int32Array;
      const count = soil === 0 ? 0 : soilUsers.count(resource);
      for (let k = 0; k < count; k++) {
        const other = tasks[k] as number;
        if (other === task || store.cells[store.settled + other] !== 1) continue;
        if (compiled.soilMarks.meet(soil, soils[k] as number)) found.push(other);
      }
      store.work += count >> 3;
    }
    return found.sort((a, b) => a - b);
  }

  /** A placed task with soil put where it avoids it, and no cleaning between. */
  private findClean(v: number): boolean {
    const { store } = this;
    if (!store.isPlaced(v)) return false;
    const { compiled, soilUsers } = store;
    const until = store.earliestStart(v);
    const end = store.earliestEnd(v);
    store.work++;
    // Each resource is judged by its last use that soils.
    for (const { resource, soil } of (compiled.modes[store.mode(v)] as CompiledMode).uses) {
      const tasks = soilUsers.tasks[resource] as Int32Array;
      const soils = soilUsers.soils[resource] as Int32Array;
      const count = soil === 0 ? 0 : soilUsers.count(resource);
      let latest = -1;
      let source = -1;
      for (let k = 0; k < count; k++) {
        const u = tasks[k] as number;
        if (u === v || !compiled.soilMarks.meet(soils[k] as number, soil)) continue;
        if (!store.isPlaced(u) || end <= store.earliestStart(u)) continue;
        const over = store.earliestEnd(u);
        if (over > latest || (over === latest && u < source)) {
          latest = over;
          source = u;
        }
      }
      store.work += count >> 3;
      if (latest < 0 || this.isCleaned(resource, latest, until)) continue;
      this.kind = 'clean';
      this.source = source;
      this.dependent = v;
      this.resource = resource;
      this.from = latest;
      this.until = until;
      return true;
    }
    return false;
  }

  private isCleaned(resource: number, from: number, until: number): boolean {
    const { store } = this;
    const { start, items } = store.compiled.cleaningTasks;
    for (let k = start[resource] as number; k < (start[resource + 1] as number); k++) {
      const c = items[k] as number;
      if (!store.isPresent(c) || !this.surelyCleans(c, resource)) continue;
      if (store.earliestStart(c) >= from && store.latestEnd(c) <= until) return true;
    }
    return false;
  }

  private surelyCleans(task: number, resource: number): boolean {
    const { store } = this;
    if (store.mode(task) >= 0) return this.cleans(store.mode(task), resource);
    const { start, items } = store.compiled.taskModes;
    for (let k = start[task] as number; k < (start[task + 1] as number); k++) {
      const mode = items[k] as number;
      if (!this.cleans(mode, resource) && this.propagation.timetable.isOpen(task, mode)) return false;
    }
    return true;
  }

  private cleans(mode: number, resource: number): boolean {
    for (const use of (this.store.compiled.modes[mode] as CompiledMode).uses)
      if (use.cleans && use.resource === resource) return true;
    return false;
  }

  private findEvent(index: number): boolean {
    const { store } = this;
    const reservoir = store.compiled.reservoirs[index] as CompiledReservoir;
    for (const event of reservoir.events) {
      if (!store.isTrue(event.condition) || !this.isFixed(event.node)) continue;
      const t = store.cells[2 * event.node] as number;
      let least = reservoir.initial;
      let most = reservoir.initial;
      for (const other of reservoir.events) {
        if (!store.isTrue(other.condition)) continue;
        const latest = -(store.cells[2 * other.node + 1] as number);
        // An event not yet placed counts for what it is wanted for as soon as it must come by t.
        const fixed = this.isFixed(other.node);
        if (latest <= t && (fixed || other.amount > 0)) least += other.amount;
        if (latest <= t && (fixed || other.amount < 0)) most += other.amount;
      }
      store.work += reservoir.events.length;
      if (least >= 0 && most <= reservoir.capacity) continue;
      this.kind = 'event';
      this.dependent = event.node >> 1;
      this.reservoir = index;
      this.until = t;
      this.sign = least < 0 ? 1 : -1;
      return true;
    }
    return false;
  }

  private isFixed(node: number): boolean {
    return (this.store.cells[2 * node] as number) + (this.store.cells[2 * node + 1] as number) === 0;
  }

  /** Candidates that may serve the demand found last, best first: cleaning tasks, or events (by index). */
  candidates(): number[] {
    const { store } = this;
    const sure: number[] = [];
    const optional: number[] = [];
    if (this.kind === 'clean') {
      const { start, items } = store.compiled.cleaningTasks;
      for (let k = start[this.resource] as number; k < (start[this.resource + 1] as number); k++) {
        const c = items[k] as number;
        if (store.isAbsent(c)) continue;
        if (Math.max(store.earliestStart(c), this.from) + store.shortest(c) > Math.min(store.latestEnd(c), this.until))
          continue;
        (store.isPresent(c) ? sure : optional).push(c);
      }
    } else if (this.kind === 'event') {
      const reservoir = store.compiled.reservoirs[this.reservoir] as CompiledReservoir;
      reservoir.events.forEach((event, index) => {
        if (event.amount * this.sign <= 0 || store.isFalse(event.condition)) return;
        if ((store.cells[2 * event.node] as number) > this.until) return;
        // Already counted: present and surely by then.
        if (store.isTrue(event.condition) && -(store.cells[2 * event.node + 1] as number) <= this.until) return;
        (store.isTrue(event.condition) ? sure : optional).push(index);
      });
    }
    // What cleans least besides is spent first: other soil may need the rest.
    if (this.kind === 'clean') optional.sort((a, b) => this.size(a) - this.size(b) || a - b);
    return [...sure, ...optional];
  }

  /**
   * For the cleaning found last, which nothing could serve: when the first cleaning that is left could be over, if the task in want
   * came later; −1 when none is left.
   */
  room(): number {
    const { store, propagation } = this;
    const { cleaningTasks, taskModes, modes, horizon } = store.compiled;
    let first = -1;
    for (
      let k = cleaningTasks.start[this.resource] as number;
      k < (cleaningTasks.start[this.resource + 1] as number);
      k++
    ) {
      const c = cleaningTasks.items[k] as number;
      if (store.isAbsent(c) || store.isPlaced(c)) continue;
      for (let m = taskModes.start[c] as number; m < (taskModes.start[c + 1] as number); m++) {
        const mode = modes[taskModes.items[m] as number] as CompiledMode;
        if (!this.cleans(taskModes.items[m] as number, this.resource)) continue;
        const last = horizon - mode.shortest;
        const from = Math.max(this.from, store.earliestStart(c));
        const start = propagation.timetable.firstRoom(mode, from, last, mode.shortest);
        if (start <= last && (first < 0 || start + mode.shortest < first)) first = start + mode.shortest;
      }
    }
    return first;
  }

  private size(task: number): number {
    const { taskModes, modes } = this.store.compiled;
    const mode = modes[taskModes.items[taskModes.start[task] as number] as number] as CompiledMode;
    return mode.uses.length * 10 + mode.shortest;
  }

  /** Lets the candidate serve the demand. @returns false when that is contradictory at once */
  serve(candidate: number): boolean {
    const { store } = this;
    if (this.kind === 'event') {
      const event = store.compiled.reservoirs[this.reservoir]?.events[candidate] as CompiledEvent;
      return store.establish(event.condition) && store.raise(2 * event.node + 1, -this.until);
    }
    if (!store.establish(store.compiled.presence[candidate] as number)) return false;
    const { start, items } = store.compiled.optionMode;
    const base = start[candidate] as number;
    const choice = store.compiled.taskChoice[candidate] as number;
    for (let k = base; choice >= 0 && k < (start[candidate + 1] as number); k++) {
      const mode = items[k] as number;
      if (mode >= 0 && this.cleans(mode, this.resource)) continue;
      if (!store.removeOption(choice, k - base)) return false;
    }
    return store.raise(4 * candidate, this.from) && store.raise(4 * candidate + 3, -this.until);
  }
}
