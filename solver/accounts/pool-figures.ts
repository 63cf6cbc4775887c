/**
 * What goes on in a plan's pools: how far the boil falls when food goes in and how soon it is back, and the water that steaming
 * takes, against what may leave the pot. None of it is in the plan's minutes: a step that boils in a pool says how long it takes.
 */
import type { Reading, Use } from '../checker/reading.ts';
import { compositionOf } from '../food/composition.ts';
import { heatProperties } from '../food/properties.ts';
import type { Burner, Pan } from '../kitchen/kitchen.ts';
import type { PoolCourse } from '../kitchen/plan.ts';
import type { Pool } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';
import { dipOf, type Food } from '../water/dip.ts';
import { burnerHeatW } from '../water/heat-sources.ts';
import { potOf } from '../water/pot.ts';
import { surroundingsOf } from '../water/pot-loss.ts';
import { specificHeat } from '../water/properties.ts';
import { steam } from '../water/steam.ts';
import { dipWorking, steamWorking } from '../water/workings.ts';
import type { Working } from '../working.ts';

export interface PoolFigure {
  readonly kind: 'dip' | 'steam';
  /** Id of the pool. */
  readonly pool: string;
  readonly component: string;
  readonly step: string;
  /** In a sentence. */
  readonly text: string;
  /** What to mind; null: nothing. */
  readonly mind: string | null;
  readonly working: Working;
}

type PoolUse = Use & { readonly need: Extract<Need, { use: 'pool' }> };

interface Setting {
  readonly reading: Reading;
  readonly pool: Pool;
  readonly pan: Pan;
  readonly burner: Burner;
  readonly course: PoolCourse;
}

/**
 * The food that a step puts into the water: what it touches, at room temperature. Where too little is known of what it is made of
 * it is reckoned as water, which takes the most heat of all food.
 */
function foodOfUse({ reading }: Setting, { component, step }: PoolUse): Food {
  const portions = step?.instance.portions ?? component.makes.portions;
  const touched = step?.instance.step.touches;
  const grams = component.ingredients
    .filter(({ id, group }) => group !== 'water' && (touched === undefined || touched.includes(id)))
    .reduce((sum, { massG, volumeMl }) => sum + (massG ?? volumeMl ?? 0), 0);
  const made = compositionOf(component);
  return {
    massG: (grams * portions) / component.makes.portions,
    specificHeat: made === null ? specificHeat(60) : heatProperties(made.composition, 60).specificHeat / 1000,
    celsius: reading.plan.kitchen.roomC,
  };
}

const levelAt = ({ course, pool }: Setting, minute: number): number =>
  course.level.filter((each) => each.minute <= minute).at(-1)?.ml ?? pool.waterMl;

const oneDecimal = (value: number): string => value.toFixed(1);

function dip(at: Setting, use: PoolUse): PoolFigure {
  const { kitchen } = at.reading.plan;
  const food = foodOfUse(at, use);
  const ml = levelAt(at, use.place.from);
  const found = dipOf(
    potOf(at.pan),
    ml,
    food,
    burnerHeatW(kitchen.hob, at.burner),
    surroundingsOf(kitchen),
    at.pan.lid,
  );
  const back =
    found.recoveryMinutes === Infinity
      ? 'and never comes back to the boil'
      : `and is back at the boil within ${oneDecimal(found.recoveryMinutes)} min at full power`;
  return {
    ...named(at, use),
    kind: 'dip',
    text: `${Math.round(food.massG)} g into ${oneDecimal(ml / 1000)} L: it falls to ${Math.round(found.lowestC)} °C at the least, ${back}`,
    mind: food.massG === 0 ? 'The ingredients have no mass, so nothing is reckoned.' : null,
    working: dipWorking(kitchen, at.burner, at.pan, ml, food, at.pan.lid),
  };
}

function steaming(at: Setting, use: PoolUse): PoolFigure {
  const { kitchen } = at.reading.plan;
  const minutes = use.place.until - use.place.from;
  const ml = levelAt(at, use.place.from);
  const found = steam(
    potOf(at.pan),
    ml,
    at.pool.leastMl,
    burnerHeatW(kitchen.hob, at.burner),
    minutes,
    surroundingsOf(kitchen),
  );
  return {
    ...named(at, use),
    kind: 'steam',
    text: `${minutes} min over it boil away ${oneDecimal(found.waterMl / 1000)} L at full power, of ${oneDecimal((ml - at.pool.leastMl) / 1000)} L to spare`,
    mind: found.lasts
      ? null
      : `Turn the heat down once it boils, or top it up: at full power it is down to the least after ${oneDecimal(found.longestMinutes)} min.`,
    working: steamWorking(kitchen, at.burner, at.pan, minutes),
  };
}

const named = ({ pool }: Setting, { component, step }: PoolUse) => ({
  pool: pool.id,
  component: component.id,
  step: step?.planned.name ?? component.name,
});

/** One figure for each use that boils in a pool or steams over it, in order of time. */
export function poolFigures(reading: Reading): readonly PoolFigure[] {
  const { plan } = reading;
  return plan.pools.flatMap((course): readonly PoolFigure[] => {
    const pool = (plan.session.pools ?? []).find(({ id }) => id === course.pool);
    const pan = plan.kitchen.pans.find(({ id }) => id === course.pan);
    const burner = plan.kitchen.hob.burners.find(({ id }) => id === course.boils[0]?.burner);
    if (pool === undefined || pan === undefined || burner === undefined) return [];
    const at: Setting = { reading, pool, pan, burner, course };
    return reading.uses
      .filter((use): use is PoolUse => use.need.use === 'pool' && use.need.how !== 'draw' && use.place.id === pool.id)
      .sort((a, b) => a.place.from - b.place.from)
      .map((use) => (use.need.how === 'boil' ? dip(at, use) : steaming(at, use)));
  });
}
