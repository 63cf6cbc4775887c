/** Steps that cook raw food through and cannot meet the rules in force. */
import type { Component } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import type { Step } from '../kitchen/step.ts';
import { saidCooked, servingSteps } from './last-heat.ts';
import { holdAsked } from './lethality.ts';
import { coreRule, leastOvenC, pairsInWords } from './limits.ts';
import { askedBy } from './rule-words.ts';

type Through = NonNullable<Step['cooksThrough']>;
type Say = (path: string, found: string, wanted: string, mend: string) => InputFault;

/** Faults of the steps that cook a component's raw food through; empty: the rules can be kept. */
export function cookingFaults(component: Component, rules: SafetyRules): readonly InputFault[] {
  return [...unreadFaults(component), ...throughFaults(component, rules)];
}

/** Raw food that is said to be cooked, though no step cooks it through. */
const unreadFaults = (component: Component): readonly InputFault[] =>
  saidCooked(component).map(({ index, name, raw }) => ({
    document: `component ${component.id}`,
    path: `ingredients[${index}].raw`,
    found: `raw ${raw} (${name}) that counts as cooked, and no step that cooks raw ${raw} through`,
    wanted: 'a step with "cooksThrough": its core temperature, its hold, and a probe reading',
    mend: `add "cooksThrough" to the step that cooks the ${name}, or take "cooked" out`,
  }));

function throughFaults(component: Component, rules: SafetyRules): readonly InputFault[] {
  return component.steps.flatMap((step, index) => {
    const through = step.cooksThrough;
    if (through === undefined) return [];
    const say: Say = (path, found, wanted, mend) => ({
      document: `component ${component.id}`,
      path: `steps[${index}]${path}`,
      found,
      wanted,
      mend,
    });
    return [
      ...coreFaults(step, through, rules, say),
      ...restFaults(component, step, through, rules, say),
      ...[step, ...(step.alternatives ?? [])].flatMap((way) => wayFaults(way, through, rules, say)),
    ];
  });
}

function coreFaults(step: Step, through: Through, rules: SafetyRules, say: Say): readonly InputFault[] {
  const rule = coreRule(rules, through);
  if (rule === null) return [];
  const asked = holdAsked(rule.pairs, through.coreC);
  if (through.holdSeconds >= asked) return [];
  const uncut = through.raw === 'meat' && through.cut === undefined;
  const mend = Number.isFinite(asked)
    ? `read ${through.coreC} °C for ${asked} s, or a hotter core for less`
    : `cook on to ${rule.pairs[0]!.celsius} °C and hold it there`;
  return [
    say(
      '.cooksThrough',
      `${step.name} takes raw ${through.raw} out at ${through.coreC} °C${through.holdSeconds === 0 ? ' with no hold' : ` after ${through.holdSeconds} s`}`,
      `${pairsInWords(rule.pairs)}, as ${askedBy(rule)} asks`,
      uncut ? `${mend}; meat in one piece says "cut": "whole"` : mend,
    ),
  ];
}

function restFaults(
  component: Component,
  step: Step,
  through: Through,
  rules: SafetyRules,
  say: Say,
): readonly InputFault[] {
  const rule = coreRule(rules, through);
  if (rule?.restSeconds === undefined || servingSteps(component, step.id).length > 0) return [];
  return [
    say(
      '',
      `${step.name} cooks ${through.raw} through, and no later step makes it ready to eat`,
      `a rest of ${Math.ceil(rule.restSeconds / 60)} min before it is eaten, as ${askedBy(rule)} asks`,
      'add a step after it that rests or serves it, with "readyToEat": true',
    ),
  ];
}

function wayFaults(
  way: Pick<Step, 'name' | 'segments' | 'needs'>,
  through: Through,
  rules: SafetyRules,
  say: Say,
): readonly InputFault[] {
  const lastOff = way.segments.map((segment) => segment.hands).lastIndexOf('off');
  const read = way.segments.some((segment, at) => at > lastOff && segment.hands === 'on' && segment.probe === true);
  const least = leastOvenC(rules, through);
  return [
    ...(read
      ? []
      : [
          say(
            '.segments',
            `${way.name} cooks raw ${through.raw} through with no probe reading at its end`,
            `a hands-on segment with "probe": true after the heat, to read ${through.coreC} °C`,
            'add a minute for the probe thermometer before the step ends',
          ),
        ]),
    ...way.needs.flatMap((need): readonly InputFault[] => {
      if (need.use !== 'oven') return [];
      if (need.afterheat === true)
        return [
          say(
            '.needs',
            `${way.name} cooks raw ${through.raw} through in afterheat`,
            'an oven that is switched on',
            'give the need a window with the heat on, and take "afterheat" out',
          ),
        ];
      if (least === null || need.mostC >= least.value) return [];
      return [
        say(
          '.needs',
          `${way.name} cooks raw ${through.raw} through in an oven at ${need.mostC} °C at most`,
          `an oven set at ${Math.ceil(least.value)} °C or more, as ${askedBy(least.rule)} asks`,
          `raise the window so that it reaches ${Math.ceil(least.value)} °C`,
        ),
      ];
    }),
  ];
}
