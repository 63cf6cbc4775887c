/** A plan as a list to cook by: other days first, then what each person does when, the ovens, and the figures. */
import type { Plan, PlannedDay, PlannedPlace, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { wallClockOf } from '../../solving/wall-offset.ts';
import { headlineOf } from './figures.ts';

/** The running order, in lines. */
export function runningOrder(plan: Plan): string {
  const clock = wallClockOf(plan.start);
  const at = (minute: number): string => clock(minute).time;
  const sections = [
    [
      `${plan.name}`,
      `${plan.kitchen.name}, ${plan.start.local.replace('T', ' ')} ${plan.start.zone}`,
      headlineOf(plan),
    ],
    days('Before the session', plan.ahead, plan),
    ...plan.crew.map((person) => personLines(plan, person, at)),
    ovenLines(plan, at),
    days('On later days', plan.later, plan),
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

function personLines(plan: Plan, person: string, at: (minute: number) => string): readonly string[] {
  const name = plan.session.people.find(({ id }) => id === person)?.name ?? person;
  const rows = plan.steps
    .flatMap((step) =>
      step.segments
        .filter((segment) => segment.hands === 'on' && segment.person === person)
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
        `${what}${suffix(plan, step)}${where.length === 0 ? '' : ` · ${where.join(', ')}`}`,
      ].join('  ');
    });
  return rows.length === 0 ? [] : [name, ...rows];
}

function suffix(plan: Plan, step: PlannedStep): string {
  const component = componentName(plan, step.component);
  const batch = step.batch > 1 ? `, batch ${step.batch}` : '';
  return step.kind === 'step' && !step.name.includes(component) ? ` (${component}${batch})` : batch;
}

function ovenLines(plan: Plan, at: (minute: number) => string): readonly string[] {
  return plan.ovens.flatMap(({ oven, settings }) => {
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
