/** Small random multi-mode projects; all numbers are invented. */
import fc from 'fast-check';
import type { Mode, Problem } from '../../solver/engine/problem.ts';

interface Size {
  /** Most tasks, and fewest where not 2. */
  readonly tasks: number;
  readonly fewest?: number;
  readonly modes: number;
  readonly length: number;
  readonly horizon: number;
}

/** Projects of some tasks in one to some modes each, two resources, two stocks, lags from ends and starts of earlier tasks, releases. */
export function multiModeProjects({ tasks, fewest = 2, modes, length, horizon }: Size): fc.Arbitrary<Problem> {
  const small = (max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max });
  const moded = fc.record({
    minutes: small(length),
    uses: fc.tuple(small(2), small(2)),
    draws: fc.tuple(small(3), small(3)),
  });
  const lag = fc.record({
    to: fc.integer({ min: 1, max: tasks - 1 }),
    back: fc.integer({ min: 1, max: tasks }),
    least: small(2),
    end: fc.boolean(),
  });
  return fc
    .record({
      tasks: fc.array(fc.array(moded, { minLength: 1, maxLength: modes }), { minLength: fewest, maxLength: tasks }),
      lags: fc.array(lag, { maxLength: tasks }),
      release: small(2),
      stocks: fc.tuple(small(3 * tasks), small(3 * tasks)),
      broken: fc.boolean(),
    })
    .map(({ tasks: drawn, lags, release, stocks, broken }): Problem => {
      const ids = drawn.map((_, t) => `t${t}`);
      return {
        format: 'afterheat.problem',
        version: 1,
        name: 'invented multi-mode project',
        horizon,
        choices: drawn.map((list, t) => ({ id: `of-t${t}`, options: list.map((_, m) => `${m}`) })),
        tasks: drawn.map((list, t) => ({
          id: ids[t]!,
          choice: `of-t${t}`,
          modes: list.map(({ minutes, uses }): Mode => ({
            shortest: minutes,
            longest: minutes,
            uses: uses.flatMap((amount, r) => (amount > 0 ? [{ resource: `r${r}`, amount }] : [])),
          })),
        })),
        resources: [
          { id: 'r0', capacity: 2, ...(broken ? { calendar: [{ from: 2, until: 4, capacity: 1 }] } : {}) },
          { id: 'r1', capacity: 3 },
        ],
        states: [],
        reservoirs: stocks.map((initial, s) => ({
          id: `s${s}`,
          initial,
          events: drawn.flatMap((list, t) =>
            list.map(({ draws }, m) => ({
              point: { task: ids[t]!, at: s === 0 ? ('start' as const) : ('end' as const) },
              amount: 0 - draws[s]!,
              if: [{ choice: `of-t${t}`, options: [m] }],
            })),
          ),
        })),
        lags: [
          { from: 'origin', to: { task: ids.at(-1)!, at: 'start' }, least: release },
          ...lags
            .filter(({ to, back }) => to < ids.length && to - back >= 0)
            .map(({ to, back, least, end }) => ({
              from: { task: ids[to - back]!, at: end ? ('end' as const) : ('start' as const) },
              to: { task: ids[to]!, at: 'start' as const },
              least,
            })),
        ],
        forbidden: [],
        totals: [],
        tiers: [
          {
            kind: 'latest',
            id: 'finish',
            terms: [
              ...ids.map((task) => ({ point: { task, at: 'end' as const } })),
              { point: { task: ids[0]!, at: 'start' as const }, plus: 1 },
            ],
          },
        ],
      };
    });
}
