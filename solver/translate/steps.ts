/**
 * Steps: each hands-on part is a task that takes a person; each hands-off part is a shortest and a longest gap between the
 * work before and after it; places are spans tied to the parts that fill and clear them.
 */
import type { Literal, Point, Use } from '../engine/problem.ts';
import type { Dish, OffPart, Part, StepInstance, Way } from '../kitchen/expand.ts';
import { onceFor } from '../kitchen/once.ts';
import type { Need } from '../kitchen/step.ts';
import { addWork, CLEAN, type HandSoil } from './hands.ts';
import type { NeedLegend, Operation, PlaceOption, Shape, StepLegend, Translation } from './legend.ts';
import { stretchLength, type Length } from './lengths.ts';
import { needModes, optionsOf } from './needs.ts';
import { end, picks, start } from './problem-builder.ts';
import { soilOf } from './soil.ts';

interface Frame {
  readonly t: Translation;
  readonly instance: StepInstance;
  readonly key: string;
  readonly when: readonly Literal[];
  readonly soil: HandSoil;
}

/** Two ways are of one shape when their hands-on work and checks are alike; only hands-off lengths and places may differ. */
const shapeKey = onceFor((way: Way): string =>
  JSON.stringify(way.parts.map((part) => (part.hands === 'on' ? part : { hands: 'off', checks: part.checks }))),
);

const needKey = onceFor((need: Need): string => JSON.stringify(need));

/** Adds a step of one batch under one split. */
export function addStep(
  t: Translation,
  dish: Dish,
  instance: StepInstance,
  split: { readonly choice: string | null; readonly option: number },
): StepLegend | null {
  const key = split.choice !== null && instance.batched ? `${instance.id}@${split.option + 1}` : instance.id;
  const when = instance.batched ? picks(split.choice, split.option) : [];
  const possible = instance.ways.map((way) => way.needs.map((need) => optionsOf(t, need)));
  const wayOptions = instance.ways
    .map((_, number) => number)
    .filter((number) => possible[number]!.every((options) => options.length > 0));
  if (wayOptions.length === 0) {
    const need = instance.ways[0]!.needs[possible[0]!.findIndex((options) => options.length === 0)]!;
    t.faults.push({
      document: `component ${instance.component.id}`,
      path: `steps[${instance.component.steps.indexOf(instance.step)}].needs`,
      found: `nothing in kitchen ${t.kitchen.id} that meets ${describeNeed(need)}`,
      wanted: `a thing for the step "${instance.step.name}" (${instance.portions} portions)`,
      mend: 'add the thing to the kitchen, make smaller batches, or write an alternative way',
    });
    return null;
  }
  const frame: Frame = { t, instance, key, when, soil: soilOf(t, instance) };
  const wayChoice = t.builder.choice(
    `way:${key}`,
    wayOptions.map((number) => instance.ways[number]!.name),
  );
  const literal = (ways: readonly number[]): readonly Literal[] =>
    ways.length === wayOptions.length ? [] : picks(wayChoice, ...ways.map((way) => wayOptions.indexOf(way)));

  if (instance.pieces !== null) return addPieces(frame, dish, wayOptions, wayChoice, literal);

  const groups = new Map<string, number[]>();
  for (const number of wayOptions) {
    const shape = shapeKey(instance.ways[number]!);
    groups.set(shape, [...(groups.get(shape) ?? []), number]);
  }
  const shapeWays = [...groups.values()];
  const first = instance.ways[wayOptions[0]!]!;
  const needsBody = shapeWays.length > 1 || first.parts[0]!.hands === 'off' || first.parts.at(-1)!.hands === 'off';
  const single =
    shapeWays.length === 1 && first.parts.length === 1 && first.parts[0]!.hands === 'on' && wayOptions.length === 1;
  const inline = single ? first.needs.filter((need) => mayBeInline(need) && optionsOf(t, need).length === 1) : [];
  if (needsBody)
    addBody(
      frame,
      wayOptions.map((number) => instance.ways[number]!),
    );

  const shapes = shapeWays.map((ways, index): Shape => {
    const prefix = single ? key : shapeWays.length === 1 ? `${key}:` : `${key}:${index + 1}:`;
    const inlineUses = inline.flatMap(
      (need) => needModes(t, instance, need, optionsOf(t, need), frame.soil, ANY_LENGTH)[0]!.uses,
    );
    return addShape(frame, ways, prefix, needsBody ? key : null, single, literal, inlineUses);
  });
  const boundaries = shapes[0]!.boundaries;
  const legend: StepLegend = {
    instance,
    dish,
    key,
    when,
    wayChoice,
    wayOptions,
    shapes,
    pieces: [],
    needs: [],
    start: needsBody ? start(key) : (boundaries[0] as StepLegend['start']),
    end: needsBody ? end(key) : (boundaries.at(-1) as StepLegend['end']),
  };
  addNeeds(frame, legend, literal, inline);
  return legend;
}

/** The length of an operation that carries a place itself is the operation's own. */
const ANY_LENGTH: Length = { shortest: 0, longest: 0 };

const mayBeInline = (need: Need): boolean => need.use !== 'oven' && need.use !== 'pool' && need.use !== 'burner';

function describeNeed(need: Need): string {
  switch (need.use) {
    case 'oven':
      return need.afterheat === true
        ? 'an oven'
        : `an oven with ${need.function} heat and a dial position from ${need.leastC} to ${need.mostC} °C`;
    case 'pan':
      return `a pan of ${need.leastMl} mL${need.lid === true ? ' with a lid' : ''}`;
    case 'bowl':
      return `a bowl of ${need.leastMl} mL`;
    case 'kettle':
      return `a kettle for ${need.ml} mL`;
    case 'tool':
      return `a ${need.kind}`;
    case 'appliance':
      return `a ${need.does}`;
    case 'pool':
      return need.how === 'boil'
        ? `a pool with an insert of ${need.ml ?? 0} mL`
        : need.how === 'steam'
          ? `a pool with ${need.tiers ?? 1} steamer tiers`
          : 'a pool to draw from';
    default:
      return `a ${need.use}`;
  }
}

/** The step as a whole, where no one task begins and ends it. */
function addBody(frame: Frame, ways: readonly Way[]): void {
  const { t, key, when } = frame;
  const length = stretchLength(t.kitchen, ways, 0, Infinity, t.builder.horizon);
  t.builder.task(key, [{ ...length, uses: [] }], null, when);
}

function addShape(
  frame: Frame,
  ways: readonly number[],
  prefix: string,
  body: string | null,
  single: boolean,
  literal: (ways: readonly number[]) => readonly Literal[],
  inlineUses: readonly Use[],
): Shape {
  const { t, instance, soil } = frame;
  const { builder } = t;
  const parts = instance.ways[ways[0]!]!.parts;
  const when = [...frame.when, ...literal(ways)];
  const group = instance.component.id;
  const operations: Operation[][] = [];
  const boundaries: (Point | null)[] = Array.from({ length: parts.length + 1 }, () => null);
  if (body !== null) {
    boundaries[0] = start(body);
    boundaries[parts.length] = end(body);
  }
  const mark = (index: number, point: Point): void => {
    const known = boundaries[index];
    if (known === null || known === undefined) boundaries[index] = point;
    else builder.exactly(known, point, 0);
  };
  parts.forEach((part, index) => {
    if (part.hands === 'off') {
      operations.push([]);
      // Two hands-off parts in a row meet at a moment that no hand marks.
      if (parts[index + 1]?.hands === 'off')
        mark(
          index + 1,
          start(builder.task(`${prefix}${index + 1}`, [{ shortest: 0, longest: 0, uses: [] }], null, when)),
        );
      return;
    }
    const operation = addWork(t, {
      task: single ? prefix : `${prefix}${index}`,
      name: part.name,
      shortest: part.minutes,
      longest: part.minutes,
      who: part.who,
      probe: part.probe,
      when,
      group,
      soil: part.touchesFood ? soil : CLEAN,
      uses: inlineUses,
    });
    operations.push([operation]);
    mark(index, start(operation.task));
    mark(index + 1, end(operation.task));
  });
  const sure = boundaries as Point[];
  parts.forEach((part, index) => {
    if (part.hands === 'on') return;
    addOffLengths(frame, ways, index, sure, literal);
    let before: Operation | null = null;
    part.checks.forEach((check, number) => {
      const operation = addWork(t, {
        task: `${prefix}${index}.${number + 1}`,
        name: check.name,
        shortest: check.minutes,
        longest: check.minutes,
        who: check.who,
        probe: check.probe,
        check: true,
        when,
        group,
        soil: check.touchesFood ? soil : CLEAN,
      });
      builder.atLeast(sure[index]!, start(operation.task), check.earliest);
      builder.atMost(sure[index]!, start(operation.task), check.latest);
      builder.atLeast(end(operation.task), sure[index + 1]!, 0);
      if (before !== null) builder.atLeast(end(before.task), start(operation.task), 0);
      before = operation;
      operations[index]!.push(operation);
    });
  });
  return { ways, parts, operations, boundaries: sure };
}

/** Shortest and longest length of a hands-off part, way by way where they differ. Parts that wait for a boil are bound in `boiling.ts`, those of a cold load in `recovery.ts`. */
function addOffLengths(
  frame: Frame,
  ways: readonly number[],
  index: number,
  boundaries: readonly Point[],
  literal: (ways: readonly number[]) => readonly Literal[],
): void {
  const { builder } = frame.t;
  const byLength = new Map<string, { part: OffPart; ways: number[] }>();
  for (const way of ways) {
    const part = frame.instance.ways[way]!.parts[index] as OffPart;
    if (part.boilMl > 0 || part.recovers) continue;
    const key = `${part.shortest} ${part.longest}`;
    const entry = byLength.get(key);
    if (entry === undefined) byLength.set(key, { part, ways: [way] });
    else entry.ways.push(way);
  }
  for (const { part, ways: same } of byLength.values()) {
    const when = same.length === ways.length ? [] : literal(same);
    builder.atLeast(boundaries[index]!, boundaries[index + 1]!, part.shortest, when);
    builder.atMost(boundaries[index]!, boundaries[index + 1]!, part.longest, when);
  }
}

/** Interruptible work: a few pieces of a least length, in order, with a pause between them, that sum to the whole. */
function addPieces(
  frame: Frame,
  dish: Dish,
  wayOptions: readonly number[],
  wayChoice: string | null,
  literal: (ways: readonly number[]) => readonly Literal[],
): StepLegend {
  const { t, instance, key, when, soil } = frame;
  const { builder } = t;
  const part = instance.ways[0]!.parts[0] as Extract<Part, { hands: 'on' }>;
  const { most, least } = instance.pieces!;
  const counts = builder.choice(
    `pieces:${key}`,
    Array.from({ length: most }, (_, index) => `${index + 1}`),
  );
  builder.task(key, [{ shortest: part.minutes, longest: builder.horizon, uses: [] }], null, when);
  const pieces = Array.from({ length: most }, (_, index) => {
    const asMany = Array.from({ length: most - index }, (_, more) => index + more);
    return addWork(t, {
      task: `${key}~${index + 1}`,
      name: part.name,
      shortest: least,
      longest: part.minutes,
      who: part.who,
      probe: part.probe,
      when: index === 0 ? when : [...when, ...picks(counts, ...asMany)],
      group: instance.component.id,
      soil,
    });
  });
  builder.exactly(start(key), start(pieces[0]!.task), 0);
  pieces.forEach((piece, index) => {
    builder.exactly(end(piece.task), end(key), 0, picks(counts, index));
    if (index > 0) builder.atLeast(end(pieces[index - 1]!.task), start(piece.task), 1);
  });
  builder.totals.push({
    tasks: pieces.map((piece) => piece.task),
    total: part.minutes,
    ...(when.length === 0 ? {} : { if: when }),
  });
  const legend: StepLegend = {
    instance,
    dish,
    key,
    when,
    wayChoice,
    wayOptions,
    shapes: [{ ways: wayOptions, parts: [part], operations: [[]], boundaries: [start(key), end(key)] }],
    pieces,
    needs: [],
    start: start(key),
    end: end(key),
  };
  addNeeds(frame, legend, literal, []);
  return legend;
}

/** Spans that hold the places of a step. A need that several ways share is one span. */
function addNeeds(
  frame: Frame,
  legend: StepLegend,
  literal: (ways: readonly number[]) => readonly Literal[],
  inline: readonly Need[],
): void {
  const { t, instance, key } = frame;
  const { builder } = t;
  let number = 0;
  const seen = new Map<string, { need: Need; shape: Shape; ways: number[] }>();
  for (const shape of legend.shapes) {
    for (const way of shape.ways) {
      instance.ways[way]!.needs.forEach((need, index) => {
        const alike = instance.ways[way]!.needs.slice(0, index).filter(
          (other) => needKey(other) === needKey(need),
        ).length;
        const id = `${needKey(need)} ${alike} ${need.during === undefined ? '' : legend.shapes.indexOf(shape)}`;
        const entry = seen.get(id);
        if (entry === undefined) seen.set(id, { need, shape, ways: [way] });
        else entry.ways.push(way);
      });
    }
  }
  for (const { need, shape, ways } of seen.values()) {
    const options = optionsOf(t, need);
    if (inline.includes(need)) {
      legend.needs.push({ need, ways, task: key, choice: null, options });
      continue;
    }
    number += 1;
    const task = `${key}#${number}`;
    const { from, until, length } = spanOf(t, need, ways, legend, shape);
    const choice = builder.choice(`place:${task}`, options.map(labelOf));
    const modes = needModes(t, instance, need, options, frame.soil, length);
    builder.task(task, modes, choice, [...frame.when, ...literal(ways)]);
    builder.exactly(from, start(task), 0);
    builder.exactly(until, end(task), 0);
    const entry: NeedLegend = { need, ways, task, choice, options };
    legend.needs.push(entry);
  }
}

/** Label of an option in the problem: what and where. */
export const labelOf = (option: PlaceOption): string =>
  `${option.resource}${option.place.boil === undefined ? '' : `.${option.place.boil}`}`;

/** Points between which a need holds, and how long that can be; water is drawn in the first of its segments. */
function spanOf(
  t: Translation,
  need: Need,
  ways: readonly number[],
  legend: StepLegend,
  shape: Shape,
): { readonly from: Point; readonly until: Point; readonly length: Length } {
  const last = shape.parts.length - 1;
  const first = Math.min(need.during?.from ?? 0, last);
  const to = need.use === 'pool' && need.how === 'draw' ? first : Math.min(need.during?.to ?? last, last);
  const whole = need.during === undefined && !(need.use === 'pool' && need.how === 'draw');
  const length = stretchLength(
    t.kitchen,
    ways.map((way) => legend.instance.ways[way]!),
    first,
    whole ? Infinity : to,
    t.builder.horizon,
  );
  return {
    from: first === 0 ? legend.start : shape.boundaries[first]!,
    until: to === last ? legend.end : shape.boundaries[to + 1]!,
    // Interrupted work lasts longer than its minutes.
    length: legend.pieces.length > 0 ? { ...length, longest: t.builder.horizon } : length,
  };
}
