/** Foods with a toxin that soaking and boiling destroy, and methods that leave it in. */
import type { Component, Ingredient } from '../kitchen/component.ts';
import type { InputFault } from '../kitchen/fault.ts';
import type { RuleOf, SafetyRules } from '../kitchen/safety-rules.ts';
import type { Need, Segment, Step } from '../kitchen/step.ts';
import { durationMinutes } from '../kitchen/values.ts';
import { stepsBefore } from './last-heat.ts';
import { toxinRule, toxins } from './limits.ts';
import { askedBy } from './rule-words.ts';

/** Water boils only over full heat, or in a pool that does. */
const boils = (need: Need): boolean =>
  (need.use === 'burner' && need.heat === 'full') || (need.use === 'pool' && need.how === 'boil');

/** The longest single wait of a way, minutes; what brings the water to the boil comes on top. */
const longestWait = (segments: readonly Segment[]): number =>
  Math.max(
    0,
    ...segments.map((segment) => (segment.hands === 'off' ? durationMinutes(segment.shortest ?? 'PT0M') : 0)),
  );

/** Faults of the ingredients that hold a toxin; empty: every one is soaked, drained and boiled as the rules ask. */
export function toxinFaults(component: Component, rules: SafetyRules): readonly InputFault[] {
  return component.ingredients.flatMap((ingredient, index): readonly InputFault[] => {
    if (ingredient.toxin === undefined) return [];
    const fault = (path: string, found: string, wanted: string, mend: string): InputFault => ({
      document: `component ${component.id}`,
      path: `ingredients[${index}].toxin${path}`,
      found,
      wanted,
      mend,
    });
    const rule = toxinRule(rules, ingredient.toxin.kind);
    if (rule === null)
      return [
        fault(
          '.kind',
          `"${ingredient.toxin.kind}", of which no rule tells`,
          `one of ${toxins(rules).join(', ')}`,
          'correct the name, or add a rule to a rule set of your own',
        ),
      ];
    return [...soakFaults(component, ingredient, rule, fault), ...boilFaults(component, ingredient, rule, fault)];
  });
}

type Say = (path: string, found: string, wanted: string, mend: string) => InputFault;

/** Least minutes that a step or a step of the day before soaks; null: there is none of that name. */
function soakMinutes(component: Component, id: string | undefined): number | null {
  const ahead = component.ahead?.find((each) => each.id === id);
  if (ahead !== undefined) return durationMinutes(ahead.shortest);
  const step = component.steps.find((each) => each.id === id);
  return step === undefined
    ? null
    : Math.min(...[step, ...(step.alternatives ?? [])].map(({ segments }) => longestWait(segments)));
}

function soakFaults(
  component: Component,
  { name, toxin }: Ingredient,
  rule: RuleOf<'toxin'>,
  say: Say,
): readonly InputFault[] {
  if (rule.soakMinutes === 0) return [];
  const wanted = `soaked for ${rule.soakMinutes} min and the water poured away, as ${askedBy(rule)} asks`;
  const minutes = soakMinutes(component, toxin!.soak);
  if (minutes === null)
    return [say('.soak', `no step that soaks the ${name}`, wanted, 'add the soak of the day before, and name it here')];
  if (minutes < rule.soakMinutes)
    return [
      say('.soak', `the ${name} may soak for only ${minutes} min`, wanted, `give it at least ${rule.soakMinutes} min`),
    ];
  const drain = component.steps.find(({ id }) => id === toxin!.drain);
  const ahead = component.ahead?.find(({ id }) => id === toxin!.soak);
  const soakedBy = (step: Step): boolean =>
    ahead === undefined
      ? stepsBefore(component, step.id).has(toxin!.soak!)
      : ahead.until === step.id || stepsBefore(component, step.id).has(ahead.until);
  if (drain === undefined || !soakedBy(drain))
    return [
      say(
        '.drain',
        `no step after the soak that pours its water away`,
        wanted,
        'name the step that drains or rinses it',
      ),
    ];
  return [];
}

function boilFaults(
  component: Component,
  { name, toxin }: Ingredient,
  rule: RuleOf<'toxin'>,
  say: Say,
): readonly InputFault[] {
  const wanted = `boiled in fresh water for ${rule.boilMinutes} min, as ${askedBy(rule)} asks`;
  const boil = component.steps.find(({ id }) => id === toxin!.boil);
  if (boil === undefined)
    return [say('.boil', `no step that boils the ${name}`, wanted, 'add the boil, and name it here')];
  const before = stepsBefore(component, boil.id);
  const faults: InputFault[] = [];
  if (toxin!.drain !== undefined && rule.soakMinutes > 0 && !before.has(toxin!.drain))
    faults.push(
      say(
        '.boil',
        `${boil.name} need not come after the soaking water is poured away`,
        wanted,
        `let it follow ${toxin!.drain}`,
      ),
    );
  for (const way of [boil, ...(boil.alternatives ?? [])]) {
    if (!way.needs.some(boils))
      faults.push(
        say(
          '.boil',
          `${way.name} does not keep water at the boil`,
          wanted,
          'boil it on a burner at full heat, never in a slow cooker alone',
        ),
      );
    else if (longestWait(way.segments) < rule.boilMinutes)
      faults.push(
        say(
          '.boil',
          `${way.name} boils for only ${longestWait(way.segments)} min`,
          wanted,
          `give it at least ${rule.boilMinutes} min`,
        ),
      );
  }
  return faults;
}
