/** States, soil, reservoirs, forbidden conjunctions and totals, in the core's terms. */
import { Reservoir } from '../propagators/reservoir.ts';
import type { ReservoirEvent } from '../propagators/reservoir.ts';
import type { Problem, Use } from '../../problem.ts';
import type { Conditions } from './conditions.ts';
import type { Core } from '../core.ts';
import type { Lengths } from './lengths.ts';
import type { Orders } from './orders.ts';
import type { Points } from './points.ts';
import { Sum } from './sums.ts';

/** Modes that need different classes of a state: "before or after, with the gap". */
export function addStates(problem: Problem, points: Points, orders: Orders): void {
  for (const state of problem.states) {
    const users = problem.tasks.flatMap((task, t) => {
      const classes = new Map<number, number[]>();
      task.modes.forEach((mode, m) => {
        if (mode?.state?.state === state.id)
          classes.set(mode.state.class, [...(classes.get(mode.state.class) ?? []), m]);
      });
      return [...classes].map(([cls, modes]) => ({ task: t, cls, literal: points.inModes(t, modes) }));
    });
    users.forEach((u, i) => {
      for (const v of users.slice(i + 1)) {
        if (u.task === v.task) continue;
        const forth = state.gap[u.cls]?.[v.cls] ?? null;
        const back = state.gap[v.cls]?.[u.cls] ?? null;
        if (forth === null || back === null) continue;
        const when = [u.literal, v.literal];
        orders.conflict(u.task, v.task, when);
        orders.gap(u.task, v.task, forth, when);
        orders.gap(v.task, u.task, back, when);
      }
    });
  }
}

interface SoilUse {
  readonly task: number;
  readonly literal: number;
}

/**
 * For every pair where u leaves what v avoids: v is over first, or a cleaning lies between. After the orders.
 *
 * Each v has one witness among the cleanings, or none: the last that ends before it starts. Whatever soils v must then end before the
 * witness starts, or come after v. So there is no literal for each u, v and cleaning together.
 */
export function addSoil(problem: Problem, core: Core, conditions: Conditions, points: Points, orders: Orders): void {
  const { alwaysTrue, alwaysFalse } = core.trail;
  const not = (literal: number): number => conditions.not(literal);
  for (const resource of problem.resources) {
    const users = usersOf(problem, points, resource.id);
    const cleaners = users((use) => use.cleans === true);
    const soiled = soiledPairs(problem, resource.id, users);
    for (const { v, by } of soiled.values()) {
      // Witnesses that may be; a task that cleans and has no length may stand at its own edge.
      const witnesses = cleaners.flatMap((c) => {
        const precedes = c.task === v.task ? vanished(core, conditions, points, c.task) : orders.before(c.task, v.task);
        const possible = conditions.exclude(c.literal, v.literal) ? alwaysFalse : precedes;
        if (possible === alwaysFalse || orders.never(c.task, v.task)) return [];
        const witness = conditions.boolean();
        core.clause(not(witness), c.literal);
        core.clause(not(witness), precedes);
        return [{ cleaner: c, witness }];
      });
      // No witness at all is the remaining way.
      const none = witnesses.length === 0 ? alwaysTrue : conditions.boolean();
      if (none !== alwaysTrue) core.clause(not(v.literal), none, ...witnesses.map((w) => w.witness));
      for (const u of by.values()) {
        if (conditions.exclude(u.literal, v.literal)) continue;
        const over = orders.before(v.task, u.task);
        if (over === alwaysTrue) continue;
        const free = [not(u.literal), not(v.literal), over];
        core.clause(...free, not(none));
        for (const { cleaner, witness } of witnesses) {
          const cleaned =
            cleaner.task === u.task
              ? conditions.all([vanished(core, conditions, points, u.task), orders.before(u.task, v.task)])
              : orders.never(u.task, cleaner.task)
                ? alwaysFalse
                : orders.before(u.task, cleaner.task);
          core.clause(...free, not(witness), cleaned);
        }
      }
    }
  }
}

type UsersWhere = (wanted: (use: Use) => boolean) => SoilUse[];

function usersOf(problem: Problem, points: Points, resource: string): UsersWhere {
  return (wanted) =>
    problem.tasks.flatMap((task, t) => {
      const modes = task.modes.flatMap((mode, m) =>
        mode?.uses.some((use) => use.resource === resource && wanted(use)) === true ? [m] : [],
      );
      return modes.length === 0 ? [] : [{ task: t, literal: points.inModes(t, modes) }];
    });
}

/** By avoiding use: what may soil it. */
function soiledPairs(
  problem: Problem,
  resource: string,
  users: UsersWhere,
): Map<string, { readonly v: SoilUse; readonly by: Map<string, SoilUse> }> {
  const marks = new Set<string>();
  for (const task of problem.tasks)
    for (const mode of task.modes)
      for (const use of mode?.uses ?? []) if (use.resource === resource) use.leaves?.forEach((mark) => marks.add(mark));
  const pairs = new Map<string, { readonly v: SoilUse; readonly by: Map<string, SoilUse> }>();
  const key = (use: SoilUse): string => `${use.task} ${use.literal}`;
  for (const mark of marks) {
    const leavers = users((use) => use.leaves?.includes(mark) === true);
    for (const v of users((use) => use.avoids?.includes(mark) === true)) {
      const entry = pairs.get(key(v)) ?? { v, by: new Map<string, SoilUse>() };
      for (const u of leavers) if (u.task !== v.task) entry.by.set(key(u), u);
      if (entry.by.size > 0) pairs.set(key(v), entry);
    }
  }
  return pairs;
}

/** True when the task has no length. */
function vanished(core: Core, conditions: Conditions, points: Points, t: number): number {
  const start = points.starts[t]!;
  const end = points.ends[t]!;
  if (start.x === end.x) return start.offset === end.offset ? core.trail.alwaysTrue : core.trail.alwaysFalse;
  if (!points.mayVanish(t)) return core.trail.alwaysFalse;
  const literal = conditions.boolean();
  core.arcs.add(2 * end.x, 2 * start.x, end.offset - start.offset, literal);
  return literal;
}

export function addReservoirs(
  problem: Problem,
  core: Core,
  conditions: Conditions,
  points: Points,
  lengths: Lengths,
): void {
  for (const reservoir of problem.reservoirs) {
    const events = reservoir.events.flatMap((event): ReservoirEvent[] => {
      const active = conditions.all([points.presence(event.point), ...conditions.literalsOf(event.if)]);
      if (active === core.trail.alwaysFalse || event.amount === 0) return [];
      const place = points.place(event.point);
      return [{ variable: place.x, offset: place.offset, amount: event.amount, active }];
    });
    addBalance(reservoir, 1, reservoir.initial, core, conditions, points, lengths);
    if (events.some((event) => event.amount < 0)) core.post(new Reservoir(core.trail, reservoir.initial, events));
    if (reservoir.capacity === undefined) continue;
    const room = reservoir.capacity - reservoir.initial;
    addBalance(reservoir, -1, room, core, conditions, points, lengths);
    const mirrored = events.map((event) => ({ ...event, amount: -event.amount }));
    if (room < 0) {
      // More than the capacity at first: something must be drawn by minute 0.
      mirrored.push({ variable: 0, offset: -1, amount: -1, active: core.trail.alwaysTrue });
      core.post(new Reservoir(core.trail, room + 1, mirrored));
    } else if (mirrored.some((event) => event.amount < 0)) core.post(new Reservoir(core.trail, room, mirrored));
  }
}

/**
 * After everything the level is not negative: a sum that sees open choices, of which each takes at least its least draw. A budget that
 * is never refilled is just this.
 */
function addBalance(
  reservoir: Problem['reservoirs'][number],
  sign: 1 | -1,
  initial: number,
  core: Core,
  conditions: Conditions,
  points: Points,
  lengths: Lengths,
): void {
  const left = new Sum();
  left.constant = initial;
  const byChoice = new Map<number, number[]>();
  for (const event of reservoir.events) {
    const amount = sign * event.amount;
    const [only, ...more] = event.if ?? [];
    if (only !== undefined && more.length === 0 && points.presence(event.point) === core.trail.alwaysTrue) {
      const choice = conditions.choiceIndex(only.choice);
      const options = byChoice.get(choice) ?? conditions.options[choice]!.map(() => 0);
      for (const o of new Set(only.options)) options[o]! += amount;
      byChoice.set(choice, options);
    } else {
      const active = conditions.all([points.presence(event.point), ...conditions.literalsOf(event.if)]);
      lengths.addTo(left, lengths.scaled(active, amount), 1);
    }
  }
  for (const [choice, amounts] of byChoice) {
    const most = Math.max(...amounts);
    left.constant += most;
    const levels = [...new Set(amounts.map((amount) => most - amount))].filter((d) => d > 0).sort((a, b) => a - b);
    levels.forEach((level, i) => {
      const literal = conditions.among(
        choice,
        amounts.flatMap((amount, o) => (most - amount >= level ? [o] : [])),
      );
      lengths.addTo(left, lengths.scaled(literal, level - (levels[i - 1] ?? 0)), -1);
    });
  }
  left.atLeast(core, 0, core.trail.alwaysTrue);
}

export function addForbidden(problem: Problem, core: Core, conditions: Conditions): void {
  for (const conjunction of problem.forbidden)
    core.clause(...conditions.literalsOf(conjunction).map((literal) => conditions.not(literal)));
}

export function addTotals(
  problem: Problem,
  core: Core,
  conditions: Conditions,
  points: Points,
  lengths: Lengths,
): void {
  for (const total of problem.totals) {
    const guard = conditions.all(conditions.literalsOf(total.if));
    const sum = new Sum();
    for (const id of total.tasks) lengths.addTo(sum, lengths.of(points.taskIndex.get(id)!), 1);
    sum.atMost(core, total.total, guard);
    sum.atLeast(core, total.total, guard);
  }
}
