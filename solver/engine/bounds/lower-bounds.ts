/**
 * Lower bounds of the tiers, valid for every plan that is no worse in the tiers before.
 *
 * A tier of kind `latest` is bounded by refutation (Klein and Scholl 1999): where propagation, energy or a clique contradicts "at most V", the
 * tier is at least V + 1. Sums are bounded term by term.
 */
import type { CompiledMode } from '../compiled.ts';
import { isBoundable, limitTier } from '../search/limits.ts';
import type { Workshop } from '../search/workshop.ts';
import { Cliques } from './cliques.ts';
import { Energy } from './energy.ts';
import { longestPaths } from './longest-paths.ts';

export class LowerBounds {
  /** Bound of each tier; −Infinity for tiers after the first until `restart` was called. */
  readonly bounds: Float64Array;
  private energy: Energy | null = null;
  private cliques: Cliques | null = null;

  constructor(private readonly workshop: Workshop) {
    this.bounds = Float64Array.from(workshop.compiled.tiers, (_, tier) =>
      tier === 0 ? this.plainBound(tier) : -Infinity,
    );
  }

  /** Notes that the tier is at least this. @returns true when that is news */
  raise(tier: number, value: number): boolean {
    if (value <= (this.bounds[tier] as number)) return false;
    this.bounds[tier] = value;
    return true;
  }

  /** Forgets bounds that were drawn under values of earlier tiers which no longer stand: those after the tier. */
  restart(tier: number): void {
    for (let k = tier + 1; k < this.bounds.length; k++) this.bounds[k] = this.plainBound(k);
  }

  /** How many tiers from the first on are met by their bounds. */
  provenTiers(values: Float64Array): number {
    let tier = 0;
    while (tier < values.length && values[tier] === this.bounds[tier]) tier++;
    return tier;
  }

  /**
   * Raises the bound of a tier between what is known and the plan's value as far as refutation reaches.
   *
   * @param values the best plan's values: tiers before this one are held to theirs
   * @returns true when the bound rose
   */
  refine(tier: number, values: Float64Array): boolean {
    const { compiled, budget } = this.workshop;
    const before = this.bounds[tier] as number;
    if (!isBoundable(compiled, tier)) {
      this.raise(tier, this.underTiers(tier, values, () => this.plainBound(tier)) ?? 0);
      return (this.bounds[tier] as number) > before;
    }
    // Made before a tier is held to a value: what is surely there or in order then is so always.
    this.cliques ??= new Cliques(this.workshop.store, () => budget.over());
    // Refuting is monotone in V: longer and longer steps up while it works, then halving.
    let low = before;
    let high = values[tier] as number;
    for (let step = 1; low < high && !budget.over(); step *= 4) {
      const middle = Math.min(high - 1, low + step - 1);
      if (!this.isRefuted(tier, middle, values)) {
        high = middle;
        break;
      }
      low = middle + 1;
    }
    while (low < high && !budget.over()) {
      const middle = Math.floor((low + high) / 2);
      if (this.isRefuted(tier, middle, values)) low = middle + 1;
      else high = middle;
    }
    return this.raise(tier, low);
  }

  private isRefuted(tier: number, value: number, values: Float64Array): boolean {
    const { store, propagation, budget } = this.workshop;
    const work = store.work;
    const refuted = this.underTiers(
      tier,
      values,
      () => !limitTier(store, tier, value) || !propagation.propagate() || this.overloaded(),
    );
    budget.spend(store.work - work);
    return refuted ?? true;
  }

  private overloaded(): boolean {
    const { store, propagation } = this.workshop;
    const isOver = (): boolean => this.workshop.budget.over();
    this.energy ??= new Energy(store, propagation.timetable, isOver);
    return this.energy.overloaded() >= 0 || this.cliques?.overloaded() === true;
  }

  /** Answers a question while the tiers before are held to the plan's values; null when that is contradictory. */
  private underTiers<T>(tier: number, values: Float64Array, ask: () => T): T | null {
    const { store, propagation } = this.workshop;
    const mark = store.trail.mark();
    const { scope } = propagation.timetable;
    propagation.timetable.scope = store.compiled.horizon;
    let open = true;
    for (let k = 0; open && k < tier; k++) open = limitTier(store, k, values[k] as number);
    for (let task = 0; task < store.compiled.taskCount; task++) store.enqueueTask(task);
    open = open && propagation.propagate();
    const answer = open ? ask() : null;
    propagation.clear();
    store.trail.undo(mark);
    propagation.timetable.scope = scope;
    return answer;
  }

  /** What the present bounds of the store say. */
  private plainBound(tier: number): number {
    const { store, compiled } = this.workshop;
    const rule = compiled.tiers[tier];
    if (rule === undefined) return 0;
    switch (rule.kind) {
      case 'latest': {
        let bound = 0;
        for (const { node, plus, minus } of rule.terms) {
          if (!this.isSure(node)) continue;
          const time = minus ? -this.latest(node) : this.earliest(node);
          bound = Math.max(bound, plus + time);
        }
        return bound;
      }
      case 'waiting': {
        let bound = 0;
        for (const { weight, from, to, free } of rule.terms) {
          if (weight === 0 || !this.isSure(from) || !this.isSure(to)) continue;
          const path = longestPaths(store, from)[to] as number;
          const least = Math.max(path, this.earliest(to) - this.latest(from));
          bound += weight * Math.max(0, least - free);
        }
        return bound;
      }
      case 'cost':
        return this.costBound();
      case 'changes':
        return this.changesBound(rule.resources);
    }
  }

  private isSure(node: number): boolean {
    return node === this.workshop.compiled.origin || this.workshop.store.isPresent(node >> 1);
  }
  private earliest(node: number): number {
    return this.workshop.store.cells[2 * node] as number;
  }
  private latest(node: number): number {
    return -(this.workshop.store.cells[2 * node + 1] as number);
  }

  /** Each task's least cost; where presence or mode hang on one choice, the tasks of its options are weighed against each other. */
  private costBound(): number {
    const { store, compiled } = this.workshop;
    const { taskCount, presence, table, taskChoice, optionCount, optionMode, taskModes } = compiled;
    const ofOption = Array.from(optionCount, (count) => new Float64Array(count));
    let bound = 0;
    for (let task = 0; task < taskCount; task++) {
      if (store.isAbsent(task)) continue;
      const literals = table.literalsOf(presence[task] as number);
      const choice = taskChoice[task] as number;
      if (choice >= 0 && literals.every((literal) => literal.choice === choice)) {
        const base = optionMode.start[task] as number;
        const options = ofOption[choice] as Float64Array;
        for (let option = 0; option < options.length; option++) {
          const mode = optionMode.items[base + option] as number;
          const held = literals.every((literal) => literal.options.includes(option));
          if (mode >= 0 && held) options[option] = (options[option] as number) + this.leastCost(task, mode);
        }
        continue;
      }
      let least = Infinity;
      for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++)
        least = Math.min(least, this.leastCost(task, taskModes.items[k] as number));
      if (least === Infinity) continue;
      const [only] = literals;
      if (store.isPresent(task)) bound += least;
      else if (literals.length === 1 && only !== undefined) {
        const options = ofOption[only.choice] as Float64Array;
        for (const option of only.options) options[option] = (options[option] as number) + least;
      } else bound += Math.min(0, least);
    }
    ofOption.forEach((options, choice) => {
      let least = Infinity;
      options.forEach((cost, option) => {
        if (store.isAlive(choice, option)) least = Math.min(least, cost);
      });
      bound += least;
    });
    return bound;
  }

  private leastCost(task: number, mode: number): number {
    const { store, compiled } = this.workshop;
    const { costFixed, costPerMinute, shortest, longest } = compiled.modes[mode] as CompiledMode;
    const least = Math.max(shortest, store.shortest(task), store.earliestEnd(task) - store.latestStart(task));
    const most = Math.min(longest, store.longest(task), store.latestEnd(task) - store.earliestStart(task));
    return costFixed + costPerMinute * (costPerMinute >= 0 ? least : Math.max(least, most));
  }

  /** Groups that surely meet on a resource follow each other at least once each. */
  private changesBound(resources: readonly number[]): number {
    const { store, compiled } = this.workshop;
    const { taskCount, taskModes, modes, group } = compiled;
    const onEach = resources.map(() => new Set<number>());
    const onAny = new Set<number>();
    for (let task = 0; task < taskCount; task++) {
      if (!store.isPresent(task)) continue;
      const touched: Set<number>[] = [];
      for (let k = taskModes.start[task] as number; k < (taskModes.start[task + 1] as number); k++) {
        const index = taskModes.items[k] as number;
        if (!this.workshop.propagation.timetable.isOpen(task, index)) continue;
        touched.push(new Set((modes[index] as CompiledMode).uses.map((use) => use.resource)));
      }
      resources.forEach((resource, k) => {
        if (touched.every((set) => set.has(resource))) onEach[k]?.add(group[task] as number);
      });
      if (touched.every((set) => resources.some((resource) => set.has(resource)))) onAny.add(group[task] as number);
    }
    const each = onEach.reduce((sum, groups) => sum + Math.max(0, groups.size - 1), 0);
    return Math.max(each, onAny.size - new Set(resources).size);
  }
}
