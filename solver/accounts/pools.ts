/**
 * Pools of a plan: hot water that several components share. Bringing it to the boil, and the water itself, are borne by volume: what
 * was drawn, the room taken in the insert, and for steam the least that must be in the pot. Keeping it at the boil is borne by
 * minutes over or in it. Alone, a component fills the same pan on the same burner with what it draws, and with the least that the
 * pot must hold where it boils or steams in it; it boils that once.
 */
import type { Reading, Use } from '../checker/reading.ts';
import type { Burner, Pan } from '../kitchen/kitchen.ts';
import type { PoolCourse } from '../kitchen/plan.ts';
import type { Pool } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';
import { boilMinutesExact } from '../water/boil.ts';
import { keepDrawW } from '../water/simmer.ts';
import { boilWorking, simmerWorking } from '../water/workings.ts';
import { hobEnergy, sum, water, type Amount } from './amounts.ts';
import type { AloneEntry, SourceEntry } from './entry.ts';
import { sharedOut, type Share } from './shares.ts';

type PoolUse = Use & { readonly need: Extract<Need, { use: 'pool' }> };

const isPoolUse = (use: Use): use is PoolUse => use.need.use === 'pool';

const volumeOf = (pool: Pool, { need, place }: PoolUse): number => (need.how === 'steam' ? pool.leastMl : place.amount);

const minutesIn = ({ need, place }: PoolUse): number => (need.how === 'draw' ? 0 : place.until - place.from);

interface PoolOf {
  readonly reading: Reading;
  readonly pool: Pool;
  readonly pan: Pan;
  readonly burner: (id: string) => Burner | undefined;
}

/** Water in the pot when a boil begins, mL, and the temperature it begins from. */
function before(course: PoolCourse, pool: Pool, boil: PoolCourse['boils'][number]): number {
  return boil.water === 'again'
    ? (course.level.filter(({ minute }) => minute <= boil.onHeat).at(-1)?.ml ?? pool.waterMl)
    : pool.waterMl;
}

interface BoilEnergy {
  readonly heatWh: number;
  readonly keepWh: number;
}

/** Energy of one boil: to the boil at full power, then what keeps it there; Wh drawn. */
function boilEnergy(
  { reading, pool, pan, burner }: PoolOf,
  course: PoolCourse,
  boil: PoolCourse['boils'][number],
): BoilEnergy {
  const { kitchen } = reading.plan;
  const on = burner(boil.burner);
  if (on === undefined) return { heatWh: 0, keepWh: 0 };
  const again = boil.water === 'again';
  const exact = boilMinutesExact(kitchen, on, pan, before(course, pool, boil), pan.lid, again);
  const heating = Math.min(exact, boil.offHeat - boil.onHeat);
  const keeping = boil.offHeat - boil.onHeat - heating;
  return {
    heatWh: (heating * on.powerW) / 60,
    keepWh: (keeping * keepDrawW(kitchen, on, pan, pan.lid, 'boil')) / 60,
  };
}

function aloneOf(of: PoolOf, course: PoolCourse, component: string, own: readonly PoolUse[]): AloneEntry {
  const { reading, pool, pan, burner } = of;
  const { kitchen } = reading.plan;
  const on = burner(course.boils[0]?.burner ?? '');
  const drawn = own.filter(({ need }) => need.how === 'draw').reduce((all, { place }) => all + place.amount, 0);
  const inIt = own.some(({ need }) => need.how !== 'draw');
  const ml = Math.min(pool.waterMl, drawn + (inIt ? pool.leastMl : 0));
  const minutes = own.reduce((all, use) => all + minutesIn(use), 0);
  const amount: Amount =
    on === undefined
      ? water(ml)
      : sum([
          water(ml),
          hobEnergy(kitchen, (boilMinutesExact(kitchen, on, pan, ml, pan.lid, false) * on.powerW) / 60),
          hobEnergy(kitchen, (minutes * keepDrawW(kitchen, on, pan, pan.lid, 'boil')) / 60),
        ]);
  return { component, by: 'one-boil', amount };
}

/** One entry for each pool of the plan. */
export function poolEntries(reading: Reading): readonly SourceEntry[] {
  const { plan, uses } = reading;
  const burner = (id: string) => plan.kitchen.hob.burners.find((each) => each.id === id);
  return plan.pools.flatMap((course): readonly SourceEntry[] => {
    const pool = (plan.session.pools ?? []).find(({ id }) => id === course.pool);
    const pan = plan.kitchen.pans.find(({ id }) => id === course.pan);
    if (pool === undefined || pan === undefined) return [];
    const of: PoolOf = { reading, pool, pan, burner };
    const own = uses.filter(isPoolUse).filter(({ place }) => place.id === pool.id);
    const share = (weight: (use: PoolUse) => number): readonly Share[] =>
      own.map((use) => ({ component: use.component.id, weight: weight(use) }));
    const energies = course.boils.map((boil) => boilEnergy(of, course, boil));
    const filled = water(course.boils.filter(({ water: kind }) => kind !== 'again').length * pool.waterMl);
    const heat = sum([
      filled,
      hobEnergy(
        plan.kitchen,
        energies.reduce((all, { heatWh }) => all + heatWh, 0),
      ),
    ]);
    const keep = hobEnergy(
      plan.kitchen,
      energies.reduce((all, { keepWh }) => all + keepWh, 0),
    );
    const byVolume = sharedOut(
      heat,
      share((use) => volumeOf(pool, use)),
    );
    const byMinutes = sharedOut(keep, share(minutesIn));
    const components = [...new Set(own.map(({ component }) => component.id))];
    const first = burner(course.boils[0]?.burner ?? '');
    return [
      {
        kind: 'pool',
        id: pool.id,
        name: pool.name,
        amount: sum([heat, keep]),
        borne: new Map(components.map((id) => [id, sum([byVolume.get(id)!, byMinutes.get(id)!])])),
        // What has the pot to itself takes alone what it took.
        alone:
          components.length === 1
            ? [{ component: components[0]!, by: 'own', amount: sum([heat, keep]) }]
            : components.map((id) =>
                aloneOf(
                  of,
                  course,
                  id,
                  own.filter(({ component }) => component.id === id),
                ),
              ),
        workings:
          first === undefined
            ? []
            : [
                boilWorking(plan.kitchen, first, pan, pool.waterMl, pan.lid),
                simmerWorking(plan.kitchen, first, pan, pan.lid, 'boil'),
              ],
      },
    ];
  });
}
