/** Ways of breaking any plan that has what they need; each says which rule the break is against. */
import type { RuleNumber } from '../../../../solver/checker/violation.ts';
import type { Plan, PlannedPlace, PlannedSegment, PlannedStep } from '../../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../../solver/kitchen/values.ts';
import { recipeStep, shift } from '../../../support/break-plan.ts';
import type { Seeded } from '../../../support/seeded.ts';

export interface Mutation {
  readonly name: string;
  readonly rule: RuleNumber;
  /** Breaks the plan in place; false: there is nothing in it to break so. */
  readonly apply: (plan: Plan, chance: Seeded) => boolean;
}

const ofRecipe = (plan: Plan): readonly PlannedStep[] => plan.steps.filter(({ kind }) => kind === 'step');

const segmentsOf = (steps: readonly PlannedStep[], hands: 'on' | 'off'): readonly PlannedSegment[] =>
  steps.flatMap((step) => step.segments.filter((segment) => segment.hands === hands && segment.check !== true));

/** Does something to one of a list, chosen by chance. */
function toOne<T>(list: readonly T[], chance: Seeded, change: (one: T) => void): boolean {
  if (list.length === 0) return false;
  change(chance.pick(list));
  return true;
}

/** Pairs of a step and one that follows it by its recipe, in one batch or none. */
function ordered(plan: Plan): readonly (readonly [PlannedStep, PlannedStep])[] {
  return ofRecipe(plan).flatMap((later) =>
    (recipeStep(plan, `${later.component}/${later.step}`).after ?? []).flatMap((order) => {
      const [component, step] = order.step.includes('/') ? order.step.split('/') : [later.component, order.step];
      return ofRecipe(plan)
        .filter((each) => each.component === component && each.step === step && each.batch === later.batch)
        .filter((each) => each.piece === undefined && later.piece === undefined)
        .map((each) => [each, later] as const);
    }),
  );
}

interface Held {
  readonly step: PlannedStep;
  readonly place: PlannedPlace;
}
const held = (plan: Plan, ...kinds: readonly PlannedPlace['kind'][]): readonly Held[] =>
  plan.steps.flatMap((step) =>
    step.places.filter((place) => kinds.includes(place.kind)).map((place) => ({ step, place })),
  );
const overlap = (a: PlannedPlace, b: PlannedPlace): boolean => a.from < b.until && b.from < a.until;

const heated = (plan: Plan): readonly Held[] => held(plan, 'rack').filter(({ place }) => place.afterheat !== true);

const mayStartCold = (plan: Plan): boolean =>
  plan.components.some(({ steps }) =>
    steps.some((step) =>
      [step, ...(step.alternatives ?? [])].some(({ needs }) =>
        needs.some((need) => need.use === 'oven' && need.coldStart === true),
      ),
    ),
  );

export const mutations: readonly Mutation[] = [
  {
    name: 'a step is taken out',
    rule: 1,
    apply: (plan, chance) =>
      toOne(ofRecipe(plan), chance, (step) => {
        plan.steps.splice(plan.steps.indexOf(step), 1);
      }),
  },
  {
    name: 'hands-on work is a minute longer',
    rule: 1,
    apply: (plan, chance) => toOne(segmentsOf(ofRecipe(plan), 'on'), chance, (segment) => (segment.end += 1)),
  },
  {
    name: 'a wait begins a minute late',
    rule: 1,
    apply: (plan, chance) => toOne(segmentsOf(ofRecipe(plan), 'off'), chance, (segment) => (segment.start += 1)),
  },
  {
    name: 'a look on the way is taken out',
    rule: 1,
    apply: (plan, chance) =>
      toOne(
        ofRecipe(plan).filter(({ segments }) => segments.some(({ check }) => check === true)),
        chance,
        (step) => (step.segments = step.segments.filter(({ check }) => check !== true)),
      ),
  },
  {
    name: 'a step is moved before the end of what it follows',
    rule: 2,
    apply: (plan, chance) =>
      toOne(ordered(plan), chance, ([earlier, later]) => shift(later, earlier.end - 1 - later.start)),
  },
  {
    name: 'a longest gap is broken',
    rule: 2,
    apply: (plan, chance) =>
      toOne(
        ordered(plan).filter(([earlier, later]) =>
          recipeStep(plan, `${later.component}/${later.step}`).after!.some(
            ({ step, longest }) => step === earlier.step && longest !== undefined,
          ),
        ),
        chance,
        ([, later]) => shift(later, 300),
      ),
  },
  {
    name: 'a person is doubled',
    rule: 3,
    apply: (plan, chance) => {
      const work = segmentsOf(plan.steps, 'on');
      const pairs = work.flatMap((a) =>
        work.filter((b) => a.person !== b.person && a.start < b.end && b.start < a.end).map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a, b]) => (a.person = b.person));
    },
  },
  {
    name: 'two pieces of work of one person are put at the same minute',
    rule: 3,
    apply: (plan, chance) => {
      const steps = ofRecipe(plan).filter(({ segments }) => segments[0]?.hands === 'on');
      const pairs = steps.flatMap((a) =>
        steps.filter((b) => a !== b && a.segments[0]!.person === b.segments[0]!.person).map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a, b]) => shift(a, b.start - a.start));
    },
  },
  {
    name: 'somebody works who is not there',
    rule: 3,
    apply: (plan, chance) => toOne(segmentsOf(plan.steps, 'on'), chance, (segment) => (segment.person = 'nobody')),
  },
  {
    name: 'a limit of the home is below what the oven draws',
    rule: 3,
    apply: (plan) => {
      if (!plan.ovens.some(({ settings }) => settings.length > 0)) return false;
      plan.kitchen.power.push({ id: 'low', name: 'a weak fuse', limitW: 1000 });
      return true;
    },
  },
  {
    name: 'a place is taken from a step',
    rule: 4,
    apply: (plan, chance) =>
      toOne(
        held(plan, 'rack', 'burner', 'tray', 'board', 'bowl', 'kettle', 'resting').filter(
          ({ step }) => step.kind === 'step',
        ),
        chance,
        ({ step, place }) => (step.places = step.places.filter((each) => each !== place)),
      ),
  },
  {
    name: 'a place is given up a minute early',
    rule: 4,
    apply: (plan, chance) =>
      toOne(
        held(plan, 'rack', 'burner', 'tray', 'board', 'bowl').filter(({ step }) => step.kind === 'step'),
        chance,
        ({ place }) => (place.until -= 1),
      ),
  },
  {
    name: 'a hold ends a minute early',
    rule: 4,
    apply: (plan, chance) => toOne(plan.holds, chance, ({ place }) => (place.until -= 1)),
  },
  {
    name: 'two steps have one thing at once',
    rule: 4,
    apply: (plan, chance) => {
      const all = held(plan, 'burner', 'tray', 'board', 'bowl', 'tool', 'pan');
      const pairs = all.flatMap((a) =>
        all
          .filter((b) => a.place.kind === b.place.kind && a.place.id < b.place.id && overlap(a.place, b.place))
          .map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a, b]) => (a.place.id = b.place.id));
    },
  },
  {
    name: 'a rack is overfilled',
    rule: 4,
    apply: (plan, chance) => {
      const racks = held(plan, 'rack');
      const pairs = racks.flatMap((a) =>
        racks
          .filter((b) => a !== b && a.place.oven === b.place.oven && overlap(a.place, b.place))
          .map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a, b]) => {
        a.place.id = b.place.id;
        a.place.amount = 60;
        b.place.amount = 60;
      });
    },
  },
  {
    name: 'the oven is at another temperature',
    rule: 5,
    apply: (plan, chance) =>
      toOne(heated(plan), chance, ({ place }) => {
        const programme = plan.ovens.find(({ oven }) => oven === place.oven)!;
        const oven = plan.kitchen.ovens.find(({ id }) => id === place.oven)!;
        // A window may reach to the end of the dial, and what goes in cold may be out before it is too hot.
        const warm = place.mostC! < oven.dial.mostC - 5 && !mayStartCold(plan) && chance.chance(0.5);
        for (const setting of programme.settings)
          if (setting.celsius !== null) setting.celsius = warm ? oven.dial.mostC : oven.dial.leastC;
      }),
  },
  {
    name: 'the oven is switched off in the middle',
    rule: 5,
    apply: (plan, chance) =>
      toOne(heated(plan), chance, ({ place }) => {
        const programme = plan.ovens.find(({ oven }) => oven === place.oven)!;
        const minute = place.from + 1;
        programme.settings = [
          ...programme.settings.filter((setting) => setting.minute < minute),
          { minute, celsius: null, function: 'conventional' },
        ];
      }),
  },
  {
    name: 'preheating is not planned',
    rule: 5,
    apply: (plan) => {
      const before = plan.steps.length;
      plan.steps = plan.steps.filter(({ kind }) => kind !== 'preheat');
      return !mayStartCold(plan) && plan.steps.length < before;
    },
  },
  {
    name: 'the oven stays on under the afterheat',
    rule: 6,
    apply: (plan, chance) =>
      toOne(
        held(plan, 'rack').filter(({ place }) => place.afterheat === true),
        chance,
        ({ place }) => {
          const programme = plan.ovens.find(({ oven }) => oven === place.oven)!;
          programme.settings.at(-1)!.minute = place.until;
        },
      ),
  },
  {
    name: 'an afterheat step comes when the oven is cold',
    rule: 6,
    apply: (plan, chance) =>
      toOne(
        held(plan, 'rack').filter(({ place }) => place.afterheat === true),
        chance,
        ({ step }) => shift(step, 240),
      ),
  },
  {
    name: 'the water boils before it can',
    rule: 7,
    apply: (plan, chance) =>
      toOne(
        plan.pools.flatMap(({ boils }) => boils),
        chance,
        (boil) => (boil.boilsAt = boil.onHeat + 1),
      ),
  },
  {
    name: 'water is used before it boils',
    rule: 7,
    apply: (plan, chance) =>
      toOne(held(plan, 'pool'), chance, ({ step, place }) => {
        const boil = plan.pools.find(({ pool }) => pool === place.id)!.boils.find(({ boil: n }) => n === place.boil)!;
        shift(step, boil.boilsAt - 1 - place.from);
      }),
  },
  {
    name: 'water is overdrawn',
    rule: 7,
    apply: (plan) => {
      const drawn = held(plan, 'pool').find(({ place }) => place.how === 'draw');
      if (drawn === undefined) return false;
      const pool = plan.session.pools!.find(({ id }) => id === drawn.place.id)!;
      pool.leastMl = pool.waterMl;
      return true;
    },
  },
  {
    name: 'the pot is never filled',
    rule: 7,
    apply: (plan) => {
      const before = plan.steps.length;
      plan.steps = plan.steps.filter(({ kind, step }) => kind !== 'water' || step !== 'fill');
      return plan.steps.length < before;
    },
  },
  {
    name: 'a wash has no sink',
    rule: 8,
    apply: (plan, chance) =>
      toOne(
        plan.steps.filter(({ kind }) => kind === 'wash'),
        chance,
        (step) => (step.places = step.places.filter(({ kind }) => kind !== 'sink')),
      ),
  },
  {
    name: 'a board goes from raw poultry to what is eaten raw',
    rule: 8,
    apply: (plan, chance) => {
      const boards = held(plan, 'board').filter(({ step }) => step.kind === 'step');
      const pairs = boards.flatMap((a) =>
        boards
          .filter(
            (b) =>
              a.step.component !== b.step.component &&
              a.place.id === b.place.id &&
              a.place.until <= b.place.from &&
              !plan.steps.some(
                ({ kind, component, start, end }) =>
                  kind === 'wash' && component === a.place.id && start >= a.place.until && end <= b.place.from,
              ),
          )
          .map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a, b]) => {
        const earlier = recipeStep(plan, `${a.step.component}/${a.step.step}`);
        const later = recipeStep(plan, `${b.step.component}/${b.step.step}`);
        delete earlier.touches;
        delete earlier.cooked;
        plan.components.find(({ id }) => id === a.step.component)!.ingredients[0]!.raw = 'poultry';
        // Its own raw poultry would be no news to it.
        for (const ingredient of plan.components.find(({ id }) => id === b.step.component)!.ingredients)
          delete ingredient.raw;
        later.readyToEat = true;
      });
    },
  },
  {
    name: 'a vessel goes unwashed from one dish to another',
    rule: 8,
    apply: (plan, chance) => {
      const vessels = held(plan, 'tray', 'bowl').filter(({ step }) => step.kind === 'step');
      const pairs = vessels.flatMap((a) =>
        vessels
          .filter((b) => a.step.component !== b.step.component && a.place.id === b.place.id)
          .map((b) => [a, b] as const),
      );
      return toOne(pairs, chance, ([a]) => {
        plan.steps = plan.steps.filter(({ kind, component }) => kind !== 'wash' || component !== a.place.id);
      });
    },
  },
  {
    name: 'a probe reading is not planned',
    rule: 9,
    apply: (plan, chance) =>
      toOne(
        segmentsOf(plan.steps, 'on').filter(({ probe }) => probe === true),
        chance,
        (segment) => delete segment.probe,
      ),
  },
  {
    name: 'a dish is in the fridge too late',
    rule: 9,
    apply: (plan) => {
      const own = plan.components.find(
        ({ fridge, steps }) => fridge !== undefined && steps.some(({ putsAway }) => putsAway === true),
      );
      if (own === undefined) return false;
      own.fridge!.within = 'PT0M';
      return true;
    },
  },
  {
    name: 'a pin is moved',
    rule: 10,
    apply: (plan, chance) =>
      toOne(
        ofRecipe(plan).filter(({ piece, batch }) => batch === 1 && (piece ?? 1) === 1),
        chance,
        ({ component, step, start }) => {
          plan.session.pins = [{ component, step, start: `PT${start + 1}M` }];
        },
      ),
  },
  {
    name: 'the table is earlier than the dish',
    rule: 10,
    apply: (plan) => {
      const { table } = plan.session;
      if (table === undefined) return false;
      table.at = `PT${durationMinutes(table.at) - 30}M`;
      return true;
    },
  },
];
