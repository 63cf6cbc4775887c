import { describe, expect, it } from 'vitest';
import { solveByLearning } from '../../solver/engine/learning/prove.ts';
import type { Outcome } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { solve } from '../../solver/engine/solve.ts';
import { faultsOf, plainTierValues } from '../support/plain-check.ts';
import { jobShopProblem } from '../benchmarks/readers/shops.ts';

const fisherThompson =
  'H. Fisher & G. L. Thompson (1963), in J. F. Muth & G. L. Thompson (eds.), Industrial Scheduling, Prentice-Hall';
const lawrence =
  'S. Lawrence (1984), Resource constrained project scheduling: an experimental investigation of heuristic scheduling ' +
  'techniques, GSIA, Carnegie-Mellon University';
// The optimum of FT10 was proved by J. Carlier & E. Pinson (1989), Management Science 35(2); those of LA01–LA05 stand in
// D. Applegate & W. Cook (1991), ORSA Journal on Computing 3(2).

interface Published {
  readonly name: string;
  readonly source: string;
  readonly optimum: number;
  /** How far above the optimum the first engine's plan may be within its effort, as a share of it. */
  readonly within: number;
  /** A row a job: machine and duration of each operation, in order. */
  readonly rows: readonly string[];
}

/** Work units, each by the engine's own measure. */
const efforts = { improving: 400_000, learning: 100_000_000 };

const jobShops: readonly Published[] = [
  {
    name: 'FT06',
    source: fisherThompson,
    optimum: 55,
    within: 0,
    rows: [
      '2 1  0 3  1 6  3 7  5 3  4 6',
      '1 8  2 5  4 10  5 10  0 10  3 4',
      '2 5  3 4  5 8  0 9  1 1  4 7',
      '1 5  0 5  2 5  3 3  4 8  5 9',
      '2 9  1 3  4 5  5 4  0 3  3 1',
      '1 3  3 3  5 9  0 10  4 4  2 1',
    ],
  },
  {
    name: 'FT10',
    source: fisherThompson,
    optimum: 930,
    within: 0.2,
    rows: [
      '0 29  1 78  2 9  3 36  4 49  5 11  6 62  7 56  8 44  9 21',
      '0 43  2 90  4 75  9 11  3 69  1 28  6 46  5 46  7 72  8 30',
      '1 91  0 85  3 39  2 74  8 90  5 10  7 12  6 89  9 45  4 33',
      '1 81  2 95  0 71  4 99  6 9  8 52  7 85  3 98  9 22  5 43',
      '2 14  0 6  1 22  5 61  3 26  4 69  8 21  7 49  9 72  6 53',
      '2 84  1 2  5 52  3 95  8 48  9 72  0 47  6 65  4 6  7 25',
      '1 46  0 37  3 61  2 13  6 32  5 21  9 32  8 89  7 30  4 55',
      '2 31  0 86  1 46  5 74  4 32  6 88  8 19  9 48  7 36  3 79',
      '0 76  1 69  3 76  5 51  2 85  9 11  6 40  7 89  4 26  8 74',
      '1 85  0 13  2 61  6 7  8 64  9 76  5 47  3 52  4 90  7 45',
    ],
  },
  {
    name: 'LA01',
    source: lawrence,
    optimum: 666,
    within: 0.02,
    rows: [
      '1 21  0 53  4 95  3 55  2 34',
      '0 21  3 52  4 16  2 26  1 71',
      '3 39  4 98  1 42  2 31  0 12',
      '1 77  0 55  4 79  2 66  3 77',
      '0 83  3 34  2 64  1 19  4 37',
      '1 54  2 43  4 79  0 92  3 62',
      '3 69  4 77  1 87  2 87  0 93',
      '2 38  0 60  1 41  3 24  4 83',
      '3 17  1 49  4 25  0 44  2 98',
      '4 77  3 79  2 43  1 75  0 96',
    ],
  },
  {
    name: 'LA02',
    source: lawrence,
    optimum: 655,
    within: 0.12,
    rows: [
      '0 20  3 87  1 31  4 76  2 17',
      '4 25  2 32  0 24  1 18  3 81',
      '1 72  2 23  4 28  0 58  3 99',
      '2 86  1 76  4 97  0 45  3 90',
      '4 27  0 42  3 48  2 17  1 46',
      '1 67  0 98  4 48  3 27  2 62',
      '4 28  1 12  3 19  0 80  2 50',
      '1 63  0 94  2 98  3 50  4 80',
      '4 14  0 75  2 50  1 41  3 55',
      '4 72  2 18  1 37  3 79  0 61',
    ],
  },
  {
    name: 'LA03',
    source: lawrence,
    optimum: 597,
    within: 0.12,
    rows: [
      '1 23  2 45  0 82  4 84  3 38',
      '2 21  1 29  0 18  4 41  3 50',
      '2 38  3 54  4 16  0 52  1 52',
      '4 37  0 54  2 74  1 62  3 57',
      '4 57  0 81  1 61  3 68  2 30',
      '4 81  0 79  1 89  2 89  3 11',
      '3 33  2 20  0 91  4 20  1 66',
      '4 24  1 84  0 32  2 55  3 8',
      '4 56  0 7  3 54  2 64  1 39',
      '4 40  1 83  0 19  2 8  3 7',
    ],
  },
  {
    name: 'LA04',
    source: lawrence,
    optimum: 590,
    within: 0.2,
    rows: [
      '0 12  2 94  3 92  4 91  1 7',
      '1 19  3 11  4 66  2 21  0 87',
      '1 14  0 75  3 13  4 16  2 20',
      '2 95  4 66  0 7  3 7  1 77',
      '1 45  3 6  4 89  0 15  2 34',
      '3 77  2 20  0 76  4 88  1 53',
      '2 74  1 88  0 52  3 27  4 9',
      '1 88  3 69  0 62  4 98  2 52',
      '2 61  4 9  0 62  1 52  3 90',
      '2 54  4 5  3 59  1 15  0 88',
    ],
  },
  {
    name: 'LA05',
    source: lawrence,
    optimum: 593,
    within: 0.02,
    rows: [
      '1 72  0 87  4 95  2 66  3 60',
      '4 5  3 35  0 48  2 39  1 54',
      '1 46  3 20  2 21  0 97  4 55',
      '0 59  3 19  4 46  1 34  2 37',
      '4 23  2 73  3 25  1 24  0 28',
      '3 28  0 45  4 5  1 78  2 83',
      '0 53  3 71  1 37  4 29  2 12',
      '4 12  2 87  3 33  1 55  0 38',
      '2 49  3 83  1 40  0 48  4 7',
      '2 65  3 17  0 90  4 27  1 23',
    ],
  },
];

/** Two on which a set of operations on one machine was once pushed too far, so that the least finish was "proved" too high. */
const onceWrong: readonly Omit<Published, 'within'>[] = [
  {
    name: 'LA23',
    source: lawrence,
    optimum: 1032,
    rows: [
      '7 84  5 58  8 77  2 44  4 97  6 89  3 5  1 58  9 96  0 9',
      '6 21  1 87  4 15  5 39  2 81  3 85  7 31  8 57  9 73  0 77',
      '0 40  5 71  8 34  9 82  3 70  6 22  4 10  7 80  2 48  1 49',
      '5 75  2 17  3 7  6 72  4 11  7 62  8 47  9 35  1 91  0 55',
      '9 20  4 12  6 71  7 67  0 64  2 94  8 15  5 50  3 75  1 90',
      '6 93  5 93  1 57  7 70  8 77  4 58  0 52  2 29  9 7  3 68',
      '7 56  0 95  8 48  4 26  2 82  1 63  9 36  3 27  6 87  5 6',
      '3 76  5 15  9 78  1 8  8 41  2 36  4 30  6 84  0 36  7 76',
      '0 75  7 13  2 81  8 29  4 54  6 82  5 88  1 78  9 40  3 13',
      '2 6  1 26  7 32  6 64  4 54  0 52  5 82  3 6  9 88  8 54',
      '8 62  2 67  5 32  0 62  7 69  3 61  1 35  4 72  9 5  6 93',
      '2 78  9 90  0 85  1 72  8 64  6 63  3 11  7 82  5 88  4 7',
      '4 28  9 11  7 50  6 88  0 44  5 31  2 27  1 66  8 49  3 35',
      '2 14  5 39  6 56  4 62  3 97  9 66  7 69  1 7  8 47  0 76',
      '1 18  8 93  7 58  6 47  3 69  9 57  2 41  5 53  4 79  0 64',
    ],
  },
  {
    name: 'ORB06',
    source: 'D. Applegate & W. Cook (1991), ORSA Journal on Computing 3(2), 149–156',
    optimum: 1010,
    rows: [
      '0 99  1 74  2 49  3 67  4 17  5 7  6 9  7 39  8 35  9 49',
      '0 49  3 67  4 82  2 92  1 62  5 84  8 45  6 30  7 42  9 71',
      '0 26  3 33  1 82  2 98  5 83  4 16  6 64  7 65  9 36  8 77',
      '0 41  1 62  4 73  3 94  6 51  5 46  2 55  9 31  7 64  8 46',
      '1 68  0 26  5 50  3 46  4 25  7 88  2 6  8 13  9 98  6 84',
      '0 24  6 80  2 91  3 55  1 48  8 99  4 72  9 91  7 84  5 12',
      '2 16  3 13  0 9  1 58  4 23  7 85  5 36  6 89  8 71  9 41',
      '2 54  0 41  3 38  4 53  1 11  5 74  9 88  6 46  7 41  8 65',
      '2 53  1 50  4 40  0 90  7 7  5 80  3 57  9 60  6 91  8 47',
      '2 45  0 59  8 81  3 99  6 71  1 19  4 75  7 77  9 94  5 95',
    ],
  },
];

function problemOf({ name, rows }: Omit<Published, 'within'>): Problem {
  const ops = rows.map((row) => row.split('  ').map((pair) => pair.split(' ').map(Number) as [number, number]));
  return jobShopProblem({ name, jobs: ops.length, machines: ops[0]?.length ?? 0, ops });
}

/** The finish of a plan that is one, never better than the optimum nor said to be bounded above it. */
function honestFinish(problem: Problem, outcome: Outcome, optimum: number): { value: number; proven: boolean } {
  if (outcome.kind !== 'bounded' && outcome.kind !== 'proven') throw new Error(`${outcome.kind} without a plan`);
  const [finish] = outcome.tiers;
  if (!finish) throw new Error('no tier');
  expect(faultsOf(problem, outcome.solution)).toEqual([]);
  expect(plainTierValues(problem, outcome.solution)).toEqual([finish.value]);
  expect(finish.value).toBeGreaterThanOrEqual(optimum);
  expect(finish.bound).toBeLessThanOrEqual(optimum);
  if (finish.proven) expect(finish.value).toBe(optimum);
  return finish;
}

describe('published job shops', () => {
  it.each(jobShops)('$name is planned within $within of its least finish, $optimum ($source)', (published) => {
    const problem = problemOf(published);
    const outcome = solve(problem, { seed: 1, effort: efforts.improving });
    const { value } = honestFinish(problem, outcome, published.optimum);
    expect(value).toBeLessThanOrEqual(Math.floor(published.optimum * (1 + published.within)));
  });

  it.each([...jobShops, ...onceWrong])(
    '$name is proved to need $optimum by learning from conflicts ($source)',
    (published) => {
      const problem = problemOf(published);
      const outcome = solveByLearning(problem, { seed: 1, effort: efforts.learning });
      const { value, proven } = honestFinish(problem, outcome, published.optimum);
      expect({ value, proven }).toEqual({ value: published.optimum, proven: true });
    },
  );
});
