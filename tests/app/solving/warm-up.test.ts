import { describe, expect, test } from 'vitest';
import { runJob } from '../../../app/solving/run-job.ts';
import { warmUpProblems } from '../../../app/solving/warm-up-problems.ts';
import { warmUp } from '../../../app/solving/warm-up.ts';
import { solveTogether } from '../../../solver/engine/together.ts';
import { validateProblem } from '../../../solver/engine/validate-problem.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { faultsOf } from '../../support/plain-check.ts';

const job = {
  session: byId(demoSessions(), 'harbour-sunday'),
  kitchen: byId(demoKitchens(), 'harbour-one-oven'),
  components: demoComponents(),
  seed: 3,
  effort: 20_000,
};
const planned = (): unknown => {
  const result = runJob(job, { shouldStop: () => false, onProgress: () => {}, now: () => 0 });
  if (result.kind !== 'planned') throw new Error(`no plan: ${result.kind}`);
  return result.plan;
};

describe('running the engine warm', () => {
  test('a plan made after it is the plan made without it', () => {
    const before = planned();
    expect(warmUp(() => false)).toBe(true);
    expect(planned()).toEqual(before);
  });

  test('it ends before its first problem when somebody waits already', () => {
    let asked = 0;
    const ended = warmUp(() => {
      asked++;
      return true;
    });
    expect({ ended, asked }).toEqual({ ended: false, asked: 1 });
  });

  test('it ends within a problem when somebody comes', () => {
    let asked = 0;
    const ended = warmUp(() => ++asked > 3);
    // The engine asks once more for each turn that it leaves.
    expect(ended).toBe(false);
    expect(asked).toBeLessThan(20);
  });

  test('its problems are sound, and each gets a plan that keeps every limit or is called impossible', () => {
    for (const seed of [1, 2, 3])
      for (const problem of warmUpProblems(seed)) {
        validateProblem(problem);
        const outcome = solveTogether(problem, { seed, effort: 20_000 });
        if (outcome.kind === 'impossible') continue;
        if (!('solution' in outcome)) throw new Error(`${problem.name} ${seed}: ${outcome.kind}`);
        expect(faultsOf(problem, outcome.solution), `${problem.name} ${seed}`).toEqual([]);
      }
  });

  test('its problems touch gaps, options, calendars, soil, states, stocks, conditions, sums, flexible lengths and every kind of tier', () => {
    const problems = warmUpProblems(1);
    const some = (test: (problem: (typeof problems)[number]) => boolean): boolean => problems.some(test);
    expect(some(({ lags }) => lags.some(({ least }) => least < 0))).toBe(true);
    expect(some(({ choices }) => choices.length > 0)).toBe(true);
    expect(some(({ resources }) => resources.some(({ calendar }) => calendar !== undefined))).toBe(true);
    const uses = problems.flatMap(({ tasks }) =>
      tasks.flatMap(({ modes }) => modes.flatMap((mode) => mode?.uses ?? [])),
    );
    expect(uses.some(({ leaves }) => leaves !== undefined) && uses.some(({ cleans }) => cleans === true)).toBe(true);
    expect(some(({ states }) => states.length > 0) && some(({ reservoirs }) => reservoirs.length > 0)).toBe(true);
    expect(
      some(({ tasks }) => tasks.some(({ modes }) => modes.some((m) => m !== null && m.longest > m.shortest))),
    ).toBe(true);
    expect(some(({ tasks }) => tasks.some(({ when }) => when !== undefined))).toBe(true);
    expect(some(({ lags }) => lags.some((lag) => lag.if !== undefined))).toBe(true);
    expect(some(({ forbidden, totals }) => forbidden.length > 0 && totals.length > 0)).toBe(true);
    const kinds = new Set(problems.flatMap(({ tiers }) => tiers.map(({ kind }) => kind)));
    expect(kinds).toEqual(new Set(['latest', 'waiting', 'cost', 'changes']));
  });
});
