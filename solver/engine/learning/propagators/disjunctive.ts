/**
 * Exclusive resource: the tasks on it never overlap, seen as sets.
 *
 * The pairs have order Booleans with arcs of their own. Rules in files of their own say more about sets: overload and edge finding, not
 * first, precedence sets. Each runs on time and on its mirror, where starts are negated ends.
 *
 * Example: work of 3, 4 and 5 minutes that may start at 0 and must end by 10 fits in no order, 12 > 10.
 *
 * Sources: Carlier & Pinson (1989); Vilím (2004), O(n log n) filtering algorithms; Vilím (2005) for explanations.
 */
import { EdgeFinding } from './disjunctive/edge-finding.ts';
import { NotFirst } from './disjunctive/not-first.ts';
import { PrecedenceSets } from './disjunctive/precedence-sets.ts';
import { OVERLOAD, Reasons } from './disjunctive/reasons.ts';
import { Seldom } from './disjunctive/seldom.ts';
import { SureOrders } from './disjunctive/sure-orders.ts';
import { TaskWindows, type DisjunctiveTask } from './disjunctive/task-windows.ts';
import type { Explanation } from '../explanation.ts';
import type { Propagator } from '../propagator.ts';
import type { Trail } from '../trail.ts';

/** Lists shorter than this are looked at every time; longer ones at least once in so many. */
const PATIENT = 16;
const LONGEST_WAIT = 30;

export class Disjunctive implements Propagator {
  readonly priority = 2;
  id = 0;
  readonly cost: number;

  private readonly trail: Trail;
  private readonly windows: TaskWindows;
  private readonly orders: SureOrders;
  private readonly reasons: Reasons;
  private readonly edges: EdgeFinding;
  private readonly notFirst: NotFirst;
  private readonly sets: PrecedenceSets;
  private readonly inWindows = new Seldom();
  private idle = 0;
  private wait = 0;

  /** @param order order[k * n + l]: literal that is true when task k is before task l; never both of a pair */
  constructor(trail: Trail, tasks: readonly DisjunctiveTask[], order: Int32Array) {
    this.trail = trail;
    const n = tasks.length;
    // A run costs some three times that, and two in three are put off.
    this.cost = 4 * n + 8;
    this.windows = new TaskWindows(trail, tasks);
    this.orders = new SureOrders(trail, n, order);
    this.reasons = new Reasons(this, this.windows, this.orders);
    this.edges = new EdgeFinding(this.windows, this.orders, this.reasons);
    this.notFirst = new NotFirst(this.windows, this.reasons);
    this.sets = new PrecedenceSets(this.windows, this.orders, this.reasons);
  }

  watches(): (readonly [number, number])[] {
    return [...[...this.windows.slots()].map((slot) => [slot, -1] as const), ...this.orders.watches()];
  }

  note(pair: number): void {
    this.orders.note(pair);
  }

  backtrack(level: number): void {
    this.orders.backtrack(level);
  }

  propagate(): boolean {
    if (--this.wait > 0) return true;
    const before = this.trail.entries;
    const fine = this.run();
    // All rules only add strength, so long lists are looked at less often while nothing comes of it.
    this.idle = fine && this.trail.entries === before ? this.idle + 1 : 0;
    const { on } = this.windows;
    this.wait = on < PATIENT ? 1 : 1 + (on >> 5) + Math.min(LONGEST_WAIT, this.idle >> 3);
    return fine;
  }

  private run(): boolean {
    const { windows } = this;
    const due = this.inWindows.due();
    for (let direction = 0; direction < 2; direction++) {
      const short = windows.read(direction);
      if (windows.on < 2) return true;
      if (short >= 0) {
        const { earliest, latest } = windows;
        return this.trail.fail(this.reasons.record(OVERLOAD, direction, 0, earliest[short]!, latest[short]!));
      }
      if (due && !this.setsInWindows()) return false;
      if (!this.sets.propagate()) return false;
    }
    return true;
  }

  /** What is to be said of sets by their windows; false on conflict. */
  private setsInWindows(): boolean {
    const before = this.trail.entries;
    const fine = this.groups();
    this.inWindows.tell(!fine || this.trail.entries !== before);
    return fine;
  }

  /** Groups of tasks that end before the next group starts have no windows in common. */
  private groups(): boolean {
    const { byEarliest, earliest, latest, on } = this.windows;
    for (let from = 0, until = 0; until < on; from = until) {
      let end = latest[byEarliest[until++]!]!;
      for (; until < on && earliest[byEarliest[until]!]! < end; until++)
        if (latest[byEarliest[until]!]! > end) end = latest[byEarliest[until]!]!;
      if (until - from > 1 && !this.edges.propagate(from, until)) return false;
      if (until - from > 2 && !this.notFirst.propagate(from, until)) return false;
    }
    return true;
  }

  explain(into: Explanation, position: number, _slot: number, value: number, record: number): void {
    this.reasons.explain(into, position, value, record);
  }
}
