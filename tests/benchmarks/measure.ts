import type { Outcome, Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { faultsOf, plainTierValues } from '../support/plain-check.ts';
import { criticalPath } from './critical-path.ts';
import type { Published } from './published-bounds.ts';

export interface Limits {
  /** Most seconds by the clock for one instance. */
  readonly seconds: number;
  /** Most work units for one instance. */
  readonly effort: number;
  readonly seed: number;
}

/** One instance solved once. */
export interface Row {
  readonly instance: string;
  readonly kind: Outcome['kind'];
  /** The first tier's value and bound; null where there is no plan. */
  readonly finish: number | null;
  readonly bound: number | null;
  /** Whether the engine proved its answer: the finish is least, or no plan exists. */
  readonly proven: boolean;
  /** Seconds until the finish returned was found, and until the answer was proven. */
  readonly bestSeconds: number | null;
  readonly proofSeconds: number | null;
  readonly seconds: number;
  readonly work: number;
  readonly published: Published | undefined;
  readonly criticalPath: number;
  /** What is wrong with the answer by the plain check and by what is published; empty where nothing is. */
  readonly faults: readonly string[];
}

export interface Instance {
  readonly name: string;
  readonly problem: Problem;
  readonly published: Published | undefined;
}

/**
 * Solves one instance against the clock, and checks the answer.
 *
 * @param solve the engine
 * @param instance the problem with what is published of it
 * @param limits when to stop
 */
export function measure(solve: Solve, instance: Instance, limits: Limits): Row {
  const { problem, published } = instance;
  const began = performance.now();
  const elapsed = (): number => (performance.now() - began) / 1000;
  let best: number | null = null;
  let bestSeconds: number | null = null;
  const outcome = solve(problem, {
    seed: limits.seed,
    effort: limits.effort,
    shouldStop: () => elapsed() > limits.seconds,
    onProgress: ({ value }) => {
      if (value === null || (best !== null && value >= best)) return;
      best = value;
      bestSeconds = elapsed();
    },
  });
  const seconds = elapsed();
  const planned = outcome.kind === 'proven' || outcome.kind === 'bounded';
  const first = planned ? outcome.tiers[0] : undefined;
  const proven = outcome.kind === 'impossible' || first?.proven === true;
  return {
    instance: instance.name,
    kind: outcome.kind,
    finish: first?.value ?? null,
    bound: first?.bound ?? null,
    proven,
    bestSeconds: planned ? (bestSeconds ?? seconds) : null,
    proofSeconds: proven ? seconds : null,
    seconds,
    work: outcome.work,
    published,
    criticalPath: published?.criticalPath ?? criticalPath(problem),
    faults: faultsOfOutcome(problem, outcome, published),
  };
}

function faultsOfOutcome(problem: Problem, outcome: Outcome, published: Published | undefined): string[] {
  if (outcome.kind === 'unknown') return [];
  const lower = published?.lower ?? 0;
  const upper = published?.upper ?? Infinity;
  if (outcome.kind === 'impossible') return upper < Infinity ? [`called impossible, but ${upper} is published`] : [];
  const faults = faultsOf(problem, outcome.solution).map((fault) => `invalid: ${fault}`);
  const values = plainTierValues(problem, outcome.solution);
  outcome.tiers.forEach((tier, index) => {
    if (tier.value !== values[index]) faults.push(`${tier.id} is ${values[index]}, said to be ${tier.value}`);
    if (tier.bound > tier.value) faults.push(`${tier.id}: bound ${tier.bound} above its value ${tier.value}`);
  });
  const first = outcome.tiers[0];
  if (first && first.value < lower) faults.push(`finish ${first.value} below the published bound ${lower}`);
  if (first && first.bound > upper) faults.push(`bound ${first.bound} above the published finish ${upper}`);
  return faults;
}
