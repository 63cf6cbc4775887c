/**
 * Small random scheduling problems without any food in them, mixing every feature of the format; all numbers are invented.
 * Each feature is switched on or off for a whole problem, so that every pair of features meets often, and alone too.
 */
import type {
  Choice,
  Lag,
  Literal,
  Mode,
  Point,
  Problem,
  Reservoir,
  Resource,
  StateResource,
  Task,
  Tier,
  Total,
  Use,
} from '../../solver/engine/problem.ts';
import { seeded, type Seeded } from './seeded.ts';

export type Feature =
  | 'modes'
  | 'optional'
  | 'flexible'
  | 'zero'
  | 'lags'
  | 'longest'
  | 'conditional'
  | 'calendar'
  | 'states'
  | 'soil'
  | 'reservoirs'
  | 'forbidden'
  | 'totals'
  | 'tiers';

export interface ProblemShape {
  /** Least and most number of tasks. */
  readonly tasks: readonly [number, number];
  /** Least and most horizon, minutes. */
  readonly horizon: readonly [number, number];
  /** Longest length of a task, minutes. */
  readonly length: number;
  /** Chance that a feature is on, 0–1; those not named take `otherwise`. */
  readonly features?: Partial<Record<Feature, number>>;
  /** Chance of a feature that is not named, 0–1; 0.45 where not given. */
  readonly otherwise?: number;
}

/** For complete enumeration: at most 5 tasks within 12 minutes. */
export const tinyShape: ProblemShape = { tasks: [2, 5], horizon: [4, 12], length: 4 };
/** For the integer-programming reference: at most 12 tasks within 60 minutes. */
export const smallShape: ProblemShape = { tasks: [5, 12], horizon: [20, 60], length: 10 };

interface Making {
  readonly chance: Seeded;
  readonly shape: ProblemShape;
  readonly horizon: number;
  readonly on: (feature: Feature) => boolean;
  readonly choices: readonly Choice[];
  readonly resources: readonly Resource[];
  readonly states: readonly StateResource[];
}

const allFeatures: readonly Feature[] = [
  'modes',
  'optional',
  'flexible',
  'zero',
  'lags',
  'longest',
  'conditional',
  'calendar',
  'states',
  'soil',
  'reservoirs',
  'forbidden',
  'totals',
  'tiers',
];
const soils = ['wheat', 'sesame', 'raw'] as const;

/**
 * Makes one random problem. About a third of them have no solution.
 *
 * @param seed any integer; the same seed and shape give the same problem
 * @param shape how many tasks, how long, which features; `smallShape` where not given
 */
export function randomProblem(seed: number, shape: ProblemShape = smallShape): Problem {
  const chance = seeded(seed);
  const horizon = chance.int(...shape.horizon);
  const active = new Set(
    allFeatures.filter((feature) => chance.chance(shape.features?.[feature] ?? shape.otherwise ?? 0.45)),
  );
  const on = (feature: Feature): boolean => active.has(feature);
  const choices = randomChoices(chance, on);
  const resources = Array.from({ length: chance.int(1, 3) }, (_, index) =>
    randomResource(chance, `r${index}`, horizon, on),
  );
  const states = on('states') ? [randomState(chance, 's0', Math.max(1, Math.round(shape.length / 2)))] : [];
  const making: Making = { chance, shape, horizon, on, choices, resources, states };
  const count = chance.int(...shape.tasks);
  const cleaners = on('soil') && count > 2 ? chance.int(0, count > 5 ? 2 : 1) : 0;
  const tasks = Array.from({ length: count }, (_, index) =>
    index < count - cleaners ? randomTask(making, index) : randomCleaner(making, index),
  );
  return {
    format: 'afterheat.problem',
    version: 1,
    name: `random ${seed}`,
    horizon,
    choices,
    tasks,
    resources,
    states,
    reservoirs: on('reservoirs') ? [randomReservoir(making, tasks)] : [],
    lags: randomLags(making, tasks),
    forbidden: on('forbidden') && choices.length > 0 ? [chance.sample(choices, 2).map((c) => literal(chance, c))] : [],
    totals: on('totals') ? randomTotals(making, tasks) : [],
    tiers: randomTiers(making, tasks),
  };
}

function randomChoices(chance: Seeded, on: (feature: Feature) => boolean): Choice[] {
  const count = on('modes') || on('optional') || on('conditional') ? chance.int(1, 3) : 0;
  return Array.from({ length: count }, (_, index) => ({
    id: `c${index}`,
    options: ['a', 'b', 'c'].slice(0, chance.pick([1, 2, 2, 2, 3])),
  }));
}

function literal(chance: Seeded, choice: Choice): Literal {
  const all = choice.options.map((_, index) => index);
  return { choice: choice.id, options: chance.sample(all, Math.max(1, chance.int(1, all.length - 1))) };
}

function randomLiterals(making: Making, p: number): { readonly if?: readonly Literal[] } {
  const { chance, choices, on } = making;
  if (!on('conditional') || choices.length === 0 || !chance.chance(p)) return {};
  return { if: chance.sample(choices, chance.pick([1, 1, 2])).map((choice) => literal(chance, choice)) };
}

function randomResource(chance: Seeded, id: string, horizon: number, on: (feature: Feature) => boolean): Resource {
  const capacity = chance.pick([1, 1, 1, 2, 3, 5]);
  if (!on('calendar') || chance.chance(0.4)) return { id, capacity };
  const calendar: { from: number; until: number; capacity: number }[] = [];
  for (let from = chance.int(0, Math.ceil(horizon / 2)); from < horizon && calendar.length < 2;) {
    const until = Math.min(horizon + 2, from + chance.int(1, Math.ceil(horizon / 5)));
    calendar.push({ from, until, capacity: chance.int(0, capacity + 1) });
    from = until + chance.int(0, Math.ceil(horizon / 3));
  }
  return { id, capacity, calendar };
}

/** Mostly windows of temperature under one heating and one cooling speed; now and then any numbers, which the format allows too. */
function randomState(chance: Seeded, id: string, longestGap: number): StateResource {
  const count = chance.int(2, 4);
  const classes = Array.from({ length: count }, (_, index) => `k${index}`);
  const windows = classes.map(() => {
    const low = chance.int(0, 10);
    return { low, high: low + chance.int(0, 4) };
  });
  const heat = chance.int(Math.ceil(10 / longestGap), 8);
  const cool = chance.int(Math.ceil(10 / longestGap), 6);
  const free = chance.chance(0.15);
  const gap: (number | null)[][] = classes.map(() => classes.map(() => null));
  for (let a = 0; a < count; a += 1) {
    for (let b = 0; b < a; b += 1) {
      const lower = (windows[a]?.high ?? 0) < (windows[b]?.high ?? 0) ? a : b;
      const upper = a + b - lower;
      const distance = (windows[upper]?.low ?? 0) - (windows[lower]?.high ?? 0);
      if (free ? chance.chance(0.3) : distance <= 0) continue;
      (gap[lower] as (number | null)[])[upper] = free ? chance.int(0, longestGap) : Math.ceil(distance / heat);
      (gap[upper] as (number | null)[])[lower] = free ? chance.int(0, longestGap) : Math.ceil(distance / cool);
    }
  }
  return { id, classes, gap };
}

function randomUses(making: Making): Use[] {
  const { chance, resources, on } = making;
  return chance.sample(resources, chance.pick([0, 1, 1, 1, 2])).map((resource) => {
    const amount = chance.chance(0.08) ? 0 : chance.int(1, Math.max(1, Math.ceil(resource.capacity * 0.7)));
    if (!on('soil') || chance.chance(0.4)) return { resource: resource.id, amount };
    return {
      resource: resource.id,
      amount,
      ...(chance.chance(0.6) ? { leaves: chance.sample(soils, chance.int(1, 2)) } : {}),
      ...(chance.chance(0.6) ? { avoids: chance.sample(soils, chance.int(1, 2)) } : {}),
    };
  });
}

function randomMode(making: Making): Mode {
  const { chance, shape, on, states } = making;
  const shortest = on('zero') && chance.chance(0.2) ? 0 : chance.int(1, shape.length);
  const longest = on('flexible') && chance.chance(0.5) ? shortest + chance.int(1, shape.length) : shortest;
  const state = states[0];
  return {
    shortest,
    longest,
    uses: randomUses(making),
    ...(state && chance.chance(0.5)
      ? { state: { state: state.id, class: chance.int(0, state.classes.length - 1) } }
      : {}),
    ...(on('tiers') && chance.chance(0.5) ? { cost: { fixed: chance.int(0, 9), perMinute: chance.int(0, 2) } } : {}),
  };
}

function randomTask(making: Making, index: number): Task {
  const { chance, choices, on } = making;
  const id = `t${index}`;
  const group = on('tiers') ? { group: `g${chance.int(0, 2)}` } : {};
  const when =
    on('optional') && choices.length > 0 && chance.chance(0.35)
      ? { when: [literal(chance, chance.pick(choices))] }
      : {};
  if (!on('modes') || choices.length === 0 || chance.chance(0.4)) {
    return { id, ...when, modes: [randomMode(making)], ...group };
  }
  const choice = chance.pick(choices);
  const modes = choice.options.map(() => (on('optional') && chance.chance(0.25) ? null : randomMode(making)));
  return { id, ...when, choice: choice.id, modes, ...group };
}

/** A cleaning task, absent under some options where there is a choice to hang it on. */
function randomCleaner(making: Making, index: number): Task {
  const { chance, choices, resources, shape } = making;
  const mode = (): Mode => {
    const shortest = chance.int(1, Math.ceil(shape.length / 3));
    const cleaned = chance.sample(resources, chance.pick([1, 1, 2]));
    return {
      shortest,
      longest: shortest,
      uses: cleaned.map((resource) => ({ resource: resource.id, amount: chance.int(0, 1), cleans: true })),
    };
  };
  if (choices.length === 0 || chance.chance(0.3)) return { id: `t${index}`, modes: [mode()] };
  const choice = chance.pick(choices);
  return { id: `t${index}`, choice: choice.id, modes: choice.options.map(() => (chance.chance(0.4) ? null : mode())) };
}

function taskPoint(chance: Seeded, task: Task): Point & { readonly task: string } {
  return { task: task.id, at: chance.chance(0.5) ? 'start' : 'end' };
}

function randomLags(making: Making, tasks: readonly Task[]): Lag[] {
  const { chance, shape, horizon, on } = making;
  const lags: Lag[] = [];
  const add = (from: Point, to: Point, least: number): void => {
    const requirement = chance.chance(0.5) ? { requirement: `q${lags.length}` } : {};
    lags.push({ from, to, least, ...randomLiterals(making, 0.4), ...requirement });
  };
  const precedences = on('lags') ? chance.int(1, tasks.length) : 0;
  for (let i = 0; i < precedences; i += 1) {
    const [first, second] = chance.sample(tasks, 2);
    if (!first || !second) break;
    const [before, after] = tasks.indexOf(first) < tasks.indexOf(second) ? [first, second] : [second, first];
    const from: Point = chance.chance(0.7) ? { task: before.id, at: 'end' } : taskPoint(chance, before);
    const to: Point = chance.chance(0.7) ? { task: after.id, at: 'start' } : taskPoint(chance, after);
    add(from, to, chance.pick([0, 0, 0, 1, 2, -1, Math.ceil(shape.length / 2)]));
    if (on('longest') && chance.chance(0.35)) add(to, from, -chance.int(0, shape.length * 2));
  }
  if (on('longest')) {
    const release = taskPoint(chance, chance.pick(tasks));
    add('origin', release, chance.int(0, Math.ceil(horizon / 2)));
    add(taskPoint(chance, chance.pick(tasks)), 'origin', -chance.int(Math.ceil(horizon / 2), horizon));
    if (chance.chance(0.3)) {
      const held = chance.pick(tasks);
      add({ task: held.id, at: 'end' }, { task: held.id, at: 'start' }, -chance.int(1, shape.length));
    }
  }
  return lags;
}

function randomReservoir(making: Making, tasks: readonly Task[]): Reservoir {
  const { chance } = making;
  const capacity = chance.int(3, 9);
  const events = chance.sample(tasks, chance.int(2, 6)).flatMap((task) => {
    const one = { point: taskPoint(chance, task), amount: chance.int(-4, 4), ...randomLiterals(making, 0.4) };
    // Some tasks draw at the start and give back at the end.
    if (chance.chance(0.8)) return [one];
    const amount = chance.int(1, 3);
    return [
      { point: { task: task.id, at: 'start' as const }, amount: -amount },
      { point: { task: task.id, at: 'end' as const }, amount },
    ];
  });
  return { id: 'v0', initial: chance.int(0, capacity), ...(chance.chance(0.6) ? { capacity } : {}), events };
}

function randomTotals(making: Making, tasks: readonly Task[]): Total[] {
  const { chance } = making;
  const pieces = chance.sample(tasks, chance.int(1, 3));
  let least = 0;
  let most = 0;
  for (const piece of pieces) {
    const modes = piece.modes.filter((mode) => mode !== null);
    least += Math.min(...modes.map((mode) => mode.shortest), 99);
    most += Math.max(...modes.map((mode) => mode.longest), 0);
  }
  const total = chance.int(Math.min(least, most), Math.max(least, most));
  return [{ tasks: pieces.map((piece) => piece.id), total, ...randomLiterals(making, 0.6) }];
}

function randomTiers(making: Making, tasks: readonly Task[]): Tier[] {
  const { chance, on, resources, horizon } = making;
  const finish: Tier = {
    kind: 'latest',
    id: 'finish',
    terms: tasks.map((task) => ({ point: { task: task.id, at: 'end' } })),
  };
  if (!on('tiers')) return [finish];
  const mixed: Tier = {
    kind: 'latest',
    id: 'mixed',
    terms: chance.sample(tasks, 3).map((task) => {
      const minus = chance.chance(0.4);
      const plus = minus ? horizon : chance.int(0, 5);
      return { point: taskPoint(chance, task), ...(plus > 0 ? { plus } : {}), ...(minus ? { minus } : {}) };
    }),
  };
  const waiting: Tier = {
    kind: 'waiting',
    id: 'waiting',
    terms: Array.from({ length: 3 }, () => {
      const [a, b] = chance.sample(tasks, 2) as [Task, Task];
      const from: Point = chance.chance(0.15) ? 'origin' : taskPoint(chance, a);
      return { weight: chance.int(0, 3), from, to: taskPoint(chance, b), free: chance.int(0, 4) };
    }),
  };
  const cost: Tier = { kind: 'cost', id: 'cost' };
  const changes: Tier = { kind: 'changes', id: 'changes', resources: chance.sample(resources, 2).map((r) => r.id) };
  const rest = chance.sample<Tier>([mixed, waiting, cost, changes], chance.int(0, 4));
  return chance.chance(0.6) ? [finish, ...rest] : chance.shuffle([finish, ...rest]);
}
