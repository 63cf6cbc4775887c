import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Problem } from '../../solver/engine/problem.ts';
import { validateProblem } from '../../solver/engine/validate-problem.ts';
import { bruteForce } from '../support/brute-force.ts';
import { criticalPath } from './critical-path.ts';
import { listInstances } from './instances.ts';
import { readPublishedBounds } from './published-bounds.ts';
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

describe('folders never seen before', () => {
  const project = '3 1\n4\n0 0 1 2\n5 2 1 3\n0 0 0\n';
  let folder = '';
  const put = (name: string, text: string): string => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'afterheat-bench-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  it('are read without any list of published bounds', () => {
    put('b10.rcp', project);
    put('b9.rcp', project);
    put('notes.txt', 'not an instance');
    const listed = listInstances('rcpsp', folder, { blocking: false });
    expect(listed.map(({ name }) => name.split('/').at(-1))).toEqual(['b9.rcp', 'b10.rcp']);
    const instance = listed[0]!.open();
    expect(instance.published).toBeUndefined();
    expect(leastFinish(instance.problem)).toBe(5);
  });

  const odd: readonly { readonly name: string; readonly text: string; readonly words: RegExp }[] = [
    { name: 'an empty file', text: '', words: /odd\.rcp: ends after 0 numbers/ },
    {
      name: 'a file cut short',
      text: '3 1\n4\n0 0 1 2\n5',
      words: /odd\.rcp: wants 1 numbers after number 8, but 0 follow/,
    },
    { name: 'numbers left over', text: `${project} 7 7`, words: /odd\.rcp: 2 numbers are left/ },
    {
      name: 'more successors than numbers',
      text: '3 1\n4\n0 0 99 2\n',
      words: /odd\.rcp: wants 99 numbers after number 6/,
    },
  ];
  it.each(odd)('name the odd file and what is odd about it: $name', ({ text, words }) => {
    put('odd.rcp', text);
    const [listed] = listInstances('rcpsp', folder, { blocking: false });
    expect(() => listed!.open()).toThrow(words);
  });

  it('are refused in words where there is nothing, or a file where a folder is wanted', () => {
    const file = put('shops.json', '{}');
    expect(() => listInstances('rcpsp', join(folder, 'none'), { blocking: false })).toThrow(/nothing at/);
    expect(() => listInstances('rcpsp', file, { blocking: false })).toThrow(/is no folder/);
    expect(() => listInstances('jobshop', folder, { blocking: false })).toThrow(/is no file/);
    expect(() => listInstances('jobshop', file, { blocking: false })).toThrow(/no list "instances"/);
  });

  const lists: readonly { readonly name: string; readonly file: string; readonly text: string }[] = [
    { name: 'bounds in columns', file: 'a.csv', text: 'file,lower_bound,upper_bound\nj30/j30_1_2.rcp,47,47\n' },
    { name: 'optima beside instances', file: 'b.csv', text: 'Instance;Optimum\nj30_1_2;47\n' },
    {
      name: 'rows of parameter, instance, finish',
      file: 'j30opt.sm',
      text: 'Par Inst Finish\n1 2 47 0.1\n1 12 50 0.1\n',
    },
  ];
  it.each(lists)('take published optima from $name', ({ file, text }) => {
    const bounds = readPublishedBounds(put(file, text));
    expect(bounds('x/j30/j30_1_2.rcp')).toMatchObject({ lower: 47, upper: 47 });
    expect(bounds('x/j30/j30_1_3.rcp')).toBeUndefined();
  });

  it('take best known finishes as upper bounds alone, and PSPLIB’s own file names', () => {
    const bounds = readPublishedBounds(put('j120hrs.sm', '1 2 109\n'));
    expect(bounds('j1201_2.rcp')).toMatchObject({ lower: 0, upper: 109 });
  });

  it('refuse a list of neither form', () => {
    expect(() => readPublishedBounds(put('c.csv', 'some words\nand more\n'))).toThrow(/neither a CSV/);
    expect(() => readPublishedBounds(put('d.csv', 'file,colour\nx,red\n'))).toThrow(/no column of bounds/);
  });
});
