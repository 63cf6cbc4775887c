/**
 * The small random problems on which every proof is held against a reference, and what must be true of an outcome once the truth is known.
 *
 * Each problem has two features for sure, in turn, so that every kind of resource, rule and tier comes up often.
 */
import type { Outcome } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { lexicographicallyLess } from './brute-force.ts';
import { faultsOf, plainTierValues } from './plain-check.ts';
import { randomProblem, type Feature } from './random-problem.ts';

/** How many there are. */
export const REFERENCE_PROBLEMS = 300;

const inTurn: readonly Feature[] = [
  'modes',
  'optional',
  'flexible',
  'lags',
  'longest',
  'calendar',
  'states',
  'soil',
  'reservoirs',
  'totals',
  'tiers',
];

/**
 * One of the problems: 4 to 9 tasks within 15 to 40 minutes, for the integer program.
 *
 * @param index 0 to `REFERENCE_PROBLEMS` − 1, and beyond for more of the kind
 */
export function referenceProblem(index: number): Problem {
  const first = inTurn[index % inTurn.length]!;
  const second = inTurn[Math.floor(index / inTurn.length + 3 * index) % inTurn.length]!;
  return randomProblem(50_000 + index, {
    tasks: [4, 9],
    horizon: [15, 40],
    length: 7,
    otherwise: 0.3,
    features: { [first]: 1, [second]: 1, zero: 0.15, conditional: 0.25, forbidden: 0.2 },
  });
}

export const kinds = [
  'cumulative',
  'cumulative with a calendar',
  'exclusive',
  'states with gaps',
  'soil',
  'soil and washes',
  'reservoirs',
  'totals',
  'optional tasks',
  'modes',
  'flexible lengths',
  'longest gaps',
  'a tier of the latest',
  'a tier of waiting',
  'a tier of cost',
  'a tier of changes',
] as const;
export type Kind = (typeof kinds)[number];

/** The kinds of resource, rule and tier that a problem has in use, not only in its lists. */
export function kindsIn(problem: Problem): ReadonlySet<Kind> {
  const modes = problem.tasks.flatMap((task) => task.modes.filter((mode) => mode !== null));
  const uses = modes.flatMap((mode) => mode.uses);
  const used = problem.resources.filter(({ id }) => uses.some((use) => use.resource === id && use.amount > 0));
  const soiled = problem.resources.filter(({ id }) => {
    const here = uses.filter((use) => use.resource === id);
    return here.some(({ leaves }) =>
      here.some(({ avoids }) => leaves?.some((soil) => avoids?.includes(soil)) === true),
    );
  });
  const gaps = problem.states.some(({ id, gap }) => {
    const classes = modes.flatMap(({ state }) => (state?.state === id ? [state.class] : []));
    return classes.some((a) => classes.some((b) => (gap[a]?.[b] ?? null) !== null));
  });
  const has: Readonly<Record<Kind, boolean>> = {
    cumulative: used.some(({ capacity }) => capacity > 1),
    'cumulative with a calendar': used.some(({ capacity, calendar }) => capacity > 1 && (calendar?.length ?? 0) > 0),
    exclusive: used.some(({ capacity }) => capacity === 1),
    'states with gaps': gaps,
    soil: soiled.length > 0,
    'soil and washes': soiled.some(({ id }) => uses.some((use) => use.resource === id && use.cleans === true)),
    reservoirs: problem.reservoirs.some(({ events }) => events.some(({ amount }) => amount !== 0)),
    totals: problem.totals.length > 0,
    'optional tasks': problem.tasks.some((task) => task.when !== undefined || task.modes.includes(null)),
    modes: problem.tasks.some((task) => task.modes.filter((mode) => mode !== null).length > 1),
    'flexible lengths': modes.some(({ shortest, longest }) => longest > shortest),
    'longest gaps': problem.lags.some(({ from, to, least }) => least < 0 && from !== 'origin' && to !== 'origin'),
    'a tier of the latest': problem.tiers.some(({ kind }) => kind === 'latest'),
    'a tier of waiting': problem.tiers.some(({ kind }) => kind === 'waiting'),
    'a tier of cost': problem.tiers.some(({ kind }) => kind === 'cost'),
    'a tier of changes': problem.tiers.some(({ kind }) => kind === 'changes'),
  };
  return new Set(kinds.filter((kind) => has[kind]));
}

/** What a reference found: no solution, or the least values of the first tiers in order of rank, as many as it could tell. */
export type Truth = { readonly kind: 'infeasible' } | { readonly kind: 'optimal'; readonly values: readonly number[] };

/**
 * What is wrong with an outcome, one sentence a fault: its plan, what it says of its tiers, and what it proved.
 *
 * @param truth null where the reference could not tell
 */
export function faultsBeside(problem: Problem, outcome: Outcome, truth: Truth | null): string[] {
  if (outcome.kind === 'unknown') return [];
  if (outcome.kind === 'impossible') return truth?.kind === 'optimal' ? ['impossible, but there is a plan'] : [];
  const faults = faultsOf(problem, outcome.solution).map((fault) => `invalid: ${fault}`);
  const values = plainTierValues(problem, outcome.solution);
  let above = true;
  outcome.tiers.forEach((tier, index) => {
    if (tier.value !== values[index]) faults.push(`${tier.id}: said ${tier.value}, is ${values[index]}`);
    if (tier.bound > tier.value) faults.push(`${tier.id}: bound ${tier.bound} above ${tier.value}`);
    if (tier.proven !== (above && tier.bound === tier.value)) faults.push(`${tier.id}: proven is ${tier.proven}`);
    above = tier.proven;
  });
  if ((outcome.kind === 'proven') !== above) faults.push(`called ${outcome.kind}`);
  if (truth === null) return faults;
  if (truth.kind === 'infeasible') return [...faults, 'a plan where the reference has none'];
  const known = truth.values.length;
  if (lexicographicallyLess(values.slice(0, known), truth.values)) faults.push('better than the reference');
  truth.values.forEach((best, index) => {
    const tier = outcome.tiers[index]!;
    if (tier.proven && tier.value !== best) faults.push(`${tier.id}: proved ${tier.value}, the least is ${best}`);
    // A bound stands while every tier above it has its least value.
    const level = truth.values.slice(0, index).every((value, k) => value === values[k]);
    if (level && tier.bound > best) faults.push(`${tier.id}: bound ${tier.bound}, but ${best} is possible`);
  });
  return faults;
}
