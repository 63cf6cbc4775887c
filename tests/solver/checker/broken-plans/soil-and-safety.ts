/** Plans broken against rules 8 (soil), 9 (safety) and 10 (pins, table, earlier days). */
import { place } from '../../../support/plan-builder.ts';
import type { SafetyRule, SafetyRules } from '../../../../solver/kitchen/safety-rules.ts';
import { STRICTEST_BUILT_IN } from '../../../../solver/safety/rules-in-force.ts';
import { componentOf, drop, recipeStep, shift, stepOf, type BrokenPlan } from '../../../support/break-plan.ts';

const invented = { source: { standing: 'invented', cite: 'invented for a test' }, edition: 'invented' } as const;

/** The strictest rules with another time from the heat to the fridge. */
const within =
  (mostMinutes: number) =>
  (rule: SafetyRule): SafetyRule =>
    rule.kind === 'cooling' && rule.end.event === 'into-the-fridge' ? { ...rule, mostMinutes } : rule;

/** The strictest rules with an invented toxin. */
const withToxin = (soakMinutes: number, boilMinutes: number): SafetyRules => ({
  ...STRICTEST_BUILT_IN,
  rules: [
    ...STRICTEST_BUILT_IN.rules,
    {
      kind: 'toxin',
      id: 'toxin-beans',
      toxin: 'beans',
      name: 'toxin of beans',
      soakMinutes,
      boilMinutes,
      ...invented,
    },
  ],
});

export const soilAndSafety: readonly BrokenPlan[] = [
  {
    name: 'a board goes from raw chicken to salad unwashed',
    rule: 8,
    change: (plan) => drop(plan, 'wash/board.1'),
  },
  {
    name: 'a knife goes from raw chicken to salad unwashed',
    rule: 8,
    change: (plan) => drop(plan, 'wash/knife.1'),
  },
  {
    name: 'a bowl goes from dough to millet unwashed',
    rule: 8,
    change: (plan) => drop(plan, 'wash/bowl.1'),
  },
  {
    name: 'hands go from raw chicken to greens unwashed',
    rule: 8,
    change: (plan) => {
      // Somebody else washes up after Ada.
      for (const id of ['wash/board.1', 'wash/knife.1']) stepOf(plan, id).segments[0]!.person = 'bo';
      for (const id of ['rolls/shape.2', 'rolls/flour.1']) shift(stepOf(plan, id), 25);
      shift(stepOf(plan, 'rolls/flour.2'), 20);
    },
  },
  {
    name: 'hands go from flour to greens unwashed',
    rule: 8,
    change: (plan) => {
      const flour = stepOf(plan, 'rolls/flour.2');
      shift(flour, -4);
      flour.segments[0]!.person = 'ada';
    },
  },
  {
    name: 'a wash is shorter than a wash takes',
    rule: 8,
    change: (plan) => {
      plan.kitchen.washing.board = 1.5;
    },
  },
  {
    name: 'hands are washed for less than the safety rules ask',
    rule: 8,
    change: (plan) => {
      plan.rules = {
        ...STRICTEST_BUILT_IN,
        rules: STRICTEST_BUILT_IN.rules.map((rule) =>
          rule.kind === 'washing' && rule.what === 'hands' ? { ...rule, leastSeconds: 90 } : rule,
        ),
      };
    },
  },
  {
    name: 'a wash has no sink',
    rule: 8,
    change: (plan) => stepOf(plan, 'wash/board.1').places.splice(0, 1),
  },
  {
    name: 'a wash does not have the thing to be washed',
    rule: 8,
    change: (plan) => stepOf(plan, 'wash/board.1').places.splice(1, 1),
  },
  {
    name: 'a tray goes from chicken to bread unwashed',
    rule: 8,
    change: (plan) => {
      stepOf(plan, 'croutons/crisp').places[1]!.id = 'tray-a';
    },
  },
  {
    name: 'greens are steamed over the water of the pasta',
    rule: 8,
    change: (plan) => {
      // The soil of what is in a pool at any time of a steaming is on it.
      componentOf(plan, 'greens').ingredients[0]!.allergens = ['celery'];
      plan.session.eaters!.push({ id: 'sam', name: 'Sam', avoids: ['celery'], boxes: 1, eats: ['pasta'] });
      // Eve's boxes and Sam's each hold what the other avoids: a minute of filling goes to a wash between them.
      plan.session.packing!.work = { fixed: 'PT3M' };
      stepOf(plan, 'greens/steam').segments[2]!.person = 'ada';
      stepOf(plan, 'pasta/boil').segments[2]!.person = 'bo';
      plan.session.people[1]!.can = ['adult'];
    },
  },
  {
    name: 'water for the millet is drawn from where pasta boils',
    rule: 8,
    change: (plan) => {
      const millet = stepOf(plan, 'millet/soak');
      const pasta = stepOf(plan, 'pasta/boil');
      // Pasta goes in a minute before the ladle.
      shift(pasta, -2);
      pasta.end += 2;
      Object.assign(pasta.segments[1]!, { end: 33 });
      Object.assign(pasta.segments[2]!, { start: 33, end: 35 });
      pasta.places[0]!.until = 35;
      const [, boil] = recipeStep(plan, 'pasta/boil').segments;
      if (boil?.hands === 'off') boil.longest = 'PT20M';
      millet.places[1]!.boil = 1;
    },
  },
  {
    name: 'chicken drips mustard on squash that must stay free of it',
    rule: 8,
    change: (plan) => {
      componentOf(plan, 'chicken').ingredients[0]!.allergens = ['mustard'];
      plan.session.eaters!.push({ id: 'sam', name: 'Sam', avoids: ['mustard'], boxes: 1, eats: ['squash'] });
      // By clean hands: Bo's.
      shift(stepOf(plan, 'croutons/tear'), 7);
      for (const segment of stepOf(plan, 'squash/bake').segments) if (segment.hands === 'on') segment.person = 'bo';
    },
  },
  {
    name: 'hands that lifted pasta fill boxes without gluten unwashed',
    rule: 8,
    change: (plan) => drop(plan, 'wash/ada.1'),
  },
  {
    name: 'flour comes to the millet by way of the squash and other hands',
    rule: 8,
    change: (plan) => drop(plan, 'wash/ada.2'),
  },
  {
    name: 'millet is brewed in an appliance after wheat',
    rule: 8,
    change: (plan) => {
      plan.kitchen.appliances.push({ id: 'steamer', name: 'the steamer', does: 'steam', powerW: 0, places: 1 });
      recipeStep(plan, 'rolls/mix').needs.push({ use: 'appliance', does: 'steam' });
      stepOf(plan, 'rolls/mix').places.push(place('appliance', 'steamer', 0, 3));
      recipeStep(plan, 'millet/soak').needs.push({ use: 'appliance', does: 'steam' });
      stepOf(plan, 'millet/soak').places.push(place('appliance', 'steamer', 21, 29));
    },
  },
  {
    name: 'hands go from bread to an eater without boxes at the table',
    rule: 8,
    change: (plan) => {
      // Ada seasons with the hands that lifted the pasta.
      plan.session.eaters = [{ id: 'sam', name: 'Sam', avoids: ['wheat'], boxes: 0, eats: ['sauce'] }];
      plan.session.table = { at: 'PT41M', dishes: ['sauce'], othersMayRunPast: true };
    },
  },

  {
    name: 'the probe reading of the chicken is not planned',
    rule: 9,
    change: (plan) => {
      delete stepOf(plan, 'chicken/roast').segments[3]!.probe;
    },
  },
  {
    name: 'a recipe cooks raw poultry through and reads no probe',
    rule: 9,
    change: (plan) => {
      const [, , out] = recipeStep(plan, 'chicken/roast').segments;
      if (out?.hands === 'on') delete out.probe;
      delete stepOf(plan, 'chicken/roast').segments[3]!.probe;
    },
  },
  {
    name: 'raw poultry roasts in an oven set too low',
    rule: 9,
    change: (plan) => {
      for (const id of ['chicken/roast', 'squash/bake'])
        for (const need of recipeStep(plan, id).needs) if (need.use === 'oven') need.leastC = 150;
      plan.ovens[0]!.settings[0]!.celsius = 160;
    },
  },
  {
    name: 'a recipe takes poultry out at 65 °C with no hold',
    rule: 9,
    change: (plan) => {
      recipeStep(plan, 'chicken/roast').cooksThrough = { raw: 'poultry', coreC: 65, holdSeconds: 0 };
    },
  },
  {
    name: 'a recipe takes raw egg for cooked and cooks none through',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'squash').ingredients[0]!.raw = 'egg';
    },
  },
  {
    name: 'whole meat is served before it has rested for 3 min',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'squash').ingredients[0]!.raw = 'meat';
      const bake = recipeStep(plan, 'squash/bake');
      bake.cooksThrough = { raw: 'meat', cut: 'whole', coreC: 70, holdSeconds: 120 };
      const [, , out] = bake.segments;
      if (out?.hands === 'on') out.probe = true;
      stepOf(plan, 'squash/bake').segments[2]!.probe = true;
      const serve = {
        ...structuredClone(recipeStep(plan, 'rolls/flour')),
        id: 'slice',
        name: 'slice',
        readyToEat: true,
      };
      componentOf(plan, 'squash').steps.push({ ...serve, after: [{ step: 'bake' }] });
      plan.steps.push({
        ...structuredClone(stepOf(plan, 'rolls/flour.1')),
        id: 'squash/slice',
        component: 'squash',
        step: 'slice',
        name: 'slice',
        portions: 4,
        start: 27,
        end: 28,
        segments: [{ hands: 'on', start: 27, end: 28, person: 'cy' }],
      });
      plan.session.people.push({ id: 'cy', name: 'Cy', can: [] });
      plan.crew.push('cy');
    },
  },
  {
    name: 'millet soaked in hot water reaches the fridge after the time that the safety rules give',
    rule: 9,
    change: (plan) => {
      plan.rules = { ...STRICTEST_BUILT_IN, rules: STRICTEST_BUILT_IN.rules.map(within(54)) };
    },
  },
  {
    name: 'a cooling brings the core down later than the safety rules give it',
    rule: 9,
    change: (plan) => {
      const [wait] = recipeStep(plan, 'chicken/rest').segments;
      // As cold at once as it is asked to be: the cooling itself takes no minutes.
      const cools = { fromC: 60, toC: 60, depthMm: 10, in: 'air', food: 'kale-boiled' } as const;
      if (wait?.hands === 'off') wait.cools = cools;
      const stage = { kind: 'cooling', id: 'stage', mostMinutes: 4, ...invented } as const;
      const start = { event: 'core-below', celsius: 63 } as const;
      plan.rules = {
        ...STRICTEST_BUILT_IN,
        rules: [...STRICTEST_BUILT_IN.rules, { ...stage, start, end: { event: 'core-at-most', celsius: 60 } }],
      };
    },
  },
  {
    name: 'food is kept hot at less than the safety rules ask',
    rule: 9,
    change: (plan) => {
      recipeStep(plan, 'chicken/rest').hotHold = { leastC: 60, longest: 'PT30M' };
    },
  },
  {
    name: 'a recipe says that leftovers keep for three days',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'greens').keeps.fridge = 'P3D';
    },
  },
  {
    name: 'beans with a toxin are not boiled for long enough',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'pasta').ingredients[0]!.toxin = { kind: 'beans', boil: 'boil' };
      plan.rules = withToxin(0, 15);
    },
  },
  {
    name: 'beans with a toxin are not soaked for long enough',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'pasta').ingredients[0]!.toxin = { kind: 'beans', soak: 'boil', boil: 'boil' };
      plan.rules = withToxin(300, 5);
    },
  },
  {
    name: 'chicken is in the fridge too late',
    rule: 9,
    change: (plan) => {
      componentOf(plan, 'chicken').fridge!.within = 'PT33M';
    },
  },
  {
    name: 'food is kept hot too long',
    rule: 9,
    change: (plan) => {
      recipeStep(plan, 'chicken/rest').hotHold = { leastC: 63, longest: 'PT5M' };
    },
  },
  {
    name: 'food is kept hot in an oven that is too cool for it',
    rule: 9,
    change: (plan) => {
      recipeStep(plan, 'croutons/crisp').hotHold = { leastC: 130, longest: 'PT30M' };
    },
  },

  {
    name: 'a step begins a minute after where it is pinned',
    rule: 10,
    change: (plan) => {
      plan.session.pins![0]!.start = 'PT9M';
    },
  },
  {
    name: 'a step is done by somebody else than pinned',
    rule: 10,
    change: (plan) => {
      plan.session.pins![1]!.person = 'bo';
    },
  },
  {
    name: 'a step is elsewhere than pinned',
    rule: 10,
    change: (plan) => {
      plan.session.pins![0]!.place = 'low';
    },
  },
  {
    name: 'a dish is on the table too late',
    rule: 10,
    change: (plan) => {
      plan.session.table = { at: 'PT48M', dishes: ['chicken'], othersMayRunPast: true };
    },
  },
  {
    name: 'a dish is ready too long before the table',
    rule: 10,
    change: (plan) => {
      plan.session.table = { at: 'PT55M', dishes: ['chicken'], othersMayRunPast: true };
    },
  },
  {
    name: 'other work runs past the table',
    rule: 10,
    change: (plan) => {
      plan.session.table = { at: 'PT50M', dishes: ['chicken'] };
    },
  },
  {
    name: 'millet was rinsed too long before',
    rule: 10,
    change: (plan) => {
      componentOf(plan, 'millet').ahead![0]!.longest = 'PT13H';
    },
  },
  {
    name: 'millet is rinsed at another time than its recipe says',
    rule: 10,
    change: (plan) => {
      plan.ahead[0]!.start += 60;
    },
  },
];
