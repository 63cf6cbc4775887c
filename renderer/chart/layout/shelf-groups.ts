/** Resting and cooling with their limits; the way into the fridge; and, where everything is asked for, boards, pans, bowls and sink. */
import type { PlaceKind, Plan, PlannedHold, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { fridgeDeadline } from '../../../solver/safety/limits.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { ownerOf, type Owner } from './identity.ts';
import { placeWords, thingName } from './kitchen-names.ts';
import { shorterNames } from './label.ts';
import { inRows, type Group, type Keeping, type Lane } from './lane-model.ts';
import { placeBars, type LooseBar } from './place-bars.ts';
import { clockAt, clockSpan, minutesWords } from './wall-clock.ts';

const SHELVES: readonly { readonly kind: PlaceKind; readonly name: string }[] = [
  { kind: 'resting', name: 'resting' },
  { kind: 'cooling', name: 'cooling' },
];

export function shelfGroup(plan: Plan, owners: ReadonlyMap<string, Owner>): Group {
  const lanes = SHELVES.map(({ kind, name }): Lane => {
    return { kind: 'things', id: kind, name, gone: [], ...inRows(placeBars(plan, owners, kind, () => true)) };
  }).filter((lane) => lane.bars.length > 0);
  return { id: 'shelves', kind: 'shelves', name: 'Resting', lanes, hill: null };
}

/** The step that puts a component into the fridge: its own, or the boxes' where it goes into boxes. */
function puttingAway(plan: Plan, component: string): PlannedStep | undefined {
  const own = plan.components.find((candidate) => candidate.id === component)?.steps.filter((step) => step.putsAway);
  const last = (steps: readonly PlannedStep[]): PlannedStep | undefined => [...steps].sort((a, b) => b.end - a.end)[0];
  if (own !== undefined && own.length > 0) {
    return last(plan.steps.filter((step) => step.component === component && own.some((each) => each.id === step.step)));
  }
  if (plan.session.packing === undefined || plan.session.packing.without?.includes(component)) return undefined;
  return last(plan.steps.filter((step) => step.kind === 'packing' && step.step === 'put-away'));
}

function keepingOf(plan: Plan, owners: ReadonlyMap<string, Owner>): readonly Keeping[] {
  return plan.components.flatMap((component): Keeping[] => {
    const { fridge } = component;
    if (fridge === undefined) return [];
    const off = plan.steps.filter((step) => step.component === component.id && step.step === fridge.from);
    const first = [...off].sort((a, b) => a.end - b.end)[0];
    if (first === undefined) return [];
    const asked = fridgeDeadline(plan.rules ?? STRICTEST_BUILT_IN, component.storage, plan.kitchen.roomC);
    const until = first.end + Math.floor(Math.min(durationMinutes(fridge.within), asked?.value ?? Infinity));
    const away = puttingAway(plan, component.id)?.end ?? null;
    const put = away === null ? '' : `, put away ${clockAt(plan.start, away)}`;
    return [
      {
        id: `keeping/${component.id}`,
        stepId: first.id,
        owner: ownerOf(first, owners),
        from: first.end,
        until,
        away,
        words: `${component.name}: off the heat ${clockAt(plan.start, first.end)}, in the fridge by ${clockAt(plan.start, until)}${put}`,
      },
    ];
  });
}

export function keepingGroup(plan: Plan, owners: ReadonlyMap<string, Owner>): Group {
  const keeping = [...keepingOf(plan, owners)].sort((a, b) => a.from - b.from);
  const lane: Lane = {
    kind: 'keeping',
    id: 'keeping',
    name: 'in the fridge by',
    bars: [],
    rows: keeping.length,
    keeping,
  };
  return { id: 'keeping', kind: 'keeping', name: 'Fridge', lanes: keeping.length === 0 ? [] : [lane], hill: null };
}

function holdBar(plan: Plan, owners: ReadonlyMap<string, Owner>, hold: PlannedHold): LooseBar {
  const owner = ownerOf({ kind: 'step', component: hold.component }, owners);
  const { place } = hold;
  const first = plan.steps.find((step) => step.component === hold.component && step.start >= place.from);
  return {
    id: `hold/${hold.component}/${hold.hold}/${hold.batch}`,
    stepId: first?.id ?? '',
    owner,
    look: 'held',
    start: place.from,
    end: place.until,
    hands: [],
    labels: [`${owner.name} stays in it`, ...shorterNames(owner.name)],
    ticks: [],
    limit: null,
    words: `${owner.name} stays in the ${placeWords(plan, place)}, ${clockSpan(plan.start, place.from, place.until)}, ${minutesWords(place.until - place.from)}`,
  };
}

const THINGS: readonly { readonly kind: PlaceKind; readonly name: string }[] = [
  { kind: 'board', name: 'Boards' },
  { kind: 'tray', name: 'Trays' },
  { kind: 'pan', name: 'Pans' },
  { kind: 'bowl', name: 'Bowls' },
  { kind: 'tool', name: 'Tools' },
  { kind: 'sink', name: 'Sink' },
  { kind: 'drying', name: 'Drying' },
];

/** Everything else that is taken, a lane per thing. A pan that is a pool's is told in the water's lane. */
export function thingGroups(plan: Plan, owners: ReadonlyMap<string, Owner>): readonly Group[] {
  return THINGS.map(({ kind, name }): Group => {
    const holds = plan.holds.filter((hold) => hold.place.kind === kind);
    const places = plan.steps.flatMap((step) => step.places).filter((place) => place.kind === kind);
    const ids = [...new Set([...places, ...holds.map((hold) => hold.place)].map((place) => place.id))];
    const lanes = ids.map((id): Lane => {
      const bars = [
        ...holds.filter((hold) => hold.place.id === id).map((hold) => holdBar(plan, owners, hold)),
        ...placeBars(plan, owners, kind, (place) => place.id === id),
      ];
      return { kind: 'things', id: `${kind}/${id}`, name: thingName(plan, kind, id), gone: [], ...inRows(bars) };
    });
    return { id: kind, kind: 'things', name, lanes, hill: null };
  }).filter((group) => group.lanes.length > 0);
}
