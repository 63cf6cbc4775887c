/** Heat that a component has to itself in any case: a burner under its own pan, its kettle, an appliance. */
import { usesOfPart } from '../checker/boiling.ts';
import type { Reading, Use } from '../checker/reading.ts';
import type { Burner, Pan } from '../kitchen/kitchen.ts';
import { boilMinutesExact, kettleMinutesExact } from '../water/boil.ts';
import { keepDrawW } from '../water/simmer.ts';
import { kettleWorking } from '../water/workings.ts';
import { electricity, hobEnergy, sum, water, type Amount } from './amounts.ts';
import type { SourceEntry, SourceKind } from './entry.ts';

interface Own {
  readonly kind: SourceKind;
  readonly id: string;
  readonly component: string;
  readonly amount: Amount;
}

/** The pan that stands over a burner's use: of the same component and batch, at the same time. */
function panOver(reading: Reading, under: Use): Use | undefined {
  return reading.uses.find(
    (use) =>
      use.need.use === 'pan' &&
      use.component.id === under.component.id &&
      (!use.batched || !under.batched || use.batch === under.batch) &&
      use.place.from <= under.place.from &&
      use.place.until >= under.place.until,
  );
}

interface Over {
  readonly pan: Pan | undefined;
  readonly lidded: boolean;
}

function panAndLid(reading: Reading, under: Use): Over {
  const over = panOver(reading, under);
  const pan = reading.plan.kitchen.pans.find(({ id }) => id === over?.place.id);
  return { pan, lidded: over?.need.use === 'pan' && over.need.lid === true && pan?.lid === true };
}

/** A burner that is said to simmer gives its full power until the water boils: what that takes on top. */
function boilOnTop(reading: Reading, under: Use, burner: Burner, ml: number): Amount {
  const { kitchen } = reading.plan;
  const { pan, lidded } = panAndLid(reading, under);
  if (under.need.use !== 'burner' || under.need.heat === 'full' || pan === undefined) return water(0);
  const { from, until } = under.place;
  const minutes = Math.min(until - from, boilMinutesExact(kitchen, burner, pan, ml, lidded, false));
  return hobEnergy(kitchen, ((burner.powerW - keepDrawW(kitchen, burner, pan, lidded, 'simmer')) * minutes) / 60);
}

function burners(reading: Reading): readonly Own[] {
  const { kitchen } = reading.plan;
  return reading.uses.flatMap((use): readonly Own[] => {
    const { need, place, component } = use;
    const burner = kitchen.hob.burners.find(({ id }) => id === place.id);
    if (need.use !== 'burner' || burner === undefined) return [];
    const { pan, lidded } = panAndLid(reading, use);
    const watts =
      need.heat === 'full' || pan === undefined ? burner.powerW : keepDrawW(kitchen, burner, pan, lidded, 'simmer');
    const wattHours = (watts * (place.until - place.from)) / 60;
    return [{ kind: 'burner', id: burner.id, component: component.id, amount: hobEnergy(kitchen, wattHours) }];
  });
}

/** Water that steps bring to the boil by themselves: the kettle's energy, and the water of kettle and pan. */
function boiled(reading: Reading): readonly Own[] {
  const { kettle, hob } = reading.plan.kitchen;
  return reading.steps
    .flatMap(({ pieces }) => pieces)
    .flatMap((piece) =>
      (piece.way?.parts ?? []).flatMap((part, index): readonly Own[] => {
        if (part.hands === 'on' || part.boilMl === 0) return [];
        const component = piece.instance.component.id;
        if (usesOfPart(piece, index, 'kettle', reading).length > 0 && kettle !== undefined) {
          const minutes = kettleMinutesExact(reading.plan.kitchen, kettle, part.boilMl);
          const amount = sum([electricity((minutes * kettle.powerW) / 60), water(part.boilMl)]);
          return [{ kind: 'kettle', id: kettle.id, component, amount }];
        }
        const under = usesOfPart(piece, index, 'burner', reading)[0];
        const burner = hob.burners.find(({ id }) => id === under?.place.id);
        if (under === undefined || burner === undefined) return [];
        const amount = sum([water(part.boilMl), boilOnTop(reading, under, burner, part.boilMl)]);
        return [{ kind: 'burner', id: burner.id, component, amount }];
      }),
    );
}

function appliances(reading: Reading): readonly Own[] {
  return reading.uses.flatMap(({ need, place, component }): readonly Own[] => {
    const appliance = reading.plan.kitchen.appliances.find(({ id }) => id === place.id);
    if (need.use !== 'appliance' || appliance === undefined) return [];
    const amount = electricity((appliance.powerW * (place.until - place.from)) / 60);
    return [{ kind: 'appliance', id: appliance.id, component: component.id, amount }];
  });
}

/** One entry for each burner, kettle and appliance that components have to themselves; alone they take the same. */
export function ownEntries(reading: Reading): readonly SourceEntry[] {
  const { kitchen } = reading.plan;
  const all = [...burners(reading), ...boiled(reading), ...appliances(reading)];
  const names = new Map(
    [...kitchen.hob.burners, ...kitchen.appliances, ...(kitchen.kettle === undefined ? [] : [kitchen.kettle])].map(
      ({ id, name }) => [id, name],
    ),
  );
  const keys = [...new Set(all.map(({ kind, id }) => `${kind} ${id}`))];
  return keys.map((key): SourceEntry => {
    const own = all.filter(({ kind, id }) => `${kind} ${id}` === key);
    const { kind, id } = own[0]!;
    const borne = new Map<string, Amount>();
    for (const { component, amount } of own) borne.set(component, sum([borne.get(component) ?? water(0), amount]));
    const ml = own.reduce((most, { amount }) => Math.max(most, amount.waterMl), 0);
    return {
      kind,
      id,
      name: names.get(id) ?? id,
      amount: sum(own.map(({ amount }) => amount)),
      borne,
      alone: [...borne].map(([component, amount]) => ({ component, by: 'own', amount })),
      workings: kind === 'kettle' && kitchen.kettle !== undefined ? [kettleWorking(kitchen, kitchen.kettle, ml)] : [],
    };
  });
}
