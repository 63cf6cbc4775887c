/** Makes a failing scheduling problem as small as it still fails, so that a person can read it. */
import type { Literal, Mode, Point, Problem, Task } from '../../solver/engine/problem.ts';

/**
 * Takes parts away for as long as the problem still fails.
 *
 * @param problem a problem for which `fails` is true
 * @param fails whether a problem shows the fault; should be false where it throws for another reason
 * @returns a problem that fails, of which no single part can be taken away
 */
export function shrinkProblem(problem: Problem, fails: (problem: Problem) => boolean): Problem {
  let smallest = problem;
  for (let again = true; again;) {
    again = false;
    for (const candidate of smaller(smallest)) {
      if (!fails(candidate)) continue;
      smallest = candidate;
      again = true;
      break;
    }
  }
  return smallest;
}

function* smaller(problem: Problem): Generator<Problem> {
  for (const task of problem.tasks) if (problem.tasks.length > 1) yield withoutTask(problem, task.id);
  for (const [index, choice] of problem.choices.entries()) {
    for (const option of choice.options.keys()) yield decided(problem, index, option);
  }
  for (const { id } of problem.resources) yield withoutResource(problem, id);
  for (const { id } of problem.states) yield withoutState(problem, id);
  yield* shorterLists(problem);
  for (const [index, task] of problem.tasks.entries()) {
    const put = (changed: Task): Problem => ({ ...problem, tasks: replaced(problem.tasks, index, changed) });
    for (const changed of simplerTasks(task)) yield put(changed);
  }
  for (const [index, resource] of problem.resources.entries()) {
    if (!resource.calendar) continue;
    const { id, capacity } = resource;
    yield { ...problem, resources: replaced(problem.resources, index, { id, capacity }) };
  }
  for (const [index, lag] of problem.lags.entries()) {
    const { from, to, least } = lag;
    if (lag.if || lag.requirement !== undefined) {
      yield { ...problem, lags: replaced(problem.lags, index, { from, to, least }) };
    }
  }
  if (problem.horizon > 1) yield { ...problem, horizon: problem.horizon - 1 };
}

/** One entry less in the lists whose entries nothing else names. */
function* shorterLists(problem: Problem): Generator<Problem> {
  const { lags, reservoirs, forbidden, totals, tiers } = problem;
  for (const index of lags.keys()) yield { ...problem, lags: without(lags, index) };
  for (const index of reservoirs.keys()) yield { ...problem, reservoirs: without(reservoirs, index) };
  for (const index of forbidden.keys()) yield { ...problem, forbidden: without(forbidden, index) };
  for (const index of totals.keys()) yield { ...problem, totals: without(totals, index) };
  for (const index of tiers.keys()) if (tiers.length > 1) yield { ...problem, tiers: without(tiers, index) };
  for (const [index, reservoir] of reservoirs.entries()) {
    for (const event of reservoir.events.keys()) {
      const events = without(reservoir.events, event);
      yield { ...problem, reservoirs: replaced(reservoirs, index, { ...reservoir, events }) };
    }
  }
  for (const [index, tier] of tiers.entries()) {
    if (tier.kind === 'latest') {
      for (const term of tier.terms.keys()) {
        yield { ...problem, tiers: replaced(tiers, index, { ...tier, terms: without(tier.terms, term) }) };
      }
    }
    if (tier.kind === 'waiting') {
      for (const term of tier.terms.keys()) {
        yield { ...problem, tiers: replaced(tiers, index, { ...tier, terms: without(tier.terms, term) }) };
      }
    }
  }
}

function* simplerTasks(task: Task): Generator<Task> {
  const { when, ...always } = task;
  if (when) yield always;
  for (const [option, mode] of task.modes.entries()) {
    if (mode === null) continue;
    for (const simpler of simplerModes(mode)) yield { ...task, modes: replaced(task.modes, option, simpler) };
  }
}

function* simplerModes(mode: Mode): Generator<Mode> {
  for (const index of mode.uses.keys()) yield { ...mode, uses: without(mode.uses, index) };
  for (const [index, use] of mode.uses.entries()) {
    const { resource, amount } = use;
    if (use.leaves || use.avoids || use.cleans !== undefined) {
      yield { ...mode, uses: replaced(mode.uses, index, { resource, amount }) };
    }
  }
  const { state, ...stateless } = mode;
  if (state) yield stateless;
  const { cost, ...free } = mode;
  if (cost) yield free;
  if (mode.longest > mode.shortest) yield { ...mode, longest: mode.shortest };
  if (mode.shortest > 1) yield { ...mode, shortest: mode.shortest - 1, longest: mode.longest - 1 };
}

const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, each) => each !== index);
const replaced = <T>(list: readonly T[], index: number, entry: T): T[] =>
  list.map((each, at) => (at === index ? entry : each));

function withoutTask(problem: Problem, id: string): Problem {
  const clear = (point: Point): boolean => point === 'origin' || point.task !== id;
  return {
    ...problem,
    tasks: problem.tasks.filter((task) => task.id !== id),
    lags: problem.lags.filter((lag) => clear(lag.from) && clear(lag.to)),
    reservoirs: problem.reservoirs.map((reservoir) => ({
      ...reservoir,
      events: reservoir.events.filter(({ point }) => clear(point)),
    })),
    totals: problem.totals.map((total) => ({ ...total, tasks: total.tasks.filter((task) => task !== id) })),
    tiers: problem.tiers.map((tier) => {
      if (tier.kind === 'latest') return { ...tier, terms: tier.terms.filter(({ point }) => clear(point)) };
      if (tier.kind === 'waiting') {
        return { ...tier, terms: tier.terms.filter(({ from, to }) => clear(from) && clear(to)) };
      }
      return tier;
    }),
  };
}

/** The problem with one choice decided for good, and every literal about it gone. */
function decided(problem: Problem, index: number, option: number): Problem {
  const choice = problem.choices[index]?.id;
  /** Literals left to ask; null where one of them is now false. */
  const left = (literals: readonly Literal[] | undefined): Literal[] | null => {
    const mine = (literals ?? []).filter((literal) => literal.choice === choice);
    if (mine.some((literal) => !literal.options.includes(option))) return null;
    return (literals ?? []).filter((literal) => literal.choice !== choice);
  };
  const conditional = <T extends { readonly if?: readonly Literal[] }>(list: readonly T[]): T[] =>
    list.flatMap((entry) => {
      const literals = left(entry.if);
      if (literals === null) return [];
      const { if: _, ...rest } = entry;
      return [(literals.length > 0 ? { ...rest, if: literals } : rest) as T];
    });
  let changed: Problem = { ...problem, choices: without(problem.choices, index) };
  for (const task of problem.tasks) {
    const when = left(task.when);
    const mode = task.choice === choice ? task.modes[option] : undefined;
    if (when === null || mode === null) changed = withoutTask(changed, task.id);
  }
  return {
    ...changed,
    tasks: changed.tasks.map((task) => {
      const { when: _, choice: own, modes, ...rest } = task;
      const when = left(task.when) ?? [];
      return {
        ...rest,
        ...(when.length > 0 ? { when } : {}),
        ...(own === undefined || own === choice ? {} : { choice: own }),
        modes: own === choice ? modes.slice(option, option + 1) : modes,
      };
    }),
    lags: conditional(changed.lags),
    totals: conditional(changed.totals),
    reservoirs: changed.reservoirs.map((reservoir) => ({ ...reservoir, events: conditional(reservoir.events) })),
    forbidden: changed.forbidden.flatMap((literals) => {
      const rest = left(literals);
      return rest === null || rest.length === 0 ? [] : [rest];
    }),
  };
}

function withoutResource(problem: Problem, id: string): Problem {
  return {
    ...problem,
    resources: problem.resources.filter((resource) => resource.id !== id),
    tasks: eachMode(problem, (mode) => ({ ...mode, uses: mode.uses.filter(({ resource }) => resource !== id) })),
    tiers: problem.tiers.map((tier) =>
      tier.kind === 'changes' ? { ...tier, resources: tier.resources.filter((resource) => resource !== id) } : tier,
    ),
  };
}

function withoutState(problem: Problem, id: string): Problem {
  return {
    ...problem,
    states: problem.states.filter((state) => state.id !== id),
    tasks: eachMode(problem, ({ state, ...rest }) => (state && state.state !== id ? { ...rest, state } : rest)),
  };
}

function eachMode(problem: Problem, change: (mode: Mode) => Mode): Task[] {
  return problem.tasks.map((task) => ({ ...task, modes: task.modes.map((mode) => (mode ? change(mode) : null)) }));
}
