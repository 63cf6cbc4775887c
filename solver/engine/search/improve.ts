/**
 * Large-neighbourhood search (Shaw 1998; Godard, Laborie and Nuijten 2005): again and again a part of the current plan is built
 * anew by a dive, under the wish to better the first tier that is not proved best.
 *
 * The rest is either **pinned** (same times; where a stretch of time is freed, what comes after it a minute or two earlier) or only
 * **led** (same choices and order, times open). Kinds that gave better plans are drawn more often. Plans no worse than the
 * current one replace it, so that plateaus are walked.
 */
import type { Budget } from '../budget.ts';
import type { Random } from '../random.ts';
import type { DiveOrders } from './dive.ts';
import { isBoundable, limitTier } from './limits.ts';
import { chooseNeighbourhood, neighbourhoodKinds, type NeighbourhoodKind } from './neighbourhoods.ts';
import { compareValues, type Plan } from './plan.ts';
import { priorityRules, type PriorityRule } from './priority-rules.ts';
import { usualStarts } from './usual-starts.ts';
import type { Workshop } from './workshop.ts';

type Style = 'pinned' | 'led';
interface Way {
  readonly kind: NeighbourhoodKind;
  readonly style: Style;
  /** Better plans found and steps spent, both fading. */
  gain: number;
  work: number;
  share: number;
}

/** Neighbourhoods without a better plan before search goes on from another one: few at first, then more and more. */
const LEAST_PATIENCE = 30;
const MOST_PATIENCE = 240;

export class Improver {
  private readonly ways: Way[];
  private readonly random: Random;
  private readonly budget: Budget;
  private current: Plan;
  private idle = 0;
  private patience = LEAST_PATIENCE;
  /** First tier that a bound already meets is passed over; set by the caller. */
  target = 0;

  constructor(
    private readonly workshop: Workshop,
    plan: Plan,
  ) {
    this.random = workshop.random;
    this.budget = workshop.budget;
    this.current = plan;
    this.ways = neighbourhoodKinds.flatMap((kind) =>
      (['pinned', 'led'] as const).map((style) => ({
        kind,
        style,
        gain: 0,
        work: style === 'pinned' ? 20_000 : 60_000,
        share: style === 'pinned' ? 30 : 20,
      })),
    );
  }

  /** One neighbourhood. @returns a tier whose present best value was proved the least there is under the tiers before it, or −1 */
  step(): number {
    const { workshop, random } = this;
    const { store, propagation } = workshop;
    if (this.idle > this.patience) this.moveOn();
    const way = this.drawWay();
    const work = store.work;
    const before = workshop.best;
    const mark = store.trail.mark();
    const tier = this.drawTier();
    const strict = isBoundable(workshop.compiled, tier) && random.percent(70);
    const { free, after } = chooseNeighbourhood(
      way.kind,
      workshop.compiled,
      workshop.structure,
      this.current,
      way.share,
      random,
    );
    const orders = this.orders(way, free);
    const hurry = strict && tier === 0 && way.kind === 'window' ? 1 + random.below(2) : 0;
    let open = this.limit(tier, strict) && (!strict || propagation.propagate());
    let refuted = -1;
    if (!open) {
      propagation.clear();
      // Nothing was kept yet, so it is the wish alone that is contradictory.
      if (strict && workshop.best !== null && compareValues(this.current.values, workshop.best.values) === 0)
        refuted = tier;
    }
    if (open && way.style === 'pinned') open = this.pin(free, orders.guide, after, hurry);
    if (open && propagation.propagate()) {
      const plan = workshop.diveOnce(orders);
      const difference = plan === null ? 1 : compareValues(plan.values, this.current.values);
      if (difference < 0) {
        this.idle = 0;
        way.gain += 1;
      }
      if (plan !== null && difference <= 0) this.current = plan;
    } else propagation.clear();
    store.trail.undo(mark);
    this.budget.spend(200);
    way.work = way.work * 0.98 + (store.work - work) * 0.02 + 20;
    way.gain *= 0.98;
    if (workshop.best === before) way.share = Math.max(8, Math.min(70, way.share + random.below(5) - 2));
    this.idle++;
    return refuted;
  }

  /** Goes on from the best plan again; from it with another shape; or from a new plan by some rule. */
  private moveOn(): void {
    const { workshop, random } = this;
    this.idle = 0;
    this.patience = Math.min(MOST_PATIENCE, this.patience * 1.15);
    if (workshop.best !== null && this.current !== workshop.best && random.percent(70)) {
      this.current = workshop.best;
      return;
    }
    if (random.percent(60)) {
      const plan = this.reshape(workshop.best ?? this.current);
      if (plan !== null) this.current = plan;
      return;
    }
    const rule = priorityRules[random.below(priorityRules.length)] as PriorityRule;
    const soilWeight = random.percent(50) ? workshop.compiled.horizon : 0;
    const plan = workshop.planByRule(rule, { failLimit: 40, whim: 25, soilWeight, shapeWhim: 60 });
    if (plan !== null) this.current = plan;
  }

  /** The plan built again in its order with one choice of shape, or a group's places, made another way. */
  private reshape(plan: Plan): Plan | null {
    const { workshop, random } = this;
    const { structure, compiled } = workshop;
    const guide = plan.choices.slice();
    structure.onDemand.forEach((flag, choice) => {
      if (flag === 1) guide[choice] = -1;
    });
    const { shaping } = structure;
    const shape = shaping.length > 0 && random.percent(70) ? (shaping[random.below(shaping.length)] as number) : -1;
    const group = compiled.group[random.below(compiled.taskCount)];
    for (let task = 0; task < compiled.taskCount; task++) {
      const moved =
        shape >= 0
          ? compiled.table.literalsOf(compiled.presence[task] as number).some((literal) => literal.choice === shape)
          : compiled.group[task] === group;
      if (!moved) continue;
      const { start, items } = structure.ownChoices;
      for (let k = start[task] as number; k < (start[task + 1] as number); k++) guide[items[k] as number] = -1;
    }
    if (shape >= 0) {
      const count = compiled.optionCount[shape] as number;
      guide[shape] = ((plan.choices[shape] as number) + 1 + random.below(Math.max(1, count - 1))) % count;
    }
    const usual = usualStarts(compiled.group, plan.start);
    const key = Float64Array.from(plan.start, (start, task) => (start < 0 ? (usual[task] as number) : start));
    return workshop.diveOnce({ backward: false, parallel: false, key, guide, whim: 0, shapeWhim: 0, failLimit: 30 });
  }

  private drawWay(): Way {
    // Better plans for the work: each way keeps a small share of the draws.
    const worth = (way: Way): number => Math.ceil(((way.gain + 0.15) * 4_000_000) / (way.work + 2_000));
    let sum = 0;
    for (const way of this.ways) sum += worth(way);
    let draw = this.random.below(sum);
    for (const way of this.ways) {
      draw -= worth(way);
      if (draw < 0) return way;
    }
    return this.ways[0] as Way;
  }

  /** The tier to better: mostly the first open one, now and then a later one. */
  private drawTier(): number {
    const last = this.workshop.compiled.tiers.length - 1;
    let tier = Math.min(this.target, Math.max(0, last));
    while (tier < last && this.random.percent(35)) tier++;
    return tier;
  }

  private limit(tier: number, strict: boolean): boolean {
    const { values } = this.current;
    for (let k = 0; k < tier; k++) if (!limitTier(this.workshop.store, k, values[k] as number)) return false;
    return tier >= values.length || limitTier(this.workshop.store, tier, (values[tier] as number) - (strict ? 1 : 0));
  }

  private orders(way: Way, free: Uint8Array): DiveOrders {
    const { workshop, random, current } = this;
    const { structure, compiled } = workshop;
    const backward = random.percent(way.style === 'led' ? 20 : 40);
    const noise = 1 + random.below(way.style === 'led' ? 30 : 120);
    const key = new Float64Array(compiled.taskCount);
    const usual = usualStarts(compiled.group, current.start);
    for (let task = 0; task < key.length; task++) {
      if ((current.start[task] as number) < 0) {
        key[task] = (backward ? -1 : 1) * (usual[task] as number) * 100;
        continue;
      }
      const at = (backward ? -(current.end[task] as number) : (current.start[task] as number)) * 100;
      key[task] = free[task] === 1 ? at + (random.below(201) - 100) * noise : at;
    }
    const guide = current.choices.slice();
    for (let task = 0; task < free.length; task++) {
      if (free[task] === 0) continue;
      const { start, items } = structure.ownChoices;
      for (let k = start[task] as number; k < (start[task + 1] as number); k++)
        if (random.percent(70)) guide[items[k] as number] = -1;
    }
    for (const choice of structure.shaping) guide[choice] = current.choices[choice] as number;
    if (structure.shaping.length > 0 && random.percent(20))
      guide[structure.shaping[random.below(structure.shaping.length)] as number] = -1;
    structure.onDemand.forEach((flag, choice) => {
      if (flag === 1) guide[choice] = -1;
    });
    return {
      backward,
      parallel: way.style === 'pinned' && random.percent(30),
      key,
      guide,
      whim: random.percent(30) ? 15 : 0,
      shapeWhim: 70,
      failLimit: 6,
    };
  }

  /** Keeps everything that is not free where it is; what starts at `after` or later `hurry` minutes earlier. */
  private pin(free: Uint8Array, guide: Int32Array, after: number, hurry: number): boolean {
    const { store, structure, compiled } = this.workshop;
    const { current } = this;
    for (let choice = 0; choice < guide.length; choice++) {
      const option = guide[choice] as number;
      if (option >= 0 && !store.assign(choice, option)) return false;
    }
    for (let task = 0; task < compiled.taskCount; task++) {
      let start = current.start[task] as number;
      if (start < 0 || free[task] === 1) continue;
      // Cleanings and fillings near what is built anew may go.
      const choice = compiled.taskChoice[task] as number;
      if (choice >= 0 && structure.onDemand[choice] === 1) {
        if (this.random.percent(40)) continue;
        if (!store.assign(choice, current.choices[choice] as number)) return false;
      }
      let end = current.end[task] as number;
      if (start >= after) start -= hurry;
      if (end > after) end -= hurry;
      if (!store.raise(4 * task, start) || !store.raise(4 * task + 1, -start)) return false;
      if (!store.raise(4 * task + 2, end) || !store.raise(4 * task + 3, -end)) return false;
    }
    return true;
  }
}
