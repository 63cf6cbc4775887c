/** Plans broken against rules 3 (hands and power) and 4 (places). */
import { recipeStep, shift, stepOf, type BrokenPlan } from '../../../support/break-plan.ts';
import { place } from '../../../support/plan-builder.ts';

export const handsAndPlaces: readonly BrokenPlan[] = [
  {
    name: 'a person does two things at once',
    rule: 3,
    change: (plan) => {
      stepOf(plan, 'stock/brew').segments[0]!.person = 'ada';
    },
  },
  {
    name: 'a person works who has gone home',
    rule: 3,
    change: (plan) => {
      stepOf(plan, 'clearing/clear').segments[0]!.person = 'bo';
    },
  },
  {
    name: 'a child does what is for an adult',
    rule: 3,
    change: (plan) => {
      stepOf(plan, 'pasta/boil').segments[2]!.person = 'bo';
    },
  },
  {
    name: 'somebody works who does not cook here',
    rule: 3,
    change: (plan) => {
      plan.crew = ['ada'];
    },
  },
  {
    name: 'nobody is named for hands-on work',
    rule: 3,
    change: (plan) => {
      delete stepOf(plan, 'sauce/season').segments[0]!.person;
    },
  },
  {
    name: 'the home draws a watt more than it may',
    rule: 3,
    change: (plan) => {
      plan.kitchen.power[0]!.limitW = 7551;
    },
  },
  {
    name: 'the hob draws a watt more than it may',
    rule: 3,
    change: (plan) => {
      plan.kitchen.power[1]!.limitW = 2551;
    },
  },
  {
    name: 'a burner on full draws more than the hob may',
    rule: 3,
    change: (plan) => {
      recipeStep(plan, 'sauce/simmer').needs = [{ use: 'burner', heat: 'full' }];
      plan.kitchen.power[0]!.limitW = 9000;
    },
  },

  {
    name: 'a rack is overfilled',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'squash/bake').places[0]!.id = 'top';
    },
  },
  {
    name: 'two things are washed in one sink',
    rule: 4,
    change: (plan) => {
      shift(stepOf(plan, 'wash/bowl.1'), -1);
      shift(stepOf(plan, 'rolls/flour.1'), 1);
    },
  },
  {
    name: 'more is set to cool than there is room for',
    rule: 4,
    change: (plan) => {
      plan.kitchen.cooling.places = 1;
    },
  },
  {
    name: 'the insert is overfilled',
    rule: 4,
    change: (plan) => {
      plan.kitchen.pans[0]!.insertMl = 700;
    },
  },
  {
    name: 'there is no tier to steam in',
    rule: 4,
    change: (plan) => {
      plan.kitchen.pans[0]!.tiers = 0;
    },
  },
  {
    name: 'a step lacks the place that it needs',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'stock/brew').places = [];
    },
  },
  {
    name: 'a step holds a place that it does not need',
    rule: 4,
    change: (plan) => stepOf(plan, 'sauce/season').places.push(place('resting', 'resting', 39, 41)),
  },
  {
    name: 'a tray loses its rack too early',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'chicken/roast').places[1]!.until = 40;
    },
  },
  {
    name: 'a pan loses its burner while it simmers',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'sauce/simmer').places[0]!.until = 30;
    },
  },
  {
    name: 'a pan is given away before the last step in it',
    rule: 4,
    change: (plan) => {
      plan.holds[0]!.place.until = 39;
    },
  },
  { name: 'there is no pan on a burner', rule: 4, change: (plan) => plan.holds.splice(0, 1) },
  {
    name: 'a pan does not fit its burner',
    rule: 4,
    change: (plan) => {
      plan.kitchen.pans[1]!.acrossCm = 20;
    },
  },
  {
    name: 'a pan is too small for what goes in',
    rule: 4,
    change: (plan) => {
      plan.kitchen.pans[1]!.volumeMl = 1400;
    },
  },
  {
    name: 'a pan lacks the lid that it needs',
    rule: 4,
    change: (plan) => {
      plan.kitchen.pans[1]!.lid = false;
    },
  },
  {
    name: 'the pot of water does not fit its burner',
    rule: 4,
    change: (plan) => {
      plan.kitchen.hob.burners[0]!.mostPanCm = 22;
    },
  },
  {
    name: 'a bowl is too small for what goes in',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'millet/soak').places[0]!.id = 'cup';
    },
  },
  {
    name: 'a step has the wrong kind of tool',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'salad/chop~1').places[1]!.id = 'peeler';
    },
  },
  {
    name: 'a step has a thing that the kitchen lacks',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'croutons/crisp').places[1]!.id = 'tray-z';
    },
  },
  {
    name: 'a dish takes less of a rack than it needs',
    rule: 4,
    change: (plan) => {
      stepOf(plan, 'chicken/roast').places[0]!.amount = 10;
    },
  },
  {
    name: 'a burner is used while it is not there',
    rule: 4,
    change: (plan) => {
      plan.session.absences![0]!.until = 'PT23M';
    },
  },
  {
    name: 'an oven is switched on while it is not there',
    rule: 4,
    change: (plan) => plan.session.absences!.push({ what: 'oven', from: 'PT0M', until: 'PT5M' }),
  },
];
