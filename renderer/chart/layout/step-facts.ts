/** All there is to say about one planned step, for its card and for print. */
import { allergensOfIngredient } from '../../../solver/food/allergens.ts';
import type { Plan, PlannedStep } from '../../../solver/kitchen/plan.ts';
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { fridgeDeadline } from '../../../solver/safety/limits.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { componentOwners, ownerOf, type Owner } from './identity.ts';
import { personName, placeWords, windowWords } from './kitchen-names.ts';
import type { Relation, RelationKind } from './relations.ts';
import { segmentLimit, stepDocument, stepName } from './step-words.ts';
import { clockAt, clockSpan, minutesWords } from './wall-clock.ts';

export interface SegmentFact {
  readonly clock: string;
  readonly words: string;
  readonly who: string | null;
  readonly hands: 'on' | 'off';
}

export interface TieFact {
  readonly stepId: string;
  readonly kind: RelationKind;
  readonly clock: string;
  readonly name: string;
  readonly owner: Owner;
  readonly words: string;
}

export interface StepFacts {
  readonly stepId: string;
  readonly owner: Owner;
  readonly name: string;
  readonly clock: string;
  readonly length: string;
  /** The way of doing it, where there are several; the batch; the piece. */
  readonly notes: readonly string[];
  readonly segments: readonly SegmentFact[];
  readonly places: readonly string[];
  readonly cautions: readonly string[];
  readonly waitsFor: readonly TieFact[];
  readonly followedBy: readonly TieFact[];
  /** How much later it may start, and why no more; null for a plan that does not say. */
  readonly slack: string | null;
}

function slackWords(plan: Plan, step: PlannedStep): string | null {
  const { slack } = step;
  if (slack === undefined) return null;
  if (slack > 0) return `May start up to ${minutesWords(slack)} later, by ${clockAt(plan.start, step.start + slack)}.`;
  const link = plan.bindingChain?.find((each) => each.step === step.id);
  return link === undefined
    ? 'May not start later.'
    : `May not start later, for it is in the binding chain: ${link.because}.`;
}

function segments(plan: Plan, step: PlannedStep): readonly SegmentFact[] {
  const inOrder = [...step.segments].sort((a, b) => a.start - b.start || b.end - a.end);
  return inOrder.map((segment) => {
    const limit = segment.hands === 'off' ? segmentLimit(plan, step, segment) : null;
    const rest = limit !== null && limit > segment.end ? `, may wait until ${clockAt(plan.start, limit)}` : '';
    const plain = segment.hands === 'on' ? (segment.probe === true ? 'read the core' : 'hands-on') : 'goes by itself';
    return {
      clock: clockSpan(plan.start, segment.start, segment.end),
      words: `${segment.name ?? plain}, ${minutesWords(segment.end - segment.start)}${rest}`,
      who: segment.person === undefined ? null : personName(plan, segment.person),
      hands: segment.hands,
    };
  });
}

function cautions(plan: Plan, step: PlannedStep): readonly string[] {
  const component = plan.components.find((candidate) => candidate.id === step.component);
  const document = stepDocument(plan, step);
  if (component === undefined || document === null) return [];
  const touched = component.ingredients.filter((each) => document.touches?.includes(each.id) ?? true);
  const allergens = [...new Set(touched.flatMap((each) => [...allergensOfIngredient(each)]))];
  const raw = document.cooked === true ? [] : [...new Set(touched.flatMap((each) => each.raw ?? []))];
  const { cooksThrough, hotHold } = document;
  const { fridge } = component;
  const off = fridge?.from === document.id ? fridge : undefined;
  const asked = fridgeDeadline(plan.rules ?? STRICTEST_BUILT_IN, component.storage, plan.kitchen.roomC)?.value;
  const within = off === undefined ? 0 : Math.floor(Math.min(durationMinutes(off.within), asked ?? Infinity));
  const rack = step.places.find((place) => place.kind === 'rack');
  return [
    ...(cooksThrough === undefined
      ? []
      : [
          `Core ${cooksThrough.coreC} °C for ${cooksThrough.holdSeconds} s: a probe thermometer decides, not the minutes.`,
        ]),
    ...(hotHold === undefined
      ? []
      : [`Kept at ${hotHold.leastC} °C or hotter, for ${minutesWords(durationMinutes(hotHold.longest))} at most.`]),
    ...(rack?.afterheat === true
      ? [`The oven is off and falls through ${windowWords(rack).replace('°', ' °C')}: no second filling.`]
      : []),
    ...(off === undefined
      ? []
      : [
          `In the fridge by ${clockAt(plan.start, step.end + within)}, ${minutesWords(within)} after it leaves the heat.`,
        ]),
    ...(raw.length === 0 ? [] : [`Raw ${raw.join(' and ')}: board, knife and hands are washed before anything else.`]),
    ...(allergens.length === 0 ? [] : [`Contains ${allergens.join(', ')}.`]),
    ...(document.note === undefined ? [] : [document.note]),
  ];
}

/** @param relations of the plan, from `relationsOf` */
export function stepFacts(plan: Plan, stepId: string, relations: readonly Relation[]): StepFacts | null {
  const step = plan.steps.find((candidate) => candidate.id === stepId);
  if (step === undefined) return null;
  const owners = componentOwners(plan);
  const document = stepDocument(plan, step);
  const tie = (relation: Relation, id: string): readonly TieFact[] => {
    const other = plan.steps.find((candidate) => candidate.id === id);
    if (other === undefined) return [];
    return [
      {
        stepId: id,
        kind: relation.kind,
        clock: clockSpan(plan.start, other.start, other.end),
        name: stepName(plan, other),
        owner: ownerOf(other, owners),
        words: relation.words,
      },
    ];
  };
  return {
    stepId: step.id,
    owner: ownerOf(step, owners),
    name: stepName(plan, step),
    clock: clockSpan(plan.start, step.start, step.end),
    length: minutesWords(step.end - step.start),
    notes: [
      ...(document !== null && (document.alternatives?.length ?? 0) > 0 && step.alternative > 0 ? [step.name] : []),
      ...(step.portions === undefined ? [] : [`${step.portions} portions`]),
      ...(step.batch > 1 ? [`batch ${step.batch}`] : []),
      ...(step.piece === undefined ? [] : [`piece ${step.piece}`]),
    ],
    segments: segments(plan, step),
    places: step.places.map((place) => placeWords(plan, place)),
    cautions: cautions(plan, step),
    waitsFor: relations.filter((each) => each.to === stepId).flatMap((each) => tie(each, each.from)),
    followedBy: relations.filter((each) => each.from === stepId).flatMap((each) => tie(each, each.to)),
    slack: slackWords(plan, step),
  };
}
