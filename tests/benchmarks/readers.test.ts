import { describe, expect, it } from 'vitest';
import type { Problem } from '../../solver/engine/problem.ts';
import { validateProblem } from '../../solver/engine/validate-problem.ts';
import { bruteForce } from '../support/brute-force.ts';
import { criticalPath } from './critical-path.ts';
import { readMultiMode } from './readers/multi-mode.ts';
import { readPatterson } from './readers/patterson.ts';
import { readProgenMax } from './readers/progen-max.ts';
import { readProjectReservoirs } from './readers/project-reservoirs.ts';
import { jobShopProblem, openShopProblem } from './readers/shops.ts';

/* All instances here are invented, small enough for their least finish to be found by complete enumeration and by hand. */

function leastFinish(problem: Problem): number | undefined {
  validateProblem(problem);
  const found = bruteForce(problem);
  return found.kind === 'optimal' ? found.values[0] : undefined;
}

describe('readers of published formats', () => {
  it('reads a project of the Patterson format: two of three activities do not fit side by side', () => {
    const text = `5 1
      3
      0 0  3  2 3 4
      2 2  1  5
      3 2  1  5
      4 1  1  5
      0 0  0`;
    const problem = readPatterson(text, 'invented');
    expect(problem.tasks).toHaveLength(3);
    expect(criticalPath(problem)).toBe(4);
    // 2 and 3 minutes in turn beside 4 minutes.
    expect(leastFinish(problem)).toBe(5);
  });

  const gaps = (longest: number): string => `2 1 0 0
    0 1 1 1 [0]
    1 1 1 2 [2]
    2 1 2 3 1 [3] [${-longest}]
    3 1 0
    0 1 0 0
    1 1 4 1
    2 1 3 1
    3 1 0 0
    1`;

  it('reads shortest and longest gaps of the ProGen/max format', () => {
    const problem = readProgenMax(gaps(4), 'invented');
    // The gap of 2 is met by the resource, which the first holds for 4 minutes; then 3 more.
    expect(leastFinish(problem)).toBe(7);
    expect(criticalPath(problem)).toBe(5);
  });

  it('finds no plan where a longest gap is shorter than the work before it', () => {
    expect(leastFinish(readProgenMax(gaps(3), 'invented'))).toBeUndefined();
  });

  it('reads modes, and draws resources that do not renew from a full reservoir', () => {
    const text = (stock: number): string => `****
jobs (incl. supersource/sink ):  4
RESOURCES
  - renewable                 :  1   R
  - nonrenewable              :  1   N
  - doubly constrained        :  0   D
****
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        2          1           4
   3        2          1           4
   4        1          0
****
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  N 1
------------------------------
  1      1     0       0    0
  2      1     1       1    5
         2     4       1    0
  3      1     2       1    5
         2     6       1    0
  4      1     0       0    0
****
RESOURCEAVAILABILITIES:
  R 1  N 1
   1   ${stock}
****`;
    // With 10 both take the short mode; with 5 only the second may, which saves more; with none neither.
    expect([10, 5, 0].map((stock) => leastFinish(readMultiMode(text(stock), 'invented')))).toEqual([3, 6, 10]);
  });

  it('reads reservoirs that are drawn from at starts and filled at ends', () => {
    const text = (level: number): string => `4 1 1
      2 ${level}
      0 0 9 9 2 2 3
      3 1 0 2 1 4
      2 1 2 0 1 4
      0 0 9 9 0`;
    // With 2 at first both run at once; with none the second waits for what the first makes.
    expect([2, 0].map((level) => leastFinish(readProjectReservoirs(text(level), 'invented')))).toEqual([3, 5]);
  });

  const shop = {
    name: 'invented',
    jobs: 2,
    machines: 2,
    ops: [
      [
        [0, 1],
        [1, 3],
      ],
      [
        [0, 1],
        [1, 3],
      ],
    ],
  } as const;

  it('reads a job shop; where nothing may wait between machines the first is held', () => {
    expect(leastFinish(jobShopProblem(shop))).toBe(7);
    const blocking = bruteForce(jobShopProblem(shop, true));
    if (blocking.kind !== 'optimal') throw new Error(blocking.kind);
    expect(blocking.values).toEqual([7]);
    const ends = blocking.solution.tasks.map((task) => task?.end ?? 0);
    // The later job leaves the first machine only when the second machine is free, at 4.
    expect([ends[0], ends[2]].sort()).toEqual([1, 4]);
  });

  it('reads an open shop: operations of a job in any order, never two at once', () => {
    const durations = [
      [2, 1],
      [1, 2],
    ];
    expect(leastFinish(openShopProblem({ name: 'invented', jobs: 2, machines: 2, durations }))).toBe(3);
  });
});
