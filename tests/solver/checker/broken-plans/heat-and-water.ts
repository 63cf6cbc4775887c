/** Plans broken against rules 5 (ovens), 6 (afterheat) and 7 (water). */
import { drop, recipeStep, retime, shift, stepOf, type BrokenPlan } from '../../../support/break-plan.ts';
import { water } from '../../../support/plan-builder.ts';

export const heatAndWater: readonly BrokenPlan[] = [
  {
    name: 'the oven is too cool for what is in it',
    rule: 5,
    change: (plan) => {
      plan.ovens[0]!.settings[0]!.celsius = 170;
    },
  },
  {
    name: 'the oven is too hot for a while',
    rule: 5,
    change: (plan) =>
      plan.ovens[0]!.settings.splice(
        1,
        0,
        { minute: 12, celsius: 210, function: 'conventional' },
        { minute: 20, celsius: 190, function: 'conventional' },
      ),
  },
  {
    name: 'the dial is turned to where it has no position',
    rule: 5,
    change: (plan) => {
      plan.ovens[0]!.settings[0]!.celsius = 195;
    },
  },
  {
    name: 'the oven is switched on too late to be hot',
    rule: 5,
    change: (plan) => {
      plan.ovens[0]!.settings[0]!.minute = 3;
      shift(stepOf(plan, 'oven/preheat'), 3);
    },
  },
  {
    name: 'the oven is switched off while something roasts',
    rule: 5,
    change: (plan) => {
      plan.ovens[0]!.settings[1]!.minute = 40;
    },
  },
  {
    name: 'the oven is never switched on',
    rule: 5,
    change: (plan) => {
      plan.ovens = [];
      drop(plan, 'oven/preheat');
      // Nothing is left to crisp in its afterheat then.
      const crisp = recipeStep(plan, 'croutons/crisp');
      crisp.needs = [{ use: 'tray' }];
      stepOf(plan, 'croutons/crisp').places.splice(0, 1);
    },
  },
  {
    name: 'the fan is on for what wants still heat',
    rule: 5,
    change: (plan) => {
      plan.ovens[0]!.settings[0]!.function = 'fan';
    },
  },
  { name: 'no preheating is planned', rule: 5, change: (plan) => drop(plan, 'oven/preheat') },

  {
    name: 'bread crisps in the oven before it has fallen far enough',
    rule: 6,
    change: (plan) => shift(stepOf(plan, 'croutons/crisp'), -5),
  },
  {
    name: 'the oven falls out of the window before the bread is crisp',
    rule: 6,
    change: (plan) => {
      const [need] = recipeStep(plan, 'croutons/crisp').needs;
      if (need?.use === 'oven') need.leastC = 130;
    },
  },
  {
    name: 'an afterheat step is in an oven that is still on',
    rule: 6,
    change: (plan) => {
      plan.ovens[0]!.settings[1]!.minute = 51;
    },
  },
  {
    name: 'raw fish is cooked through in afterheat',
    rule: 6,
    change: (plan) => {
      const crisp = recipeStep(plan, 'croutons/crisp');
      crisp.cooksThrough = { raw: 'fish', coreC: 70, holdSeconds: 120 };
      const [, , out] = crisp.segments;
      if (out?.hands === 'on') out.probe = true;
      stepOf(plan, 'croutons/crisp').segments[2]!.probe = true;
    },
  },

  {
    name: 'food goes into the water before it boils',
    rule: 7,
    change: (plan) => shift(stepOf(plan, 'greens/steam'), -1),
  },
  {
    name: 'water is said to boil sooner than it can',
    rule: 7,
    change: (plan) => {
      plan.pools[0]!.boils[0]!.boilsAt = 12;
    },
  },
  {
    name: 'too much water is drawn',
    rule: 7,
    change: (plan) => {
      recipeStep(plan, 'millet/soak').needs[1] = { use: 'pool', how: 'draw', ml: 700, during: { from: 0, to: 0 } };
      stepOf(plan, 'millet/soak').places[1]!.amount = 700;
      plan.pools[0]!.level[1]!.ml = 2300;
    },
  },
  {
    name: 'the level is shown higher than the draws leave it',
    rule: 7,
    change: (plan) => {
      plan.pools[0]!.level[1]!.ml = 2700;
    },
  },
  {
    name: 'the pot is off the heat while food boils in it',
    rule: 7,
    change: (plan) => {
      plan.pools[0]!.boils[0]!.offHeat = 30;
    },
  },
  {
    name: 'water is said to stay hot longer than it does',
    rule: 7,
    change: (plan) => {
      // 2.5 L stay hot for 17 min.
      plan.pools[0]!.boils[0]!.hotUntil = 53;
    },
  },
  {
    name: 'water is drawn that is no longer hot',
    rule: 7,
    change: (plan) => {
      // Off the heat early, with nothing to boil in it any more.
      for (const id of ['greens', 'pasta']) {
        drop(plan, `${id}/${id === 'greens' ? 'steam' : 'boil'}`);
        plan.session.dishes = plan.session.dishes.filter(({ component }) => component !== id);
      }
      plan.session.pins = plan.session.pins!.filter(({ component }) => component !== 'greens');
      plan.kitchen.pans[0]!.staysHot = [{ ml: 1000, minutes: 5 }];
      Object.assign(plan.pools[0]!.boils[0]!, { offHeat: 14, hotUntil: 19 });
    },
  },
  { name: 'the pot is never filled', rule: 7, change: (plan) => drop(plan, 'pot-water/fill') },
  { name: 'the pot is never emptied', rule: 7, change: (plan) => drop(plan, 'pot-water/empty') },
  {
    name: 'the water is poured away while food is in it',
    rule: 7,
    change: (plan) => {
      drop(plan, 'pot-water/empty');
      plan.steps.push(water('pot-water', 'empty', 'bo', 34, 35));
      plan.pools[0]!.until = 35;
      plan.pools[0]!.boils[0]!.hotUntil = 35;
    },
  },
  {
    name: 'filling takes no time',
    rule: 7,
    change: (plan) => retime(stepOf(plan, 'pot-water/fill'), 1, 1),
  },
  {
    name: 'the pot is too small for its water',
    rule: 7,
    change: (plan) => {
      plan.kitchen.pans[0]!.volumeMl = 2900;
    },
  },
  {
    name: 'a pool is used that is not planned',
    rule: 7,
    change: (plan) => {
      plan.pools = [];
    },
  },
  {
    name: 'water comes to the boil more often than it may',
    rule: 7,
    change: (plan) =>
      plan.pools[0]!.boils.push({
        boil: 2,
        water: 'again',
        burner: 'big',
        onHeat: 35,
        boilsAt: 35,
        offHeat: 36,
        hotUntil: 36,
      }),
  },
];
