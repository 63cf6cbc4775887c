/** Ovens with their racks under the temperature line; burners; kettle and appliances. */
import type { Plan, PoolCourse } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { waterOwner, type Owner } from './identity.ts';
import { poolName } from './kitchen-names.ts';
import { shorterNames } from './label.ts';
import { inRows, type Gone, type Group, type Lane } from './lane-model.ts';
import { placeBars, type LooseBar } from './place-bars.ts';
import { clockAt, clockSpan, minutesWords } from './wall-clock.ts';

/** Times when one of these things of the kitchen is not there. */
export function absences(plan: Plan, ids: readonly string[]): readonly Gone[] {
  return (plan.session.absences ?? [])
    .filter((absence) => ids.includes(absence.what))
    .map((absence) => ({
      from: durationMinutes(absence.from),
      until: durationMinutes(absence.until),
      words: absence.why ?? 'not there',
    }));
}

function lane(id: string, name: string, bars: readonly LooseBar[], gone: readonly Gone[]): Lane {
  return { kind: 'things', id, name, gone, ...inRows(bars) };
}

/** Ovens with all their racks; one that this plan leaves cold has a single lane that says so, unless everything is asked for. */
export function ovenGroups(plan: Plan, owners: ReadonlyMap<string, Owner>, everything: boolean): readonly Group[] {
  return plan.kitchen.ovens.map((oven) => {
    const programme = plan.ovens.find((candidate) => candidate.oven === oven.id);
    const mostC = Math.max(plan.kitchen.roomC + 50, ...(programme?.line.map((point) => point.celsius) ?? []));
    const racks = oven.racks.map((rack) =>
      lane(
        `rack/${oven.id}/${rack.id}`,
        rack.name,
        placeBars(plan, owners, 'rack', (place) => place.id === rack.id && (place.oven ?? oven.id) === oven.id),
        absences(plan, [oven.id, rack.id]),
      ),
    );
    const used = everything || programme !== undefined || racks.some((rack) => rack.bars.length > 0);
    return {
      id: `oven/${oven.id}`,
      kind: 'oven',
      name: oven.name,
      hill: programme === undefined ? null : { programme, roomC: plan.kitchen.roomC, mostC },
      lanes: used ? racks : [lane(`rack/${oven.id}`, 'not used', [], absences(plan, [oven.id]))],
    };
  });
}

function boilBars(plan: Plan, course: PoolCourse, burner: string): readonly LooseBar[] {
  const name = poolName(plan, course.pool);
  return course.boils
    .filter((boil) => boil.burner === burner)
    .map((boil) => {
      const boils = `boils ${clockAt(plan.start, boil.boilsAt)}`;
      return {
        id: `boil/${course.pool}/${boil.boil}`,
        stepId:
          plan.steps.find((step) => step.kind === 'water' && step.component === course.pool && step.end === boil.onHeat)
            ?.id ?? `${course.pool}/fill`,
        owner: waterOwner(course.pool),
        look: 'off',
        start: boil.onHeat,
        end: boil.offHeat,
        hands: [],
        labels: [`${name} · ${boils}`, name, ...shorterNames(name)],
        ticks: [{ minute: boil.boilsAt, words: boils }],
        limit: null,
        words: `${name} on the heat, ${clockSpan(plan.start, boil.onHeat, boil.offHeat)}, ${minutesWords(boil.boilsAt - boil.onHeat)} to the boil, ${boils}`,
      };
    });
}

/** Burners that this plan uses; all of them with `everything`. */
export function hobGroup(plan: Plan, owners: ReadonlyMap<string, Owner>, everything: boolean): Group {
  const lanes = plan.kitchen.hob.burners.map((burner) =>
    lane(
      `burner/${burner.id}`,
      burner.name,
      [
        ...placeBars(plan, owners, 'burner', (place) => place.id === burner.id),
        ...plan.pools.flatMap((course) => boilBars(plan, course, burner.id)),
      ],
      absences(plan, [burner.id]),
    ),
  );
  return {
    id: 'hob',
    kind: 'hob',
    name: 'Hob',
    lanes: lanes.filter((each) => everything || each.bars.length > 0),
    hill: null,
  };
}

export function applianceGroup(plan: Plan, owners: ReadonlyMap<string, Owner>, everything: boolean): Group {
  const { kettle, appliances } = plan.kitchen;
  const lanes = [
    ...(kettle === undefined
      ? []
      : [
          lane(
            'kettle',
            kettle.name,
            placeBars(plan, owners, 'kettle', () => true),
            absences(plan, [kettle.id]),
          ),
        ]),
    ...appliances.map((appliance) =>
      lane(
        `appliance/${appliance.id}`,
        appliance.name,
        placeBars(plan, owners, 'appliance', (place) => place.id === appliance.id),
        absences(plan, [appliance.id]),
      ),
    ),
  ];
  return {
    id: 'appliances',
    kind: 'heat',
    name: 'Plugged in',
    lanes: lanes.filter((each) => everything || each.bars.length > 0),
    hill: null,
  };
}
