/** Kitchens that measured nothing: what the heat model gives is what is planned, checked and shown. */
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../solver/checker/check-plan.ts';
import type { Kitchen } from '../../../solver/kitchen/kitchen.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { boilMinutesOnBurner, staysHotMinutes } from '../../../solver/water/boil.ts';
import { component, off, on, smallKitchen, step } from '../../support/documents.ts';
import { planned, planResult, stepOf } from '../../support/planning.ts';
import { randomSession } from '../../support/random-session.ts';

/** The kitchen without its user's readings of water. */
function unmeasured(kitchen: Kitchen): Kitchen {
  const { kettle } = kitchen;
  return {
    ...kitchen,
    hob: {
      ...kitchen.hob,
      burners: kitchen.hob.burners.map(({ boilMinutesPerLitre: _, efficiency: __, ...burner }) => burner),
    },
    pans: kitchen.pans.map(({ staysHot: _, ...pan }) => pan),
    ...(kettle === undefined ? {} : { kettle: (({ minutesPerLitre: _, ...rest }) => rest)(kettle) }),
  };
}
const small = unmeasured(smallKitchen());

const broth = component('broth', [
  step(
    'boil',
    [on(1), off(0, 2, { boilMl: 1500 }), on(1)],
    [
      { use: 'burner', heat: 'full' },
      { use: 'pan', leastMl: 1500, lid: true },
    ],
  ),
]);

describe('a kitchen that measured nothing', () => {
  test('boils a step’s water for as long as the pan and burner chosen need', () => {
    const plan = planned({ components: [broth], kitchen: small });
    const { segments, places } = stepOf(plan, 'broth/boil');
    const pan = small.pans.find(({ id }) => places.some((place) => place.id === id))!;
    const burner = small.hob.burners.find(({ id }) => places.some((place) => place.id === id))!;
    const boiling = segments.find(({ hands }) => hands === 'off')!;
    // The small pan has less metal and loses less, so it is the one taken.
    expect(pan.id).toBe('small-pan');
    expect(boiling.end - boiling.start).toBe(boilMinutesOnBurner(small, burner, pan, 1500, true));
    expect(checkPlan(plan)).toEqual([]);
  });

  test('high up boils sooner, and cold tap water later', () => {
    const much = component('much', [
      step(
        'boil',
        [on(1), off(0, 2, { boilMl: 4500 }), on(1)],
        [
          { use: 'burner', heat: 'full' },
          { use: 'pan', leastMl: 4500, lid: true },
        ],
      ),
    ]);
    const minutes = (kitchen: Partial<Kitchen>) =>
      planned({ components: [much], kitchen: { ...small, ...kitchen } }).finishMinutes;
    expect(minutes({ altitudeM: 3000 })).toBeLessThan(minutes({}));
    expect(minutes({ tapC: 4 })).toBeGreaterThan(minutes({}));
  });

  test('refuses water that no burner ever brings to the boil, with the mend', () => {
    const open = component('broth', [
      step(
        'boil',
        [on(1), off(0, 2, { boilMl: 1500 }), on(1)],
        [
          { use: 'burner', heat: 'full' },
          { use: 'pan', leastMl: 4000 },
        ],
      ),
    ]);
    const [left] = small.hob.burners;
    const weak = { ...small, hob: { heat: 'induction' as const, burners: [{ ...left!, powerW: 700 }] } };
    expect(planResult({ components: [open], kitchen: weak })).toMatchObject({
      kind: 'refused',
      faults: [
        {
          document: 'component broth',
          path: 'steps[0].segments[1].boilMl',
          mend: expect.stringContaining('lid on') as string,
        },
      ],
    });
  });

  test('ladles from a pool while it stays hot enough by the model, and no longer', () => {
    const pour = component('grain', [
      step('pour', [on(1), off(5), on(1)], [{ use: 'pool', how: 'draw', ml: 500, during: { from: 0, to: 0 } }]),
    ]);
    const plan = planned({
      components: [pour],
      kitchen: small,
      session: { pools: [{ id: 'water', name: 'the water', waterMl: 3000, leastMl: 2000 }] },
    });
    const [course] = plan.pools;
    const [boil] = course!.boils;
    const pan = small.pans.find(({ id }) => id === course!.pan)!;
    expect(boil!.hotUntil - boil!.offHeat).toBe(staysHotMinutes(small, pan, 2000));
    expect(checkPlan(plan)).toEqual([]);
  });

  test('has plans of random sessions that the checker accepts', () => {
    let plans = 0;
    for (let seed = 0; seed < 40; seed++) {
      const given = randomSession(seed, 1);
      const outcome = planSession({ ...given, kitchen: unmeasured(given.kitchen), seed: 1, effort: 10_000 });
      if (outcome.kind !== 'planned') continue;
      plans++;
      expect(
        checkPlan(outcome.plan).map(({ message }) => message),
        `session of seed ${seed}`,
      ).toEqual([]);
    }
    expect(plans).toBeGreaterThan(30);
  });
});
