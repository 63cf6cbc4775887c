/** Pools of hot water: the work that they ask for, and how heat and level run. */
import type { PlannedStep, PoolCourse } from '../../kitchen/plan.ts';
import { boilMinutesOnBurner, reboilMinutes, staysHotMinutes } from '../../water/boil.ts';
import type { PoolLegend, Translation } from '../legend.ts';
import { addedWork, SINK } from './added-work.ts';
import type { Reading } from './reading.ts';

/** Filling, boiling again, changing and emptying. */
export function poolSteps(reading: Reading, legend: PoolLegend): readonly PlannedStep[] {
  const { pool } = legend;
  const step = (id: string, name: string) => ({
    id: `${pool.id}/${id}`,
    kind: 'water' as const,
    component: pool.id,
    step: id.split('.')[0]!,
    name,
  });
  return [
    ...legend.boils.flatMap((boil, index): PlannedStep[] => {
      if (boil.fill !== null)
        return [addedWork(reading, boil.fill, step('fill', `fill ${pool.name}, on the heat`), [])];
      const option = reading.option(boil.choice);
      if (option === 1)
        return [addedWork(reading, boil.again!, step(`reboil.${index + 1}`, `${pool.name} back on the heat`), [])];
      if (option === 2)
        return [addedWork(reading, boil.fresh!, step(`change.${index + 1}`, `fresh water for ${pool.name}`), [SINK])];
      return [];
    }),
    addedWork(reading, legend.empty, step('empty', `empty ${pool.name}`), [SINK]),
  ];
}

/** @param steps of the plan, which draw from the pool */
export function poolCourse(
  t: Translation,
  reading: Reading,
  legend: PoolLegend,
  steps: readonly PlannedStep[],
): PoolCourse {
  const { pool } = legend;
  const span = reading.sure(legend.span);
  const pan = t.kitchen.pans.find((candidate) => candidate.id === legend.pans[reading.option(legend.panChoice)])!;
  const burner = t.kitchen.hob.burners.find(
    (candidate) => candidate.id === legend.burners[reading.option(legend.burnerChoice)],
  )!;
  const draws = steps.flatMap((step) =>
    step.places.filter((place) => place.kind === 'pool' && place.id === pool.id && place.how === 'draw'),
  );
  const level: { minute: number; ml: number }[] = [];
  const filled = reading.sure(legend.boils[0]!.fill!.task).end;
  const boils = legend.boils.flatMap((boil, index): PoolCourse['boils'] => {
    const heat = reading.at(boil.heat);
    if (heat === null) return [];
    const water = boil.choice === null ? 'cold' : reading.option(boil.choice) === 1 ? 'again' : 'fresh';
    const minutes =
      water === 'again'
        ? reboilMinutes(t.kitchen, burner, pan, pool.waterMl, pan.lid)
        : boilMinutesOnBurner(t.kitchen, burner, pan, pool.waterMl, pan.lid);
    return [
      {
        boil: index + 1,
        water,
        burner: burner.id,
        onHeat: heat.start,
        boilsAt: heat.start + minutes,
        offHeat: heat.end,
        hotUntil: heat.end + staysHotMinutes(t.kitchen, pan, pool.leastMl),
      },
    ];
  });
  const events = [
    { minute: filled, fill: true, ml: pool.waterMl },
    ...boils
      .filter((boil) => boil.water === 'fresh')
      .map((boil) => ({ minute: boil.onHeat, fill: true, ml: pool.waterMl })),
    ...draws.map((draw) => ({ minute: draw.from, fill: false, ml: draw.amount })),
    { minute: reading.sure(legend.empty.task).end, fill: true, ml: 0 },
  ].sort((a, b) => a.minute - b.minute || Number(b.fill) - Number(a.fill));
  let now = 0;
  for (const event of events) {
    now = event.fill ? event.ml : now - event.ml;
    if (level.at(-1)?.minute === event.minute) level.pop();
    level.push({ minute: event.minute, ml: now });
  }
  return { pool: pool.id, pan: pan.id, from: span.start, until: span.end, boils, level };
}
