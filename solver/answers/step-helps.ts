/**
 * Helps that are time: up to five minutes off what is longest in a step, by hand or by itself, never below one minute. Up to, so
 * that every plan there was stays one: the lengths of the problem are opened downwards.
 */
import type { Lag, Literal, Mode, Problem, Task } from '../engine/problem.ts';
import type { Part } from '../kitchen/expand.ts';
import type { Shape, StepLegend, Translation } from '../translate/legend.ts';
import type { Help } from './help.ts';
import { BOXES, CLEARING } from '../kitchen/session-components.ts';
import { minutesInWords } from './session-words.ts';

export const MINUTES_OFF = 5;

/** Two for each step where there is something to take off: hands-on and hands-off. */
export function stepHelps(translation: Translation): readonly Help[] {
  const steps = new Map<string, StepLegend>();
  for (const legend of translation.steps) {
    const id = stepId(legend);
    if (!steps.has(id)) steps.set(id, legend);
  }
  return [...steps].flatMap(([id, legend]) => [
    ...help(id, legend, 'on', translation),
    ...help(id, legend, 'off', translation),
  ]);
}

/** `component/step`, whatever the batch. */
export const stepId = ({ instance }: Pick<StepLegend, 'instance'>): string =>
  `${instance.component.id}/${instance.step.id}`;

function help(id: string, legend: StepLegend, hands: Part['hands'], translation: Translation): readonly Help[] {
  const minutes = Math.max(
    ...translation.steps
      .filter((each) => stepId(each) === id)
      .flatMap((each) => each.shapes.map((shape) => cutOf(shape.parts, hands).minutes)),
  );
  if (minutes <= 0) return [];
  const { component, step } = legend.instance;
  const byHand = hands === 'on';
  const probed = !byHand && step.cooksThrough !== undefined;
  return [
    {
      id: `${byHand ? 'by-hand' : 'by-itself'} ${id}`,
      kind: byHand ? 'by-hand' : 'by-itself',
      words: `${step.name}${isOfSession(component.id) ? '' : ` (${component.name})`}, ${minutesInWords(minutes)} ${byHand ? 'less work' : 'shorter'}`,
      caution: probed ? 'smaller pieces may do it; the probe decides' : '',
      relaxProblem: (problem, given) => shortened(problem, given, id, hands),
    },
  ];
}

/** Work that the session asks for is of no dish. */
const isOfSession = (component: string): boolean => component === BOXES || component === CLEARING;

/** The longest part of a kind, and what can be taken off it. A part that waits for a boil gets shorter with its own minutes only. */
function cutOf(parts: readonly Part[], hands: Part['hands']): { readonly index: number; readonly minutes: number } {
  const lengths = parts.map((part) => (part.hands !== hands ? 0 : part.hands === 'on' ? part.minutes : part.shortest));
  const longest = Math.max(0, ...lengths);
  return { index: lengths.indexOf(longest), minutes: Math.min(MINUTES_OFF, longest - 1) };
}

function shortened(problem: Problem, translation: Translation, id: string, hands: Part['hands']): Problem {
  /** By task: minutes off its shortest length. */
  const tasks = new Map<string, number>();
  const lags = new Map<Lag, number>();
  const savings: Saving[] = [];
  for (const legend of translation.steps) {
    if (stepId(legend) !== id) continue;
    for (const shape of legend.shapes) {
      const { index, minutes } = cutOf(shape.parts, hands);
      if (minutes <= 0) continue;
      if (legend.pieces.length > 0) savings.push({ piece: legend.pieces[0]!.task, when: legend.when, minutes });
      else if (hands === 'on') tasks.set(shape.operations[index]![0]!.task, minutes);
      else for (const lag of lengthsOf(problem, shape, index)) lags.set(lag, minutes);
      // What spans the step is no longer than its parts.
      for (const span of [legend.key, ...legend.needs.map(({ task }) => task)])
        tasks.set(span, Math.max(minutes, tasks.get(span) ?? 0));
    }
  }
  const opened = (mode: Mode | null, minutes: number): Mode | null =>
    mode === null ? null : { ...mode, shortest: Math.max(0, mode.shortest - minutes) };
  return withSavings(
    {
      ...problem,
      tasks: problem.tasks.map((task): Task => {
        const minutes = tasks.get(task.id);
        return minutes === undefined ? task : { ...task, modes: task.modes.map((mode) => opened(mode, minutes)) };
      }),
      lags: problem.lags.map((lag) => {
        const minutes = lags.get(lag);
        return minutes === undefined ? lag : { ...lag, least: lag.least - minutes };
      }),
    },
    savings,
  );
}

/** Minutes off work that is done in pieces, which sum to a total. */
interface Saving {
  /** The first of the pieces. */
  readonly piece: string;
  readonly when: readonly Literal[];
  readonly minutes: number;
}

/** A saving is one piece more that nobody does, of as many minutes as are saved. */
function withSavings(problem: Problem, savings: readonly Saving[]): Problem {
  const nobody = savings.map(({ piece, when, minutes }): Task => ({
    id: `${piece}/saved`,
    ...(when.length === 0 ? {} : { when }),
    modes: [{ shortest: 0, longest: minutes, uses: [] }],
  }));
  return {
    ...problem,
    tasks: [...problem.tasks, ...nobody],
    totals: problem.totals.map((total) => {
      const saved = savings.filter(({ piece }) => total.tasks.includes(piece)).map(({ piece }) => `${piece}/saved`);
      return saved.length === 0 ? total : { ...total, tasks: [...total.tasks, ...saved] };
    }),
  };
}

/** The lags that say how short a hands-off part may be. */
function lengthsOf(problem: Problem, shape: Shape, index: number): readonly Lag[] {
  const from = JSON.stringify(shape.boundaries[index]);
  const to = JSON.stringify(shape.boundaries[index + 1]);
  return problem.lags.filter(
    (lag) =>
      lag.requirement === undefined &&
      lag.least > 0 &&
      JSON.stringify(lag.from) === from &&
      JSON.stringify(lag.to) === to,
  );
}
