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

/** For every pair where one leaves what the other avoids: the other is over first, or a cleaning lies between. After the orders. */
export function addSoil(problem: Problem, core: Core, conditions: Conditions, points: Points, orders: Orders): void {
  const users = (resource: string, wanted: (use: Use) => boolean): SoilUse[] =>
    problem.tasks.flatMap((task, t) => {
      const modes = task.modes.flatMap((mode, m) =>
        mode?.uses.some((use) => use.resource === resource && wanted(use)) === true ? [m] : [],
      );
      return modes.length === 0 ? [] : [{ task: t, literal: points.inModes(t, modes) }];
    });
  const not = (literal: number): number => conditions.not(literal);
  for (const resource of problem.resources) {
    const marks = new Set<string>();
    for (const task of problem.tasks)
      for (const mode of task.modes)
        for (const use of mode?.uses ?? []) if (use.resource === resource.id) use.leaves?.forEach((m) => marks.add(m));
    const cleaners = users(resource.id, (use) => use.cleans === true);
    // One clause for each pair of literals, whatever mark they meet by.
    const done = new Set<string>();
    for (const mark of marks) {
      const leavers = users(resource.id, (use) => use.leaves?.includes(mark) === true);
      const avoiders = users(resource.id, (use) => use.avoids?.includes(mark) === true);
      for (const u of leavers)
        for (const v of avoiders) {
          const key = `${u.task} ${u.literal} ${v.task} ${v.literal}`;
          if (u.task === v.task || done.has(key) || conditions.exclude(u.literal, v.literal)) continue;
          done.add(key);
          const first = orders.before(u.task, v.task);
          const between = cleaners.map((c) =>
            conditions.all([
              c.literal,
              c.task === u.task ? first : orders.before(u.task, c.task),
              c.task === v.task ? first : orders.before(c.task, v.task),
              ...(c.task === u.task || c.task === v.task ? [vanished(core, points, c.task)] : []),
            ]),
          );
          core.clause(not(u.literal), not(v.literal), orders.before(v.task, u.task), ...between);
        }
    }
  }

  /** True when the task has no length. */
  function vanished(to: Core, at: Points, t: number): number {
    const start = at.starts[t]!;
    const end = at.ends[t]!;
    if (start.x === end.x) return start.offset === end.offset ? to.trail.alwaysTrue : to.trail.alwaysFalse;
    if (!at.mayVanish(t)) return to.trail.alwaysFalse;
    const literal = conditions.boolean();
    to.arcs.add(2 * end.x, 2 * start.x, end.offset - start.offset, literal);
    return literal;
  }
}

export function addReservoirs(problem: Problem, core: Core, conditions: Conditions, points: Points): void {
  for (const reservoir of problem.reservoirs) {
    const events = reservoir.events.flatMap((event): ReservoirEvent[] => {
      const active = conditions.all([points.presence(event.point), ...conditions.literalsOf(event.if)]);
      if (active === core.trail.alwaysFalse || event.amount === 0) return [];
      const place = points.place(event.point);
      return [{ variable: place.x, offset: place.offset, amount: event.amount, active }];
    });
    if (events.some((event) => event.amount < 0)) core.post(new Reservoir(core.trail, reservoir.initial, events));
    if (reservoir.capacity === undefined) continue;
    const room = reservoir.capacity - reservoir.initial;
    const mirrored = events.map((event) => ({ ...event, amount: -event.amount }));
    if (room < 0) {
      // More than the capacity at first: something must be drawn by minute 0.
      mirrored.push({ variable: 0, offset: -1, amount: -1, active: core.trail.alwaysTrue });
      core.post(new Reservoir(core.trail, room + 1, mirrored));
    } else if (mirrored.some((event) => event.amount < 0)) core.post(new Reservoir(core.trail, room, mirrored));
  }
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
