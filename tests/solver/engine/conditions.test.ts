import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ConditionTable } from '../../../solver/engine/conditions.ts';
import type { Literal } from '../../../solver/engine/problem.ts';
import { problemWith } from './build-problem.ts';

const OPTIONS = [2, 3, 4];
const choices = OPTIONS.map((count, c) => ({ id: `c${c}`, options: Array.from({ length: count }, (_, k) => `${k}`) }));

const literal = fc
  .integer({ min: 0, max: OPTIONS.length - 1 })
  .chain((choice) =>
    fc
      .array(fc.integer({ min: 0, max: OPTIONS[choice]! - 1 }), { maxLength: 4 })
      .map((options): Literal => ({ choice: `c${choice}`, options })),
  );
const conjunction = fc.array(literal, { maxLength: 4 });

const everyTaking = OPTIONS.reduce<number[][]>(
  (takings, count) => takings.flatMap((taken) => Array.from({ length: count }, (_, option) => [...taken, option])),
  [[]],
);
const holds = (literals: readonly Literal[], taken: readonly number[]): boolean =>
  literals.every(({ choice, options }) => options.includes(taken[Number(choice.slice(1))]!));
const holdsIn = (table: ConditionTable, condition: number, taken: readonly number[]): boolean =>
  table.literalsOf(condition).every(({ choice, options }) => options.includes(taken[choice]!));

describe('conditions', () => {
  it('hold, each and joined, exactly where their literals do', () => {
    fc.assert(
      fc.property(fc.array(conjunction, { minLength: 3, maxLength: 6 }), (conjunctions) => {
        const table = new ConditionTable(problemWith({ choices }));
        const made = conjunctions.map((literals) => table.of(literals));
        const [a, b, c] = made as [number, number, number];
        for (const taken of everyTaking) {
          const each = conjunctions.map((literals) => holds(literals, taken));
          expect(made.map((condition) => holdsIn(table, condition, taken))).toEqual(each);
          expect(holdsIn(table, table.and(a, b), taken)).toBe(each[0]! && each[1]!);
          expect(holdsIn(table, table.and(a, b, c), taken)).toBe(each[0]! && each[1]! && each[2]!);
        }
      }),
    );
  });

  it('leave to be shown what is not known yet', () => {
    fc.assert(
      fc.property(conjunction, conjunction, (literals, given) => {
        const table = new ConditionTable(problemWith({ choices }));
        const rest = table.without(table.of(literals), table.of(given));
        for (const taken of everyTaking.filter((each) => holds(given, each)))
          expect(holdsIn(table, rest, taken)).toBe(holds(literals, taken));
      }),
    );
  });

  it('are the same condition where they ask the same', () => {
    fc.assert(
      fc.property(conjunction, conjunction, (first, second) => {
        const table = new ConditionTable(problemWith({ choices }));
        const alike = everyTaking.every((taken) => holds(first, taken) === holds(second, taken));
        const satisfiable = everyTaking.some((taken) => holds(first, taken));
        if (satisfiable) expect(table.of(first) === table.of(second)).toBe(alike);
        expect(table.of([...first].reverse())).toBe(table.of(first));
      }),
    );
  });
});
