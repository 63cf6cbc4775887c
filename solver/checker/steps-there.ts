/**
 * Rule 1: every step of every batch is there once, or in a few pieces that sum to it, as long as it must be, inside the session.
 */
import type { CheckPart, OffPart } from '../kitchen/expand.ts';
import type { Lived, PlannedSegment } from '../kitchen/plan.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { boilMinutes } from './boiling.ts';
import { recoveryMinutes } from './recovery.ts';
import { called, type PieceReading, type Reading, type StepReading } from './reading.ts';
import type { Harm } from '../safety/harm-cautions.ts';
import type { Violation } from './violation.ts';

const rule = 1 as const;
type Tell = (message: string, minute?: number, harm?: Harm) => void;

function tellTo(violations: Violation[], steps: readonly string[]): Tell {
  return (message, minute, harm) =>
    violations.push({
      rule,
      message,
      steps,
      ...(minute === undefined ? {} : { minute }),
      ...(harm === undefined ? {} : { harm }),
    });
}

/** Looks and turns on the way: each once, in its time, inside its hands-off segment. */
function checkChecks(piece: PieceReading, part: OffPart, span: { start: number; end: number }, tell: Tell): void {
  const name = called(piece.planned);
  const inside = piece.planned.segments
    .filter((segment) => segment.check === true && segment.start >= span.start && segment.start < span.end)
    .sort((a, b) => a.start - b.start);
  const left = [...inside];
  const take = (wanted: CheckPart): PlannedSegment | undefined => {
    const fits = (segment: PlannedSegment): boolean => {
      const at = segment.start - span.start;
      return at >= wanted.earliest && at <= wanted.latest && segment.end - segment.start === wanted.minutes;
    };
    const index = left.findIndex((segment) => fits(segment) && (segment.probe === true) === wanted.probe);
    return index < 0 ? undefined : left.splice(index, 1)[0];
  };
  for (const wanted of [...part.checks].sort((a, b) => a.latest - b.latest)) {
    const found = take(wanted);
    if (found === undefined) {
      tell(
        `${name} wants “${wanted.name}” (${wanted.minutes} min) ${wanted.earliest} to ${wanted.latest} min after its wait begins, and it is not planned then.`,
        span.start,
      );
    } else if (found.end > span.end) {
      tell(`“${wanted.name}” of ${name} runs past the end of what it looks after.`, found.start);
    }
  }
  for (const extra of left) tell(`${name} has a look planned that the step does not ask for.`, extra.start);
}

function checkSegments(piece: PieceReading, reading: Reading, tell: Tell): void {
  const { planned, way, main, spans } = piece;
  const name = called(planned);
  if (way === null) return tell(`${name} is planned in a way that the step does not have.`, planned.start);
  if (spans === null) return tell(`${name} does not have the segments of its step, in their order.`, planned.start);
  main.forEach((segment, index) => {
    const from = index === 0 ? planned.start : main[index - 1]!.end;
    if (segment.start !== from) tell(`The segments of ${name} do not follow one another.`, segment.start);
  });
  if (main.at(-1)!.end !== planned.end) tell(`${name} does not end with its last segment.`, planned.end);
  way.parts.forEach((part, index) => {
    const { start, end } = spans[index]!;
    const minutes = end - start;
    const raw = piece.instance.step.cooksThrough === undefined ? undefined : 'undercooked';
    if (part.hands === 'on') {
      if (piece.planned.piece === undefined && minutes !== part.minutes)
        tell(`${name} takes ${part.minutes} min of hands and is planned with ${minutes}.`, start);
      return;
    }
    const boil = boilMinutes(piece, index, part, reading);
    const recovery = recoveryMinutes(piece, index, part, reading);
    const [shortest, longest] = [part.shortest + boil + recovery, part.longest + boil + recovery];
    if (minutes < shortest)
      tell(`${name} must go for at least ${shortest} min and is planned for ${minutes}.`, start, raw);
    if (minutes > longest) tell(`${name} may go for at most ${longest} min and is planned for ${minutes}.`, start);
    checkChecks(piece, part, { start, end }, tell);
  });
  for (const segment of planned.segments) {
    const inWait = way.parts.some(
      (part, index) =>
        part.hands === 'off' && segment.start >= spans[index]!.start && segment.start < spans[index]!.end,
    );
    if (segment.check === true && !inWait) tell(`${name} has a look planned outside its waiting.`, segment.start);
  }
}

function checkPieces({ instance, pieces }: StepReading, lived: Lived | undefined, tell: Tell): void {
  const name = called(pieces[0]!.planned);
  const part = instance.ways[0]!.parts[0]!;
  const allowed = instance.pieces;
  if (allowed === null || part.hands === 'off') return tell(`${name} may not be interrupted and is planned in pieces.`);
  if (pieces.length > allowed.most) tell(`${name} is in ${pieces.length} pieces, and ${allowed.most} are allowed.`);
  const told = lived?.steps.find(({ step }) => step === instance.id)?.pieces ?? [];
  let sum = 0;
  pieces.forEach(({ planned }, index) => {
    const minutes = planned.end - planned.start;
    sum += minutes;
    if (planned.piece !== index + 1) tell(`The pieces of ${name} are not numbered in order.`, planned.start);
    // A piece that had begun when the cooks told how long it takes is as long as they told, and no other is.
    const asTold = told[index] === minutes && planned.start <= lived!.now;
    if (minutes < allowed.least && !asTold)
      tell(`A piece of ${name} is ${minutes} min, and the least is ${allowed.least}.`, planned.start);
    if (planned.alternative !== pieces[0]!.planned.alternative)
      tell(`The pieces of ${name} are done in different ways.`);
    if (index > 0 && planned.start < pieces[index - 1]!.planned.end)
      tell(`Two pieces of ${name} are planned at once.`, planned.start);
  });
  if (sum !== part.minutes) tell(`The pieces of ${name} sum to ${sum} min, and it takes ${part.minutes}.`);
}

function checkStep(step: StepReading, reading: Reading): readonly Violation[] {
  const violations: Violation[] = [];
  const { instance, pieces } = step;
  const tell = tellTo(
    violations,
    pieces.map(({ planned }) => planned.id),
  );
  if (pieces.length === 0) {
    tell(`“${instance.step.name}” of ${instance.component.name} is not in the plan (${instance.id}).`);
    return violations;
  }
  const inPieces = pieces.some(({ planned }) => planned.piece !== undefined);
  if (inPieces) checkPieces(step, reading.plan.lived, tell);
  else if (pieces.length > 1) tell(`${called(pieces[0]!.planned)} is planned ${pieces.length} times.`);
  for (const piece of pieces) {
    const { planned } = piece;
    const told = tellTo(violations, [planned.id]);
    checkSegments(piece, reading, told);
    if (planned.component !== instance.component.id || planned.step !== instance.step.id)
      told(`${called(planned)} is filed under the wrong step.`);
    if (planned.batch !== instance.batch) told(`${called(planned)} is filed under the wrong batch.`);
    if (planned.portions !== undefined && planned.portions !== instance.portions)
      told(`${called(planned)} is for ${instance.portions} portions and says ${planned.portions}.`);
    if (planned.inFinish !== instance.inFinish)
      told(
        `${called(planned)} is ${instance.inFinish ? 'not ' : ''}counted in the finish, and should${instance.inFinish ? '' : ' not'} be.`,
      );
  }
  return violations;
}

function checkInside(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const longest = minutesDown(durationMinutes(plan.session.longest));
  return plan.steps
    .filter((planned) => planned.start < 0 || planned.end > longest || planned.end < planned.start)
    .map((planned) => ({
      rule,
      message: `${called(planned)} at ${clock.span(planned.start, planned.end)} is not inside the session, ${clock.span(0, longest)}.`,
      steps: [planned.id],
      minute: planned.start,
    }));
}

/** Work on other days is kept in the plan, once each. */
function checkDays(reading: Reading): readonly Violation[] {
  const { plan, dishes } = reading;
  return dishes.flatMap(({ component }) => {
    const absent = (kind: 'ahead' | 'later'): readonly Violation[] =>
      (component[kind] ?? [])
        .filter(({ id }) => plan[kind].filter((day) => day.component === component.id && day.step === id).length !== 1)
        .map(({ name }) => ({
          rule,
          message: `“${name}” of ${component.name}, work of ${kind === 'ahead' ? 'an earlier' : 'a later'} day, is not in the plan once.`,
          steps: [],
        }));
    return [...absent('ahead'), ...absent('later')];
  });
}

export function checkStepsThere(reading: Reading): readonly Violation[] {
  const { plan } = reading;
  const seen = new Set<string>();
  const twice = plan.steps.filter(({ id }) => seen.has(id) || !seen.add(id));
  return [
    ...reading.faults.map((fault) => ({
      rule: rule,
      message: `${fault.document}, ${fault.path}: found ${fault.found}, wanted ${fault.wanted}.`,
      steps: [],
    })),
    ...twice.map((planned) => ({
      rule: rule,
      message: `${called(planned)} is in the plan twice.`,
      steps: [planned.id],
    })),
    ...reading.strangers.map((planned) => ({
      rule: rule,
      message: `${called(planned)} is in the plan, and no step of the session asks for it.`,
      steps: [planned.id],
    })),
    ...reading.steps.flatMap((step) => checkStep(step, reading)),
    ...checkInside(reading),
    ...checkDays(reading),
  ];
}
