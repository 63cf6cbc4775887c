/** A whole problem in the core's terms, and plans read back from it. */
import { Core } from '../core.ts';
import { Conditions } from './conditions.ts';
import { Differences } from './differences.ts';
import { addChains } from './chains.ts';
import { energyWindows } from './concurrency.ts';
import { addEnergy, addIdleEnergy } from './energy.ts';
import { addForbidden, addReservoirs, addSoil, addStates, addTotals } from './interplay.ts';
import { mannerFor } from '../manner.ts';
import { Lengths } from './lengths.ts';
import { Orders } from './orders.ts';
import { Points } from './points.ts';
import { Resources } from './resources.ts';
import { Tiers, largestValue } from './tiers.ts';
import { addSymmetry } from './symmetry.ts';
import { EarliestStart } from './earliest-start.ts';
import type { TierVariable } from './tiers.ts';
import type { Problem } from '../../problem.ts';
import type { Solution } from '../../outcome.ts';

/** Above this many bound literals (some 40 bytes each) a problem is left to other methods. */
const MOST_LITERALS = 12_000_000;
/** The same of modes of all tasks, which is known before anything is built (measured on kitchens: a gigabyte and seconds at 14,000). */
const MOST_MODES = 6_000;

/** Whether a problem has so many modes that its model is never built. */
export function isHuge(problem: Problem): boolean {
  return problem.tasks.reduce((sum, task) => sum + task.modes.length, 0) > MOST_MODES;
}

export class Model {
  readonly core: Core;
  readonly problem: Problem;
  readonly conditions: Conditions;
  readonly points: Points;
  readonly orders: Orders;
  readonly tiers: TierVariable[];
  readonly branching: EarliestStart;
  private readonly differences: Differences;
  /** By requirement name: the literal under which its lags hold. Empty unless asked for. */
  readonly selectors = new Map<string, number>();
  /** The problem has more bound literals than are worth holding; nothing may be asked of the model. */
  tooLarge: boolean = false;
  /** What tiers of kind `changes` are built with, until they are. */
  private readonly building: {
    readonly tiers: Tiers;
    readonly lengths: Lengths;
    readonly sets: readonly ReadonlySet<string>[];
  } | null = null;
  private hasChanges = false;

  /**
   * @param withSelectors whether lags with a requirement hold only under its selector
   * @param withChanges whether tiers of kind `changes` are modelled at once
   */
  constructor(problem: Problem, withSelectors: boolean, withChanges: boolean) {
    this.problem = problem;
    const core = new Core(largestValue(problem), mannerFor(problem));
    this.core = core;
    const isHard = (requirement: string | undefined): boolean => !withSelectors || requirement === undefined;
    this.conditions = new Conditions(core, problem);
    this.points = new Points(core, problem, this.conditions, isHard);
    const differences = new Differences(core, problem.horizon);
    this.differences = differences;
    if (isHuge(problem)) {
      this.tooLarge = true;
      this.orders = new Orders(core, this.conditions, this.points, differences);
      this.tiers = problem.tiers.map(() => ({ parts: [], least: 0 }));
      this.branching = new EarliestStart(this);
      return;
    }
    if (!this.points.feasible) core.dead = true;
    this.addLengths(differences);
    this.addLags(differences, isHard);
    differences.close();
    this.orders = new Orders(core, this.conditions, this.points, differences);
    const resources = new Resources(core, problem, this.points, this.orders);
    addStates(problem, this.points, this.orders);
    this.orders.close();
    resources.close();
    addSoil(problem, core, this.conditions, this.points, this.orders);
    addForbidden(problem, core, this.conditions);
    const lengths = new Lengths(core, problem, this.conditions, this.points);
    addReservoirs(problem, core, this.conditions, this.points, lengths);
    addTotals(problem, core, this.conditions, this.points, lengths);
    const tiers = new Tiers(core, problem, this.conditions, this.points, differences, lengths, this.orders);
    this.tiers = tiers.all();
    this.building = { tiers, lengths, sets: resources.groups };
    addEnergy({ problem, core, points: this.points, differences, lengths, tiers: this.tiers, sets: resources.groups });
    addChains(problem, core, this.points, lengths, this.tiers);
    addSymmetry(problem, core, this.conditions, this.points);
    this.branching = new EarliestStart(this);
    if (withChanges) this.buildChanges();
    this.seal();
  }

  private seal(): void {
    this.tooLarge = !this.core.trail.fits() || this.countLiterals() > MOST_LITERALS;
    if (!this.tooLarge) this.core.seal();
  }

  /** Models the tiers of kind `changes`, where that was not done yet; returns whether it did so. What was learned stays. */
  addChanges(): boolean {
    if (this.hasChanges || this.tooLarge) return false;
    this.core.backtrack(0);
    this.buildChanges();
    this.seal();
    return true;
  }

  private buildChanges(): void {
    this.hasChanges = true;
    if (this.building === null) return;
    const { problem, core, points, differences, building } = this;
    const { tiers, lengths, sets } = building;
    problem.tiers.forEach((tier, k) => {
      const changes = tier.kind === 'changes' ? tiers.changes(tier) : null;
      if (changes === null) return;
      this.tiers[k] = changes.variable;
      addIdleEnergy({ problem, core, points, differences, lengths, tiers: this.tiers, sets }, changes.idle);
    });
  }

  /**
   * Adds what can be in progress together as windows of energy, where that says more than the resources alone. Takes a linear program's time.
   * @returns whether it was added
   */
  addEnergyWindows(shouldStop?: () => boolean): boolean {
    const windows = energyWindows(this.problem, this.core, this.points, this.differences, shouldStop);
    if (windows !== null) this.core.extend([windows]);
    return windows !== null;
  }

  private countLiterals(): number {
    const { trail } = this.core;
    let count = 0;
    for (let x = 0; x < trail.variables; x++) count += 2 * (trail.declaredUpper(x) - trail.declaredLower(x));
    return count;
  }

  /** shortest ≤ end − start ≤ longest, by the modes still open. */
  private addLengths(differences: Differences): void {
    this.problem.tasks.forEach((task, t) => {
      const start = this.points.starts[t]!;
      const end = this.points.ends[t]!;
      const lengths = (of: 'shortest' | 'longest'): number[] => [
        ...new Set(task.modes.flatMap((mode) => (mode === null ? [] : [mode[of]]))),
      ];
      const modes = (holds: (shortest: number, longest: number) => boolean): number[] =>
        task.modes.flatMap((mode, m) => (mode !== null && holds(mode.shortest, mode.longest) ? [m] : []));
      for (const least of lengths('shortest'))
        differences.add(
          start,
          end,
          least,
          this.points.inModes(
            t,
            modes((shortest) => shortest >= least),
          ),
        );
      for (const most of lengths('longest'))
        differences.add(
          end,
          start,
          -most,
          this.points.inModes(
            t,
            modes((_, longest) => longest <= most),
          ),
        );
    });
  }

  private addLags(differences: Differences, isHard: (requirement: string | undefined) => boolean): void {
    for (const lag of this.problem.lags) {
      const guards = [
        this.points.presence(lag.from),
        this.points.presence(lag.to),
        ...this.conditions.literalsOf(lag.if),
      ];
      if (!isHard(lag.requirement)) guards.push(this.selector(lag.requirement!));
      const from = this.points.place(lag.from);
      const to = this.points.place(lag.to);
      differences.add(from, to, lag.least, this.conditions.all(guards));
    }
  }

  private selector(requirement: string): number {
    let literal = this.selectors.get(requirement);
    if (literal === undefined) {
      literal = this.conditions.boolean();
      this.selectors.set(requirement, literal);
    }
    return literal;
  }

  /** The plan that the core stands at, every variable fixed. */
  solution(): Solution {
    const { core, points } = this;
    const { trail } = core;
    return {
      choices: this.conditions.options.map((literals) => literals.findIndex((literal) => trail.isTrue(literal))),
      tasks: this.problem.tasks.map((_, t) => {
        if (!trail.isTrue(points.present[t]!)) return null;
        const start = points.starts[t]!;
        const end = points.ends[t]!;
        return { start: core.value(start.x) + start.offset, end: core.value(end.x) + end.offset };
      }),
    };
  }

  /** Literals that force a plan's choices and times. */
  literalsOf(solution: Solution): number[] {
    const { trail } = this.core;
    const literals: number[] = [];
    this.conditions.options.forEach((options, c) => literals.push(options[solution.choices[c]!]!));
    solution.tasks.forEach((task, t) => {
      if (task === null) return;
      for (const [place, time] of [
        [this.points.starts[t]!, task.start],
        [this.points.ends[t]!, task.end],
      ] as const) {
        const v = time - place.offset;
        literals.push(sealedAtLeast(trail, place.x, v), sealedAtLeast(trail, place.x, v + 1) ^ trail.negation);
      }
    });
    return literals.filter((literal) => literal !== trail.alwaysTrue);
  }
}

/** ⟦x ≥ v⟧ once the problem is sealed. */
export function sealedAtLeast(trail: Core['trail'], x: number, v: number): number {
  if (v <= trail.initial[2 * x]!) return trail.alwaysTrue;
  if (v > -trail.initial[2 * x + 1]!) return trail.alwaysFalse;
  return trail.literal(2 * x, v);
}
