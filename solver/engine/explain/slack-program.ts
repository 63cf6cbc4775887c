/**
 * Better times inside a plan's order, as linear programs: the least waiting, then slack behind the work whose length is least
 * sure.
 *
 * All constraints are differences of two times, so the matrix is the dual of a network's and every corner is whole (Heller &
 * Tompkins 1956). Points that can only move together are one variable, so that a plan of hundreds of tasks leaves some tens.
 */
import { solveLinear, type LinearRow, type LinearTerm } from '../../linear/linear-program.ts';
import type { Problem, WaitingTier } from '../problem.ts';
import type { PlanOrder } from './plan-order.ts';
import { rigidGroups, type RigidGroups } from './rigid-groups.ts';
import { endNode, ORIGIN, startNode } from './taken.ts';

/** A moment that may come later than planned, since what goes on until then may last longer. */
export interface Unsure {
  /** Node of the plan's order. */
  readonly node: number;
  /** Worth of a minute of slack behind it, a whole number ≥ 1. */
  readonly weight: number;
  /** Minutes after which more slack is worth nothing, ≥ 1. */
  readonly most: number;
}

/** More variables than this are not tried: the library's tableau is dense. */
const MOST_VARIABLES = 260;

/**
 * The times with the least Σ weight × minutes waited beyond what is free, over all waiting tiers.
 *
 * @param order with the arcs that keep the other tiers
 * @returns minutes a node; null where nothing waits, or no answer that holds was found
 */
export function leastWaiting(problem: Problem, order: PlanOrder): Int32Array | null {
  const { times } = order;
  const taskIndex = new Map(problem.tasks.map((task, index) => [task.id, index]));
  const nodeOf = (point: WaitingTier['terms'][number]['from']): number => {
    if (point === 'origin') return ORIGIN;
    const task = taskIndex.get(point.task)!;
    return point.at === 'start' ? startNode(task) : endNode(task);
  };
  const terms = problem.tiers
    .flatMap((tier) => (tier.kind === 'waiting' ? tier.terms : []))
    .map((term) => ({ ...term, from: nodeOf(term.from), to: nodeOf(term.to) }))
    .filter(({ weight, from, to }) => weight > 0 && times[from]! >= 0 && times[to]! >= 0);
  if (terms.every(({ from, to, free }) => times[to]! - times[from]! <= free)) return null;

  const groups = rigidGroups(order);
  const program = new ShiftProgram(groups);
  for (const { weight, from, to, free } of terms) {
    const waits = times[to]! - times[from]! - free;
    const [before, after] = [groups.groupOf[from]!, groups.groupOf[to]!];
    if (before === after) continue;
    // waited ≥ waits + shift[after] − shift[before]
    const waited = program.variable(-weight);
    program.atLeast(waits, [[waited, 1]], { minus: after, plus: before });
  }
  return program.times(times);
}

/**
 * The times with the most Σ weight × min(slack, most) behind unsure work, and among those the earliest. The slack behind a
 * group of points is the least that any other can bear if all of it comes later.
 *
 * @param order with the arcs that keep every tier
 * @returns minutes a node; null where there is nothing to gain, or no answer that holds was found
 */
export function mostSlack(order: PlanOrder, unsure: readonly Unsure[]): Int32Array | null {
  const groups = rigidGroups(order);
  const weights = new Map<number, { weight: number; most: number }>();
  for (const { node, weight, most } of unsure) {
    const group = groups.groupOf[node]!;
    if (group <= 0) continue;
    const known = weights.get(group) ?? { weight: 0, most: 0 };
    weights.set(group, { weight: Math.max(known.weight, weight), most: known.most + most });
  }
  if (weights.size === 0) return null;
  // A minute of slack is worth more than all that times can be moved.
  let worth = 1;
  for (let group = 1; group < groups.count; group++) worth += groups.latest[group]! - groups.earliest[group]!;
  const program = new ShiftProgram(groups, -1);
  for (const [group, { weight, most }] of weights) {
    const slack = program.variable(weight * worth);
    program.row({ terms: [[slack, 1]], most });
    groups.leaving[group]!.forEach((room, to) => {
      const sure = room + (to === 0 ? 0 : groups.earliest[to]!) - groups.latest[group]!;
      // slack ≤ room + shift[to] − shift[group]
      if (sure < most) program.atLeast(-room, [[slack, -1]], { minus: group, plus: to });
    });
  }
  return program.times(order.times);
}

/** A program over the shifts of groups, each counted from the earliest it can have, so that all variables are ≥ 0. */
class ShiftProgram {
  readonly #groups: RigidGroups;
  readonly #maximise: LinearTerm[] = [];
  readonly #rows: LinearRow[] = [];
  #variables: number;

  /** @param worth of a minute by which a group is later, for every group */
  constructor(groups: RigidGroups, worth = 0) {
    this.#groups = groups;
    this.#variables = groups.count - 1;
    for (let group = 1; group < groups.count; group++) {
      if (worth !== 0) this.#maximise.push([group - 1, worth]);
      this.#rows.push({ terms: [[group - 1, 1]], most: groups.latest[group]! - groups.earliest[group]! });
    }
    for (const { from, to, least } of groups.arcs) this.atLeast(least, [], { minus: from, plus: to });
  }

  /** A new variable ≥ 0 with its worth; its number. */
  variable(worth: number): number {
    this.#maximise.push([this.#variables, worth]);
    return this.#variables++;
  }

  row(row: LinearRow): void {
    this.#rows.push(row);
  }

  /** Asks that `Σ terms + shift[plus] − shift[minus] ≥ least`; group 0 has no shift. */
  atLeast(least: number, terms: readonly LinearTerm[], { minus, plus }: { minus: number; plus: number }): void {
    const { earliest } = this.#groups;
    const offset = (group: number): number => (group === 0 ? 0 : earliest[group]!);
    this.#rows.push({
      terms: [
        ...terms,
        ...(plus === 0 ? [] : [[plus - 1, 1] as const]),
        ...(minus === 0 ? [] : [[minus - 1, -1] as const]),
      ],
      least: least - offset(plus) + offset(minus),
    });
  }

  /** The times given, shifted as the answer says; null where there is none that holds, or the program is too large. */
  times(times: Int32Array): Int32Array | null {
    if (this.#variables === 0 || this.#variables > MOST_VARIABLES) return null;
    const answer = solveLinear({
      variables: this.#variables,
      maximise: this.#maximise,
      rows: this.#rows,
      wholeCorners: true,
    });
    if (answer.kind === 'failed') return null;
    const { groupOf, earliest } = this.#groups;
    return times.map((time, node) => {
      const group = groupOf[node]!;
      return group <= 0 ? time : time + earliest[group]! + answer.values[group - 1]!;
    });
  }
}
