/** A plan as a list to cook by: other days first, then what each person does when, the ovens, and the figures. */
import { cautionsOf } from '../../../solver/safety/cautions.ts';
import type { Plan, PlannedDay, PlannedPlace, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { headlineOf } from './figures.ts';

/** A session that runs: what is over is left out, and what has moved says so. */
export interface Running {
  readonly now: number;
  /** As it was planned until now. */
  readonly before: Plan;
}

/** The running order, in lines; with `running` what is left of it. */
export function runningOrder(plan: Plan, running: Running | null = null): string {
  const clock = wallClockOf(plan.start);
  const at = (minute: number): string => clock(minute).time;
  const sections = [
    [
      `${plan.name}`,
      `${plan.kitchen.name}, ${plan.start.local.replace('T', ' ')} ${plan.start.zone}`,
      headlineOf(plan),
    ],
    running === null ? days('Before the session', plan.ahead, plan) : [],
    ...plan.crew.map((person) => personLines(plan, person, at, running)),
    ovenLines(plan, at, running),
    days('On later days', plan.later, plan),
    ['Cautions', ...cautionsOf(plan).map(({ words }) => `  ${words}`)],
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function days(title: string, steps: readonly PlannedDay[], plan: Plan): readonly string[] {
  if (steps.length === 0) return [];
  const clock = wallClockOf(plan.start);
  const rows = [...steps]
    .sort((a, b) => a.start - b.start)
    .map((step) => {
      const { day, time } = clock(step.start);
      return `  ${day} ${time}  ${step.name} (${componentName(plan, step.component)}), ${step.handsOnMinutes} min`;
    });
  return [title, ...rows];
}

function personLines(
  plan: Plan,
  person: string,
  at: (minute: number) => string,
  running: Running | null,
): readonly string[] {
  const name = plan.session.people.find(({ id }) => id === person)?.name ?? person;
  const rows = plan.steps
    .flatMap((step) =>
      step.segments
        .filter(({ hands, person: who, end }) => hands === 'on' && who === person && end > (running?.now ?? -1))
        .map((segment) => ({ step, segment })),
    )
    .sort((a, b) => a.segment.start - b.segment.start || a.segment.end - b.segment.end)
    .map(({ step, segment }) => {
      const what =
        segment.name === undefined || segment.name === step.name ? step.name : `${step.name}: ${segment.name}`;
      const where = [
        ...new Set(
          step.places
            .filter((place) => place.from < segment.end && segment.start < place.until)
            .map((place) => placeName(plan, place)),
        ),
      ];
      return [
        `  ${at(segment.start)}–${at(segment.end)}`,
        `${what}${suffix(plan, step)}${where.length === 0 ? '' : ` · ${where.join(', ')}`}${running === null ? '' : movedWords(running.before, step, segment, at)}`,
      ].join('  ');
    });
  return rows.length === 0 ? [] : [name, ...rows];
}

/** ` (was 10:54)`, ` (was Ben’s, 10:54)`; nothing where it is as it was planned. */
function movedWords(
  before: Plan,
  step: PlannedStep,
  segment: PlannedStep['segments'][number],
  at: (minute: number) => string,
): string {
  const own = before.steps.find(({ id }) => id === step.id);
  const alike = (each: PlannedStep['segments'][number]): boolean =>
    each.hands === 'on' && segment.hands === 'on' && each.name === segment.name;
  const nth = step.segments.filter(alike).indexOf(segment);
  const was = own?.segments.filter(alike)[nth];
  if (was?.hands !== 'on' || segment.hands !== 'on') return '';
  const who =
    was.person === segment.person
      ? ''
      : `${before.session.people.find(({ id }) => id === was.person)?.name ?? was.person ?? 'nobody'}’s`;
  const when = was.start === segment.start ? '' : at(was.start);
  return who === '' && when === '' ? '' : ` (was ${[who, when].filter((word) => word !== '').join(', ')})`;
}

function suffix(plan: Plan, step: PlannedStep): string {
  const component = componentName(plan, step.component);
  const batch = step.batch > 1 ? `, batch ${step.batch}` : '';
  return step.kind === 'step' && !step.name.includes(component) ? ` (${component}${batch})` : batch;
}

function ovenLines(plan: Plan, at: (minute: number) => string, running: Running | null): readonly string[] {
  return plan.ovens.flatMap(({ oven, settings: all }) => {
    // Of what is over, where the dial stands now.
    const standing = all.findLastIndex(({ minute }) => minute <= (running?.now ?? -1));
    const settings = all.slice(Math.max(0, standing));
    if (settings.length === 0) return [];
    const name = plan.kitchen.ovens.find(({ id }) => id === oven)?.name ?? oven;
    const turns = settings.map(
      (setting) =>
        `  ${at(setting.minute)}        ${setting.celsius === null ? 'off' : `${setting.celsius} °C ${setting.function}`}`,
    );
    return [`${name}, dial`, ...turns];
  });
}

/** Room of the kitchen that has no name of its own. */
const ROOM: Readonly<Record<string, string>> = {
  resting: 'resting shelf',
  cooling: 'cooling rack',
  drying: 'drying rack',
};

const componentName = (plan: Plan, id: string): string =>
  plan.components.find((component) => component.id === id)?.name ?? id;

function placeName(plan: Plan, { kind, id, oven }: PlannedPlace): string {
  const { kitchen, session } = plan;
  const racks = kitchen.ovens.find((one) => one.id === oven);
  if (racks !== undefined) return `${racks.name}, ${racks.racks.find((rack) => rack.id === id)?.name ?? id}`;
  const things = [
    ...kitchen.hob.burners,
    ...kitchen.pans,
    ...kitchen.trays,
    ...kitchen.boards,
    ...kitchen.bowls,
    ...kitchen.tools,
    ...kitchen.appliances,
    ...(kitchen.kettle === undefined ? [] : [kitchen.kettle]),
    ...(session.pools ?? []),
  ];
  return things.find((thing) => thing.id === id)?.name ?? ROOM[kind] ?? kind;
}
