import { describe, expect, test } from 'vitest';
import { readArguments } from '../../../app/cli/arguments.ts';

const wrong = (...args: readonly string[]): string => {
  const read = readArguments(args);
  return read.kind === 'wrong' ? read.problem : read.kind;
};

test('a verb is read with its subject and all of its options', () => {
  const args =
    'plan a.session.json --kitchen k --crew two --intent calmest --effort 5000 --seed 0 --json --out p.json --data d';
  expect(readArguments(args.split(' '))).toEqual({
    kind: 'verb',
    verb: 'plan',
    subject: 'a.session.json',
    options: {
      kitchens: ['k'],
      crew: 'two',
      intent: 'calmest',
      effort: 5000,
      seed: 0,
      json: true,
      dark: false,
      out: 'p.json',
      data: 'd',
    },
  });
});

test('compare takes several kitchens', () => {
  expect(readArguments(['compare', 's', '--kitchen', 'a', '--kitchen', 'b'])).toMatchObject({
    options: { kitchens: ['a', 'b'] },
  });
});

test.each([[['--help']], [['-h']], [['help']], [['plan', '--help']]])('%j asks for help', (args) => {
  expect(readArguments(args)).toEqual({ kind: 'help' });
});

describe('wrong arguments are told in a sentence', () => {
  test.each([
    [[], 'no verb was given'],
    [['pln', 's'], 'there is no verb "pln"; did you mean "plan"?'],
    [['plan'], 'afterheat plan takes a SESSION'],
    [['check', 'a', 'b'], 'afterheat check takes one PLAN, not also "b"'],
    [['check', 'a', '--seed', '1'], 'afterheat check takes no --seed'],
    [['plan', 's', '--intent', 'fastest'], '--intent is one of soonest, freshest, thriftiest, calmest, not "fastest"'],
    [['plan', 's', '--effort', '0'], '--effort is a whole number of work units from 1, not "0"'],
    [['plan', 's', '--effort', 'lots'], '--effort is a whole number of work units from 1, not "lots"'],
    [['plan', 's', '--seed', '4294967296'], '--seed is a whole number from 0 to 4294967295, not "4294967296"'],
    [['plan', 's', '--kitchen', 'a', '--kitchen', 'b'], 'afterheat plan takes one --kitchen'],
  ])('%j', (args, problem) => {
    expect(wrong(...args)).toBe(problem);
  });

  test('an option that there is none of', () => {
    expect(wrong('plan', 's', '--quick')).toContain("'--quick'");
  });
});
