/** What the components ask: order and gaps of steps, days before, the fridge, hot holding, hot ovens, longest hands-off lengths. */
import type { Component } from '../kitchen/component.ts';
import type { StepInstance } from '../kitchen/expand.ts';
import type { Step } from '../kitchen/step.ts';
import { minutesDown, minutesUp } from '../kitchen/scaling.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { afterheatName, aheadName, hotHoldName, orderName, preheatName } from '../translate/requirement-names.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';
import type { Requirement } from './requirement.ts';
import { safetyRequirements } from './safety-requirements.ts';
import { crewOf } from './session-requirements.ts';
import { listed, minutesInWords } from './session-words.ts';
import { withoutLags } from './without-lags.ts';

type Part = Omit<Requirement, 'id' | 'document'>;

/** Every requirement of the components that the session cooks, component by component. */
export function componentRequirements(input: SessionInput): readonly Requirement[] {
  return input.components
    .filter(({ id }) => input.session.dishes.some((dish) => dish.component === id))
    .flatMap((component) => {
      const document = `component ${component.id}`;
      return [
        ...component.steps.flatMap((step, index) => [
          ...orders(input, component, step, index),
          ...heat(input, component, step, index),
          ...lengths(component, step, index),
          ...whoMay(input, component, step, index),
        ]),
        ...days(component),
        ...safetyRequirements(input, component),
      ].map((part): Requirement => ({ id: `${document} ${part.path}`, document, ...part }));
    });
}

function orders(input: SessionInput, component: Component, step: Step, index: number): readonly Part[] {
  return (step.after ?? []).flatMap((order, number): Part[] => {
    const [owner, before] = order.step.includes('/')
      ? (order.step.split('/') as [string, string])
      : [component.id, order.step];
    const other = input.components.find(({ id }) => id === owner);
    const first = other?.steps.find(({ id }) => id === before)?.name ?? before;
    const name = orderName({ step, component }, before);
    const path = `steps[${index}].after[${number}]`;
    const shortest = order.shortest === undefined ? 0 : minutesUp(durationMinutes(order.shortest));
    const later = shortest === 0 ? '' : `, ${minutesInWords(shortest)} later or more`;
    const isLongest = (from: unknown): boolean => typeof from === 'object' && (from as { at: string }).at === 'start';
    const following: Part = {
      kind: shortest === 0 ? 'order' : 'gap',
      path,
      words: `${step.name} (${component.name}) comes after ${first}${owner === component.id ? '' : ` (${other?.name ?? owner})`}${later}`,
      mend: `let ${step.name} come before ${first} is done`,
      relaxProblem: withoutLags((lag, requirement) => requirement === name && !isLongest(lag.from)),
    };
    if (order.longest === undefined) return [following];
    const longest = minutesDown(durationMinutes(order.longest));
    return [
      following,
      {
        kind: 'gap',
        path: `${path}.longest`,
        words:
          longest === 0
            ? `${step.name} (${component.name}) follows ${first} at once`
            : `${step.name} (${component.name}) begins no more than ${minutesInWords(longest)} after ${first}`,
        mend: `let ${step.name} wait longer after ${first}`,
        relaxProblem: withoutLags((lag, requirement) => requirement === name && isLongest(lag.from)),
      },
    ];
  });
}

/** An oven hot before food goes in, afterheat, hot holding. */
function heat({ kitchen }: SessionInput, component: Component, step: Step, index: number): readonly Part[] {
  const parts: Part[] = [];
  const ovens = [step, ...(step.alternatives ?? [])].flatMap((way) => way.needs.filter((need) => need.use === 'oven'));
  if (ovens.some((need) => need.afterheat !== true && need.coldStart !== true)) {
    const names = new Set(kitchen.ovens.map((oven) => preheatName(oven, step)));
    parts.push({
      kind: 'limit',
      path: `steps[${index}].needs`,
      words: `${step.name} (${component.name}) goes into a hot oven`,
      mend: `let ${step.name} go in while the oven heats`,
      relaxProblem: withoutLags((_, name) => names.has(name)),
    });
  }
  if (ovens.some((need) => need.afterheat === true)) {
    const [before, after] = afterheatName('\n').split('\n') as [string, string];
    const mine = new RegExp(`^${component.id}/${step.id}[.@#:]`);
    parts.push({
      kind: 'limit',
      path: `steps[${index}].needs`,
      words: `${step.name} (${component.name}) is in the afterheat, neither too hot nor too cool`,
      mend: `give ${step.name} a heat of its own`,
      relaxProblem: withoutLags(
        (_, name) => name.startsWith(before) && name.endsWith(after) && mine.test(name.slice(before.length)),
      ),
    });
  }
  if (step.hotHold !== undefined)
    parts.push({
      kind: 'limit',
      path: `steps[${index}].hotHold.longest`,
      words: `${step.name} (${component.name}) keeps it hot for no more than ${minutesInWords(durationMinutes(step.hotHold.longest))}`,
      mend: `keep it hot for longer`,
      relaxProblem: withoutLags((_, name) => name === hotHoldName(step)),
    });
  return parts;
}

/** As long as anybody could want, minutes. */
const ANY_LENGTH = 24 * 60;

/** The longest that a hands-off part may go on. */
function lengths(component: Component, step: Step, index: number): readonly Part[] {
  const ways = (step.alternatives ?? []).concat({ name: step.name, segments: step.segments, needs: step.needs });
  const longest = ways.flatMap((way) => way.segments.flatMap((segment) => (segment.hands === 'off' ? [segment] : [])));
  if (longest.length === 0) return [];
  const minutes = longest.map((segment) => durationMinutes(segment.longest ?? segment.shortest ?? 'PT0M'));
  const boils = longest.some((segment) => segment.boilMl !== undefined);
  const cools = longest.some((segment) => segment.cools !== undefined);
  const loads = ways.some(({ needs }) => needs.some((need) => need.use === 'oven' && need.load !== undefined));
  const more = cools
    ? 'time that it takes to cool'
    : boils
      ? 'time to the boil'
      : loads
        ? 'time in which the oven makes up for the cold load'
        : null;
  const most = Math.max(...minutes);
  return [
    {
      kind: 'limit',
      path: `steps[${index}].segments`,
      words: `${step.name} (${component.name}) goes on by itself for no more than ${
        more === null ? minutesInWords(most) : `its ${most === 0 ? '' : `${minutesInWords(most)} and the `}${more}`
      }`,
      mend: `let ${step.name} go on for longer`,
      relaxInput: adjusted(component, step, unlimited),
    },
  ];
}

/** Work that not everybody of the crew may do. */
function whoMay({ session, crew }: SessionInput, component: Component, step: Step, index: number): readonly Part[] {
  const ids = crewOf(session, crew);
  const cooks = session.people.filter(({ id }) => ids.includes(id));
  const asked = [step, ...(step.alternatives ?? [])].flatMap((way) =>
    way.segments.flatMap((segment) =>
      segment.hands === 'on' ? (segment.who ?? []) : (segment.checks ?? []).flatMap((check) => check.who ?? []),
    ),
  );
  const able = cooks.filter(({ can }) => asked.every((what) => can.includes(what)));
  if (asked.length === 0 || able.length === cooks.length) return [];
  return [
    {
      kind: 'limit',
      path: `steps[${index}].segments.who`,
      words: `only ${listed(able.map(({ name }) => name))} may do ${step.name} (${component.name})`,
      mend: `let others do ${step.name}, watched`,
      relaxInput: adjusted(component, step, byAnybody),
    },
  ];
}

const byAnybody = (instance: StepInstance): StepInstance => ({
  ...instance,
  ways: instance.ways.map((way) => ({
    ...way,
    parts: way.parts.map((part) =>
      part.hands === 'on'
        ? { ...part, who: null }
        : { ...part, checks: part.checks.map((check) => ({ ...check, who: null })) },
    ),
  })),
});

/** A step changed in every batch, whatever else is changed in it. */
const adjusted =
  (component: Component, step: Step, change: (instance: StepInstance) => StepInstance) =>
  (input: SessionInput): SessionInput => ({
    ...input,
    adjust: (written) => {
      const instance = input.adjust?.(written) ?? written;
      return instance.component.id === component.id && instance.step.id === step.id ? change(instance) : instance;
    },
  });

const unlimited = (instance: StepInstance): StepInstance => ({
  ...instance,
  ways: instance.ways.map((way) => ({
    ...way,
    parts: way.parts.map((part) => (part.hands === 'off' ? { ...part, longest: part.longest + ANY_LENGTH } : part)),
  })),
});

const days = (component: Component): readonly Part[] =>
  (component.ahead ?? []).map((ahead, index) => ({
    kind: 'limit',
    path: `ahead[${index}]`,
    words: `${ahead.name} (${component.name}), begun at ${ahead.at} ${ahead.daysBefore === 1 ? 'the day' : `${ahead.daysBefore} days`} before, lasts ${minutesInWords(
      durationMinutes(ahead.shortest),
    )} to ${minutesInWords(durationMinutes(ahead.longest))}`,
    mend: `do ${ahead.name} at another time`,
    relaxProblem: withoutLags((_, name) => name === aheadName(ahead)),
  }));
