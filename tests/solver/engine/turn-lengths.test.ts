import { describe, expect, it } from 'vitest';
import { TurnLengths } from '../../../solver/engine/turn-lengths.ts';
import { problemWith, task } from './build-problem.ts';

/** A problem of so many tasks with one mode each (invented). */
const problemOf = (tasks: number): Parameters<typeof problemWith>[0] => ({
  tasks: Array.from({ length: tasks }, (_, k) => task(`t${k}`, 1)),
});
const untilPlan = (tasks: number): number => new TurnLengths(problemWith(problemOf(tasks)), false).untilPlan;

describe('the work that schedule generation may spend before there is a plan', () => {
  it.each([
    { tasks: 10, units: 300 },
    { tasks: 100, units: 30_000 },
    { tasks: 150, units: 67_500 },
    { tasks: 200, units: 120_000 },
    { tasks: 1_000, units: 120_000 },
  ])('is $units units for $tasks modes: by the square of their number, never beyond a limit', (given) => {
    expect(untilPlan(given.tasks)).toBe(given.units);
  });
});
