/** A planned step in words: its names from full to short, its limits, and a sentence for those who hear the chart. */
import type { Plan, PlannedSegment, PlannedStep } from '../../../solver/kitchen/plan.ts';
import type { Step } from '../../../solver/kitchen/step.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { personName } from './kitchen-names.ts';
import { shorterNames } from './label.ts';
import type { Owner } from './identity.ts';
import { clockSpan, minutesWords } from './wall-clock.ts';

/** The step of the component document that a planned step carries out; null for added work. */
export function stepDocument(plan: Plan, step: PlannedStep): Step | null {
  if (step.kind !== 'step') return null;
  const component = plan.components.find((candidate) => candidate.id === step.component);
  return component?.steps.find((candidate) => candidate.id === step.step) ?? null;
}

/** The name of the step in its document where the plan names the way of doing it instead (`with the kettle`). */
export function stepName(plan: Plan, step: PlannedStep): string {
  return stepDocument(plan, step)?.name ?? step.name;
}

/** Pieces of the same step, in order of time; the step alone where it is done in one go. */
export function piecesOf(plan: Plan, step: PlannedStep): readonly PlannedStep[] {
  if (step.piece === undefined) return [step];
  return plan.steps
    .filter((other) => other.component === step.component && other.step === step.step && other.batch === step.batch)
    .sort((a, b) => a.start - b.start);
}

/** The way in which a planned step is done, as its document has it; null for added work. */
function methodOf(plan: Plan, step: PlannedStep): Pick<Step, 'segments' | 'needs'> | null {
  const document = stepDocument(plan, step);
  return step.alternative === 0 ? document : (document?.alternatives?.[step.alternative - 1] ?? null);
}

/** The last minute at which the given hands-off segment of a step may end; null where the documents set none. */
export function segmentLimit(plan: Plan, step: PlannedStep, segment: PlannedSegment): number | null {
  if (step.kind === 'packing' && step.step === 'cool') {
    const cooling = plan.session.packing?.cooling;
    const longest = cooling?.cools === undefined ? cooling?.longest : undefined;
    return longest === undefined ? null : segment.start + Math.floor(durationMinutes(longest));
  }
  const planned = step.segments.filter((candidate) => candidate.hands === 'off');
  const method = methodOf(plan, step);
  const written = (method?.segments ?? []).filter((candidate) => candidate.hands === 'off');
  const own = written[planned.indexOf(segment)];
  // The minutes of a boil hang on burner and amount, those of a cooling on the food, those of a cold load on the oven: the
  // document does not say them.
  if (own === undefined || own.boilMl !== undefined || own.cools !== undefined) return null;
  if (method?.needs.some((need) => need.use === 'oven' && need.load !== undefined) === true) return null;
  const longest = own.longest ?? own.shortest;
  return longest === undefined ? null : segment.start + Math.floor(durationMinutes(longest));
}

const batchWords = (step: PlannedStep): string => (step.batch > 1 ? `, batch ${step.batch}` : '');

/** Labels of a step, the fullest first. `tail` goes after the full name only: `24 min at 190–200°`. */
export function stepLabels(plan: Plan, step: PlannedStep, tails: readonly string[] = []): readonly string[] {
  const names = shorterNames(stepName(plan, step));
  const full = `${names[0]}${batchWords(step)}`;
  const bare = names[1] ?? names[0];
  return [
    ...tails.map((tail) => `${full} · ${tail}`),
    full,
    ...tails.slice(-1).map((tail) => `${bare} · ${tail}`),
    ...names,
  ];
}

/** `Roast the thighs (Paprika chicken thighs), 10:25–10:49, 24 min.` with who and where after it. */
export function stepSentence(
  plan: Plan,
  step: PlannedStep,
  owner: Owner,
  start: number,
  end: number,
  rest: string,
): string {
  const people = [...new Set(step.segments.flatMap((segment) => segment.person ?? []))];
  const who = people.map((id) => personName(plan, id)).join(' and ');
  const name = stepName(plan, step);
  const whose = owner.kind === 'component' ? ` (${owner.name}${batchWords(step)})` : '';
  const parts = [`${name}${whose}`, clockSpan(plan.start, start, end), minutesWords(end - start), who, rest];
  return parts.filter((part) => part !== '').join(', ');
}
