import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../solver/engine/problem.ts';
import type { Solution } from '../../../solver/engine/outcome.ts';
import { verifySolution } from '../../../solver/engine/verify-solution.ts';
import { after, endOf, mode, problemWith, startOf, task, use, within } from './build-problem.ts';

/** Every mechanism of the format in one plan; all numbers invented. */
const problem: Problem = problemWith({
  horizon: 40,
  choices: [
    { id: 'who', options: ['ann', 'bo'] },
    { id: 'wash', options: ['none', 'ann'] },
  ],
  resources: [
    { id: 'ann', capacity: 1, calendar: [{ from: 30, until: 40, capacity: 0 }] },
    { id: 'bo', capacity: 1 },
    { id: 'board', capacity: 1 },
    { id: 'oven', capacity: 2 },
  ],
  states: [
    {
      id: 'heat',
      classes: ['low', 'high'],
      gap: [
        [null, 4],
        [6, null],
      ],
    },
  ],
  tasks: [
    { id: 'chop', choice: 'who', modes: [mode(3, [use('ann')]), mode(4, [use('bo')])] },
    task('nuts', 2, [use('board', 1, { leaves: ['nuts'] })]),
    task('plain', 2, [use('board', 1, { avoids: ['nuts'] })]),
    { id: 'rinse', choice: 'wash', modes: [null, mode(1, [use('ann'), use('board', 1, { cleans: true })])] },
    { id: 'slow', modes: [mode([5, 8], [use('oven')], { state: { state: 'heat', class: 0 } })] },
    { id: 'fast', modes: [mode(5, [use('oven')], { state: { state: 'heat', class: 1 } })] },
    task('fill', 1),
    task('draw', 1),
    task('half', [1, 9]),
    task('rest', [1, 9]),
  ],
  reservoirs: [
    {
      id: 'water',
      initial: 1,
      capacity: 4,
      events: [
        { point: endOf('fill'), amount: 3 },
        { point: startOf('draw'), amount: -4 },
      ],
    },
  ],
  lags: [
    after('fill', 'draw', 2, { requirement: 'settle' }),
    within('fill', 'draw', 6),
    after('chop', 'draw', 0, { if: [{ choice: 'who', options: [1] }] }),
  ],
  forbidden: [
    [
      { choice: 'who', options: [1] },
      { choice: 'wash', options: [0] },
    ],
  ],
  totals: [{ tasks: ['half', 'rest'], total: 7 }],
});

const good: Solution = {
  choices: [0, 1],
  tasks: [
    { start: 0, end: 3 },
    { start: 0, end: 2 },
    { start: 4, end: 6 },
    { start: 3, end: 4 },
    { start: 0, end: 6 },
    { start: 10, end: 15 },
    { start: 0, end: 1 },
    { start: 5, end: 6 },
    { start: 0, end: 3 },
    { start: 3, end: 7 },
  ],
};

const moved = (id: string, start: number, end: number, choices = good.choices): Solution => ({
  choices,
  tasks: good.tasks.map((interval, index) => (problem.tasks[index]?.id === id ? { start, end } : interval)),
});

describe('verifySolution', () => {
  it('accepts a plan that keeps every promise', () => {
    expect(verifySolution(problem, good)).toEqual([]);
  });

  it.each<{ name: string; given: Solution; expected: string }>([
    {
      name: 'an option that there is not',
      given: { ...good, choices: [2, 1] },
      expected: 'choice who takes option 2 of 2',
    },
    {
      name: 'a task placed though absent',
      given: { ...good, choices: [0, 0] },
      expected: 'task rinse is placed but absent under the choices taken',
    },
    {
      name: 'a task left out though present',
      given: { ...good, tasks: good.tasks.map((interval, index) => (index === 6 ? null : interval)) },
      expected: 'task fill is present under the choices taken but not placed',
    },
    { name: 'a length outside the mode', given: moved('slow', 0, 9), expected: 'task slow lasts 9, outside 5–8' },
    {
      name: 'a start before the origin',
      given: moved('slow', -1, 5),
      expected: 'task slow starts at -1, before the origin',
    },
    {
      name: 'an end past the horizon',
      given: moved('fast', 36, 41),
      expected: 'task fast ends at 41, after the horizon 40',
    },
    {
      name: 'two at once on one person',
      given: moved('chop', 1, 4),
      expected: 'resource ann is used by 2 of 1 at minute 3',
    },
    {
      name: 'work in a break of the calendar',
      given: moved('chop', 29, 32),
      expected: 'resource ann is used by 1 of 0 at minute 30',
    },
    {
      name: 'two states without the gap of that order',
      given: moved('fast', 9, 14),
      expected: 'tasks slow and fast need state heat in two classes without the gap between',
    },
    {
      name: 'a dirty board without a washing between',
      given: moved('plain', 2, 4),
      expected: 'task plain meets nuts left on board by nuts',
    },
    {
      name: 'a draw of more than there is',
      given: moved('fill', 4, 5),
      expected: 'lag from the end of fill to the start of draw (settle) is 0, least is 2',
    },
    {
      name: 'a longest gap passed',
      given: moved('draw', 8, 9),
      expected: 'lag from the start of draw to the end of fill is -7, least is -6',
    },
    {
      name: 'pieces that do not add up',
      given: moved('rest', 3, 8),
      expected: 'lengths of half, rest sum to 8, not 7',
    },
  ])('names $name', ({ given, expected }) => {
    expect(verifySolution(problem, given)).toContain(expected);
  });

  it('lets a soiled use come after the one that avoids it without any washing', () => {
    const swapped = {
      choices: [0, 0],
      tasks: good.tasks.map((interval, index) => (index === 1 ? { start: 6, end: 8 } : index === 3 ? null : interval)),
    };
    expect(verifySolution(problem, swapped)).toEqual([]);
  });

  it('judges a conditional lag and a forbidden conjunction only where their literals hold', () => {
    const byBo = moved('chop', 2, 6, [1, 1]);
    expect(verifySolution(problem, byBo)).toEqual(['lag from the end of chop to the start of draw is -1, least is 0']);
  });

  it('names a reservoir that would run dry or over, after all events of the minute', () => {
    const small = { ...problem, reservoirs: [{ ...problem.reservoirs[0]!, initial: 0, capacity: 2 }] };
    expect(verifySolution(small, good)).toEqual([
      'reservoir water is at 3 of 2 at minute 1',
      'reservoir water is at -1 at minute 5',
    ]);
  });
});
