/** What to do, by the usual caution, where going on would do harm: what food from a plan that breaks a rule of safety may do. */
import type { SafetyRules } from '../kitchen/safety-rules.ts';
import { handWash, hotHolding } from './limits.ts';

/**
 * What food may do to who eats it: raw food or an allergen comes to it, it is not washed off, it is not cooked through, a toxin is left in
 * it, it is kept too cool. Being late is none: limits of time are told of without.
 */
export type Harm = 'raw-food' | 'allergen' | 'unwashed' | 'undercooked' | 'toxin' | 'too-cool';

const washWords = (rules: SafetyRules): string => {
  const wash = handWash(rules);
  return `wash hands with soap${wash === null ? '' : ` for ${wash.value} s or longer`}, board and knife in hot soapy water`;
};

/** Seconds of washing and °C of holding are those of the rules in force; to throw away what may harm is common practice. */
const WORDS: { readonly [harm in Harm]: (rules: SafetyRules) => string } = {
  'raw-food': (rules) =>
    `After raw food, ${washWords(rules)}, before anything that is eaten as it is, however late that gets. What raw food has come to is cooked through or thrown away.`,
  allergen: (rules) =>
    `Before food that must stay free of an allergen, ${washWords(rules)}. What may have met the allergen is not for who avoids it: give them something else, and tell them.`,
  unwashed: (rules) => `Before other food is touched, ${washWords(rules)}, and the pan, tray or bowl too.`,
  undercooked: () =>
    'Cook on until a probe thermometer reads the core temperature that the recipe names, for as long as it says. What cannot be cooked on is thrown away.',
  toxin: () =>
    'Boil on, at a full boil, for as long as the safety rules ask. What was not soaked in water that was poured away, or cannot be boiled on, is thrown away.',
  'too-cool': (rules) => {
    const least = hotHolding(rules);
    return `Heat it again${least === null ? '' : ` to ${least.value} °C or hotter`} and keep it there, or cool it and put it into the fridge at once. Where nobody knows how long it was cooler, throw it away.`;
  },
};

/**
 * @param harms of the violations of a plan, repeated or not
 * @param rules in force
 * @returns sentences, one a harm, then whose word comes first; empty where there is no harm
 */
export function harmCautions(harms: readonly Harm[], rules: SafetyRules): readonly string[] {
  const words = [...new Set(harms)].map((harm) => WORDS[harm](rules));
  return words.length === 0
    ? []
    : [...words, 'Local food-safety rules come first. When in doubt, throw it out: no plan is worth an illness.'];
}
