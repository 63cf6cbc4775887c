/**
 * Pools: hot water that exists from the boil on. A pan is the pool's from filling to emptying and stays on one burner; it comes
 * to the boil once or, where the session allows, again later with the same water or with fresh. Every use picks its boil.
 */
import type { Literal, Mode } from '../engine/problem.ts';
import { burnerWatts } from '../water/burner-power.ts';
import { panFits, type Burner, type Kitchen, type Pan } from '../kitchen/kitchen.ts';
import type { Pool, Session } from '../kitchen/session.ts';
import type { Need } from '../kitchen/step.ts';
import { boilMinutesOnBurner, reboilMinutes, staysHotMinutes } from '../water/boil.ts';
import { mostKeepDrawW } from '../water/simmer.ts';
import { alike, type Alike } from './alike.ts';
import { addWork } from './hands.ts';
import type { BoilLegend, NeedLegend, PlaceOption, PoolLegend, Translation } from './legend.ts';
import { thingSoil } from './soil.ts';
import { end, picks, start } from './problem-builder.ts';
import { draws, wattHoursPerMinute } from './power.ts';
import { poolName } from './requirement-names.ts';

/** Hands-on minutes of the pool's own work. Common practice; the kitchen document may carry them later. */
export const POOL_WORK = { fill: 1, again: 1, fresh: 2, empty: 1 } as const;

const AGAIN = 1;
const FRESH = 2;

type PoolNeed = Extract<Need, { use: 'pool' }>;

const poolNeeds = (t: Translation, pool: Pool): readonly NeedLegend[] =>
  t.steps
    .flatMap((step) => step.needs)
    .filter((need) => need.need.use === 'pool' && need.options.some((option) => option.place.id === pool.id));

/** Boils of the session's pools that can serve a need: every boil of each pool that some pan can give. */
export function poolOptions(session: Session, kitchen: Kitchen, need: PoolNeed): readonly PlaceOption[] {
  return (session.pools ?? []).flatMap((pool) => {
    const amount = need.how === 'steam' ? (need.tiers ?? 1) : (need.ml ?? 0);
    const fits = kitchen.pans.some((pan) =>
      panServes(pan, pool, need.how === 'boil' ? amount : 0, need.how === 'steam' ? amount : 0),
    );
    if (!fits || (need.how === 'draw' && amount > pool.waterMl - pool.leastMl)) return [];
    return Array.from({ length: pool.boils ?? 1 }, (_, boil): PlaceOption => ({
      resource:
        need.how === 'boil' ? `insert:${pool.id}` : need.how === 'steam' ? `tiers:${pool.id}` : `water:${pool.id}`,
      amount,
      place: { kind: 'pool', id: pool.id, amount, how: need.how, boil: boil + 1 },
    }));
  });
}

const panServes = (pan: Pan, pool: Pool, insertMl: number, tiers: number): boolean =>
  pan.volumeMl >= pool.waterMl && (pan.insertMl ?? 0) >= insertMl && (pan.tiers ?? 0) >= tiers;

/** Resources of the pools; before the steps, which refer to them. */
export function declarePools(t: Translation): void {
  for (const pool of t.session.pools ?? []) t.builder.resource(`water:${pool.id}`, 1);
}

/** Adds each pool that some step uses. After the steps. */
export function addPools(t: Translation): void {
  for (const pool of t.session.pools ?? []) {
    const uses = poolNeeds(t, pool);
    if (uses.length > 0) addPool(t, pool, uses);
  }
}

function addPool(t: Translation, pool: Pool, uses: readonly NeedLegend[]): void {
  const { builder, kitchen } = t;
  const most = (how: PoolNeed['how']): number =>
    Math.max(
      0,
      ...uses.flatMap((use) =>
        use.options
          .filter((option) => option.place.id === pool.id && option.place.how === how)
          .map((option) => option.amount),
      ),
    );
  const boils = (burner: Burner, pan: Pan): boolean =>
    panFits(burner, pan) && Number.isFinite(boilMinutesOnBurner(kitchen, burner, pan, pool.waterMl, pan.lid));
  const serving = kitchen.pans.filter((pan) => panServes(pan, pool, most('boil'), most('steam')));
  const burners = kitchen.hob.burners.filter((burner) => serving.some((pan) => boils(burner, pan)));
  const pans = serving.filter((pan) => burners.some((burner) => boils(burner, pan)));
  if (pans.length === 0 || burners.length === 0) {
    t.faults.push({
      document: `session ${t.session.id}`,
      path: `pools[${(t.session.pools ?? []).indexOf(pool)}]`,
      found: `no ${serving.length === 0 ? 'pan' : 'burner'} in kitchen ${kitchen.id} for ${pool.name}`,
      wanted: `a pan of ${pool.waterMl} mL with an insert of ${most('boil')} mL and ${most('steam')} tiers, and a burner of its size that brings it to the boil`,
      mend: 'use less water, add the pan to the kitchen, or choose another kitchen',
    });
    return;
  }
  builder.resource(`insert:${pool.id}`, Math.min(...pans.map((pan) => pan.insertMl ?? 0)));
  builder.resource(`tiers:${pool.id}`, Math.min(...pans.map((pan) => pan.tiers ?? 0)));

  const work = (
    task: string,
    name: string,
    minutes: number,
    when: readonly Literal[],
    atSink: boolean,
    cleansWater = false,
  ) =>
    addWork(t, {
      task,
      name,
      shortest: minutes,
      longest: minutes,
      who: null,
      when,
      group: pool.id,
      uses: [
        ...(atSink ? [{ resource: 'sink:sink', amount: 1 }] : []),
        ...(cleansWater ? [{ resource: `water:${pool.id}`, amount: 0, cleans: true }] : []),
      ],
    });
  const fill = work(`${pool.id}/fill`, `fill ${pool.name}`, POOL_WORK.fill, [], false);
  const empty = work(`${pool.id}/empty`, `empty ${pool.name}`, POOL_WORK.empty, [], true);

  const panChoice = builder.choice(
    `pan:${pool.id}`,
    pans.map((pan) => pan.id),
  );
  const soil = { leaves: [], avoids: [] };
  const span = builder.task(
    `${pool.id}/pan`,
    pans.map((pan): Mode => ({
      shortest: 0,
      longest: builder.horizon,
      uses: [{ resource: `pan:${pan.id}`, amount: 1, ...thingSoil(t, 'pan', pool.id, soil) }],
    })),
    panChoice,
  );
  builder.exactly(start(fill.task), start(span), 0);
  builder.exactly(end(empty.task), end(span), 0);

  const burnerChoice = builder.choice(
    `burner:${pool.id}`,
    burners.map((burner) => burner.id),
  );
  const onBurner = builder.task(
    `${pool.id}/burner`,
    burners.map((burner): Mode => ({
      shortest: 0,
      longest: builder.horizon,
      uses: [{ resource: `burner:${burner.id}`, amount: 1 }],
    })),
    burnerChoice,
  );
  builder.exactly(end(fill.task), start(onBurner), 0);
  builder.exactly(end(empty.task), end(onBurner), 0);
  pans.forEach((pan, panIndex) =>
    burners.forEach((burner, burnerIndex) => {
      if (!boils(burner, pan)) builder.forbid([...picks(panChoice, panIndex), ...picks(burnerChoice, burnerIndex)]);
    }),
  );

  const legends: BoilLegend[] = [];
  const times: PoolTimes = {
    hot: alike(
      pans,
      panChoice,
      () => true,
      (pan) => staysHotMinutes(kitchen, pan!, pool.leastMl),
    ),
    boils: burners.flatMap((burner, index) => {
      const each = (minutesOf: typeof boilMinutesOnBurner): BoilTime['cold'] =>
        alike(
          pans,
          panChoice,
          (pan) => boils(burner, pan),
          (pan) => minutesOf(kitchen, burner, pan, pool.waterMl, pan!.lid),
        ).map(({ value, literals }) => ({ value, literals: [...picks(burnerChoice, index), ...literals] }));
      return { cold: each(boilMinutesOnBurner), again: each(reboilMinutes) };
    }),
  };
  for (let number = 1; number <= (pool.boils ?? 1); number++) {
    const heat = `${pool.id}/heat.${number}`;
    const choice = number === 1 ? null : builder.choice(`water:${pool.id}.${number}`, ['absent', 'again', 'fresh']);
    const present = number === 1 ? [] : picks(choice, AGAIN, FRESH);
    builder.task(
      heat,
      burners.map((burner) =>
        heatMode(
          t,
          burner,
          pool,
          pans.filter((pan) => boils(burner, pan)),
        ),
      ),
      burnerChoice,
      present,
    );
    // What is called a boil comes to the boil, used or not: the next one may count on its heat.
    for (const { minutes, when } of heatUpsOf(times, choice)) builder.atLeast(start(heat), end(heat), minutes, when);
    const again =
      number === 1
        ? null
        : work(
            `${pool.id}/again.${number}`,
            `${pool.name} back on the heat`,
            POOL_WORK.again,
            picks(choice, AGAIN),
            false,
          );
    const fresh =
      number === 1
        ? null
        : work(
            `${pool.id}/fresh.${number}`,
            `fresh water for ${pool.name}`,
            POOL_WORK.fresh,
            picks(choice, FRESH),
            true,
            true,
          );
    const before = legends.at(-1);
    if (number === 1) builder.exactly(end(fill.task), start(heat), 0);
    for (const operation of [again, fresh]) {
      if (operation === null) continue;
      builder.exactly(end(operation.task), start(heat), 0);
      builder.atLeast(end(before!.heat), start(operation.task), 0);
    }
    // Back on the heat while it is still hot, for that is what the time to boil again is reckoned from.
    if (again !== null)
      for (const { value, literals } of times.hot) builder.atMost(end(before!.heat), end(again.task), value, literals);
    if (before !== undefined && before.choice !== null) builder.forbid([...present, ...picks(before.choice, 0)]);
    builder.atLeast(end(heat), start(empty.task), 0);
    legends.push({ heat, choice, fill: number === 1 ? fill : null, again, fresh });
  }
  const legend: PoolLegend = {
    pool,
    span,
    panChoice,
    pans: pans.map((pan) => pan.id),
    burnerChoice,
    burners: burners.map((burner) => burner.id),
    boils: legends,
    empty,
  };
  t.pools.push(legend);
  for (const use of uses) bindUse(t, legend, use, times);
  addLevels(t, legend, uses);
}

/** Minutes of a pool by burner and pan: to the boil from cold and again, and how long it stays hot off the heat. */
interface BoilTime {
  readonly cold: readonly Alike[];
  readonly again: readonly Alike[];
}
interface PoolTimes {
  readonly hot: readonly Alike[];
  readonly boils: readonly BoilTime[];
}

/** Minutes to the boil of a boil whose water is chosen by `choice`, and when each holds. */
function heatUpsOf(
  times: PoolTimes,
  choice: string | null,
): readonly { readonly minutes: number; readonly when: readonly Literal[] }[] {
  const of = (each: readonly Alike[], water: readonly Literal[]) =>
    each.map(({ value, literals }) => ({ minutes: value, when: [...literals, ...water] }));
  return times.boils.flatMap(({ cold, again }) =>
    choice === null ? of(cold, []) : [...of(again, picks(choice, AGAIN)), ...of(cold, picks(choice, FRESH))],
  );
}

/** Full power is reserved all the while it is on; energy is that of keeping the boil, with the first boil's on top. */
function heatMode(t: Translation, burner: Burner, pool: Pool, pans: readonly Pan[]): Mode {
  const watts = burnerWatts(t.kitchen, burner, 'full');
  const simmer = mostKeepDrawW(t.kitchen, burner, true, 'boil', pans);
  const boil = Math.max(0, ...pans.map((pan) => boilMinutesOnBurner(t.kitchen, burner, pan, pool.waterMl, pan.lid)));
  return {
    shortest: 0,
    longest: t.builder.horizon,
    uses: draws(t.kitchen, burner.id, watts),
    cost: {
      fixed: Math.round(((burner.powerW - simmer) * boil) / 60),
      perMinute: wattHoursPerMinute(simmer),
    },
  };
}

/** Ties a use to the boil it picks: not before it boils, within its boil, or while it is hot enough. */
function bindUse(t: Translation, legend: PoolLegend, use: NeedLegend, times: PoolTimes): void {
  const { builder } = t;
  const { pool, boils } = legend;
  const need = use.need as PoolNeed;
  const requirement = poolName(pool);
  use.options.forEach((option, index) => {
    if (option.place.id !== pool.id) return;
    const picked = picks(use.choice, index);
    const number = option.place.boil!;
    const boil = boils[number - 1]!;
    if (boil.choice !== null) builder.forbid([...whenOf(t, use), ...picked, ...picks(boil.choice, 0)]);
    for (const { minutes, when } of heatUpsOf(times, boil.choice))
      builder.atLeast(start(boil.heat), start(use.task), minutes, [...picked, ...when], requirement);
    if (need.how === 'draw') {
      for (const { value, literals } of times.hot)
        builder.atMost(end(boil.heat), start(use.task), value, [...picked, ...literals], requirement);
      builder.atLeast(end(use.task), start(legend.empty.task), 0, picked);
      const next = boils[number];
      for (const operation of [next?.again, next?.fresh])
        if (operation) builder.atLeast(end(use.task), start(operation.task), 0, picked);
    } else builder.atLeast(end(use.task), end(boil.heat), 0, picked, requirement);
  });
}

/** Conditions under which a use of a place exists. */
export function whenOf(t: Translation, use: NeedLegend): readonly Literal[] {
  return t.builder.tasks.find((task) => task.id === use.task)?.when ?? [];
}

/** Level above the least that must stay in the pot: one reservoir for each water it can hold, filled once and drawn from. */
function addLevels(t: Translation, legend: PoolLegend, uses: readonly NeedLegend[]): void {
  const { pool, boils } = legend;
  const spare = pool.waterMl - pool.leastMl;
  const drawn = uses.filter((use) => (use.need as PoolNeed).how === 'draw');
  if (drawn.length === 0) return;
  for (let water = 1; water <= boils.length; water++) {
    t.builder.reservoirs.push({
      id: `level:${pool.id}.${water}`,
      initial: spare,
      events: drawn.flatMap((use) =>
        use.options.flatMap((option, index) =>
          option.place.id !== pool.id
            ? []
            : waterCases(boils, option.place.boil!, water).map((literals) => ({
                point: start(use.task),
                amount: -option.amount,
                if: [...picks(use.choice, index), ...literals],
              })),
        ),
      ),
    });
  }
}

/** The cases in which boil `number` has the pool's n-th water: which of the boils up to it came with fresh water. */
function waterCases(boils: readonly BoilLegend[], number: number, water: number): readonly (readonly Literal[])[] {
  let cases: { literals: readonly Literal[]; water: number }[] = [{ literals: [], water: 1 }];
  for (const boil of boils.slice(1, number)) {
    cases = cases.flatMap((each) => [
      { literals: [...each.literals, ...picks(boil.choice, AGAIN)], water: each.water },
      { literals: [...each.literals, ...picks(boil.choice, FRESH)], water: each.water + 1 },
    ]);
  }
  return cases.filter((each) => each.water === water).map((each) => each.literals);
}
