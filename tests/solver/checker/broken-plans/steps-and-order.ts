/** Plans broken against rules 1 (every step is there) and 2 (order and gaps). */
import { componentOf, drop, recipeStep, retime, shift, stepOf, type BrokenPlan } from '../../../support/break-plan.ts';
import { on, step } from '../../../support/plan-builder.ts';

export const stepsAndOrder: readonly BrokenPlan[] = [
  { name: 'a step is missing', rule: 1, change: (plan) => drop(plan, 'stock/brew') },
  { name: 'a step of the second batch is missing', rule: 1, change: (plan) => drop(plan, 'rolls/flour.2') },
  {
    name: 'a step is there twice',
    rule: 1,
    change: (plan) => plan.steps.push(step('rolls/flour.2', 2, [on('bo', 30, 31)])),
  },
  {
    name: 'there is a step that no recipe has',
    rule: 1,
    change: (plan) => plan.steps.push(step('stock/skim', 4, [on('bo', 30, 31)])),
  },
  { name: 'hands-on work is too short', rule: 1, change: (plan) => retime(stepOf(plan, 'clearing/clear'), 63, 65) },
  {
    name: 'a wait is shorter than its shortest',
    rule: 1,
    change: (plan) => retime(stepOf(plan, 'greens/steam'), 13, 14, 19, 20),
  },
  {
    name: 'a wait is longer than its longest',
    rule: 1,
    change: (plan) => {
      stepOf(plan, 'millet/soak').places[0]!.until = 32;
      retime(stepOf(plan, 'millet/soak'), 21, 22, 31, 32);
    },
  },
  {
    name: 'the minutes to the boil are left out of a wait',
    rule: 1,
    change: (plan) => retime(stepOf(plan, 'sauce/simmer'), 22, 24, 36, 37),
  },
  {
    name: 'the segments of a step leave a hole',
    rule: 1,
    change: (plan) => {
      stepOf(plan, 'stock/brew').segments[1]!.end = 28;
    },
  },
  {
    name: 'the pieces of a step do not sum to it',
    rule: 1,
    change: (plan) => {
      retime(stepOf(plan, 'salad/chop~2'), 16, 19);
      for (const place of stepOf(plan, 'salad/chop~1').places) place.until = 19;
    },
  },
  {
    name: 'a piece is shorter than the least',
    rule: 1,
    change: (plan) => {
      const [first, second] = [stepOf(plan, 'salad/chop~1'), stepOf(plan, 'salad/chop~2')];
      first.end = first.segments[0]!.end = 12;
      second.start = second.segments[0]!.start = 15;
    },
  },
  {
    name: 'a step is in pieces that may not be interrupted',
    rule: 1,
    change: (plan) => {
      const tear = stepOf(plan, 'croutons/tear');
      tear.id = 'croutons/tear~1';
      tear.piece = 1;
      tear.end = tear.segments[0]!.end = 24;
      plan.steps.push(step('croutons/tear~2', 4, [on('bo', 24, 26)], [], { piece: 2 }));
    },
  },
  {
    name: 'a look on the way is too late',
    rule: 1,
    change: (plan) => Object.assign(stepOf(plan, 'chicken/roast').segments[2]!, { start: 30, end: 31 }),
  },
  {
    name: 'a look on the way is missing',
    rule: 1,
    change: (plan) => stepOf(plan, 'chicken/roast').segments.splice(2, 1),
  },
  {
    name: 'work runs past the end of the session',
    rule: 1,
    change: (plan) => {
      plan.session.longest = 'PT76M';
    },
  },
  {
    name: 'the batches are not a way of splitting the dish',
    rule: 1,
    change: (plan) => {
      for (const id of ['rolls/shape', 'rolls/flour']) {
        stepOf(plan, `${id}.1`).portions = 3;
        stepOf(plan, `${id}.2`).portions = 1;
      }
    },
  },
  {
    name: 'a step is done in a way that it does not have',
    rule: 1,
    change: (plan) => {
      stepOf(plan, 'stock/brew').alternative = 2;
    },
  },
  {
    name: 'putting away is counted in the finish',
    rule: 1,
    change: (plan) => {
      stepOf(plan, 'boxes/put-away').inFinish = true;
    },
  },
  {
    name: 'the finish is told a minute early',
    rule: 1,
    keepTotals: true,
    change: (plan) => {
      plan.finishMinutes -= 1;
    },
  },
  {
    name: 'the minutes of hands are told too few',
    rule: 1,
    keepTotals: true,
    change: (plan) => {
      plan.handsOnMinutes -= 1;
    },
  },
  { name: 'the work of the day before is missing', rule: 1, change: (plan) => plan.ahead.splice(0, 1) },
  { name: 'the work of a later day is missing', rule: 1, change: (plan) => plan.later.splice(0, 1) },
  {
    name: 'a dish has no recipe',
    rule: 1,
    change: (plan) => plan.session.dishes.push({ component: 'bread', portions: 4 }),
  },

  { name: 'a step comes before what it follows', rule: 2, change: (plan) => shift(stepOf(plan, 'croutons/tear'), 28) },
  {
    name: 'a batch goes on before its own step before',
    rule: 2,
    change: (plan) => shift(stepOf(plan, 'rolls/shape.1'), 27),
  },
  {
    name: 'a shortest gap is broken',
    rule: 2,
    change: (plan) => {
      recipeStep(plan, 'sauce/season').after = [{ step: 'simmer', shortest: 'PT3M' }];
    },
  },
  {
    name: 'a longest gap is broken',
    rule: 2,
    change: (plan) => {
      shift(stepOf(plan, 'sauce/season'), 6);
      plan.holds[0]!.place.until = 47;
    },
  },
  {
    name: 'what must follow at once follows a minute later',
    rule: 2,
    change: (plan) => shift(stepOf(plan, 'chicken/rest'), 1),
  },
  {
    name: 'boxes are filled before a dish is ready',
    rule: 2,
    change: (plan) => {
      componentOf(plan, 'chicken').ready = 'rest';
      shift(stepOf(plan, 'boxes/pack'), -2);
      shift(stepOf(plan, 'boxes/cool'), -2);
      shift(stepOf(plan, 'boxes/put-away'), -2);
    },
  },
];
