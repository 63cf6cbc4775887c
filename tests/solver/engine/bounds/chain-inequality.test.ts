import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainInequality } from '../../../../solver/engine/bounds/chain-inequality.ts';
import { chainPrices, type ChainPrices } from '../../../../solver/engine/bounds/chain-program.ts';
import { asModeProject, type ModeProject } from '../../../../solver/engine/project/mode-project.ts';
import { bruteForce } from '../../../support/brute-force.ts';
import { multiModeProjects } from '../../../support/multi-mode-projects.ts';
import { after, mode, problemWith, startOf } from '../build-problem.ts';

/** The least tier that the inequality allows when each task takes its cheapest mode. */
function boundBy(project: ModeProject, prices: ChainPrices): number {
  const { costs, constant, factor } = chainInequality(project, prices);
  const { firstMode } = project.modes;
  let sum = constant;
  for (let task = 0; task + 1 < firstMode.length; task++)
    sum += costs.subarray(firstMode[task], firstMode[task + 1]).reduce((a, b) => Math.min(a, b));
  return factor === 0 ? 0 : sum / factor;
}

describe('What chains, stocks and energies say together', () => {
  const ids = ['a', 'b'];
  const problem = problemWith({
    choices: ids.map((id) => ({ id: `of-${id}`, options: ['soon', 'thrifty'] })),
    tasks: ids.map((id) => ({ id, choice: `of-${id}`, modes: [mode(1), mode(3)] })),
    lags: [after('a', 'b')],
    reservoirs: [
      {
        id: 'n',
        initial: 1,
        events: ids.map((id) => ({ point: startOf(id), amount: -1, if: [{ choice: `of-${id}`, options: [0] }] })),
      },
    ],
  });

  test('is 4 minutes for two tasks of 1 minute, or 3 where they draw nothing, and a stock for one (invented, by hand)', () => {
    expect(bruteForce({ ...problem, horizon: 8 })).toMatchObject({ kind: 'optimal', values: [4] });
    const project = asModeProject(problem)!;
    expect(boundBy(project, chainPrices(project))).toBeCloseTo(4, 2);
  });

  test('is never more than the least finish by complete enumeration, whatever the prices', () => {
    const price = fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 40, maxLength: 40 });
    let raised = 0;
    fc.assert(
      fc.property(
        multiModeProjects({ tasks: 4, modes: 2, length: 3, horizon: 12 }),
        fc.record({ lag: price, end: price, start: price, release: price, stock: price, resource: price }),
        (given, drawn) => {
          const project = asModeProject(given)!;
          const known = bruteForce(given);
          if (known.kind !== 'optimal') return;
          const { modes, lags, draws } = project;
          const tasks = modes.firstMode.length - 1;
          const some = (list: readonly number[], count: number): Float64Array =>
            Float64Array.from(list.slice(0, count));
          const any = {
            lag: some(drawn.lag, lags.after.items.length),
            end: some(drawn.end, tasks),
            start: some(drawn.start, tasks),
            release: some(drawn.release, tasks),
            stock: some(drawn.stock, draws.stocks),
            resource: some(drawn.resource, 2),
          };
          const told = boundBy(project, chainPrices(project));
          expect(boundBy(project, any)).toBeLessThanOrEqual(known.values[0]! + 1e-9);
          expect(told).toBeLessThanOrEqual(known.values[0]! + 1e-9);
          if (told > known.values[0]! - 1) raised++;
        },
      ),
      { seed: 5, numRuns: 200 },
    );
    expect(raised).toBeGreaterThan(50);
  });
});
