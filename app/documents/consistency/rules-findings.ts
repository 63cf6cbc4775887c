/** Whether a safety-rules document fits together: its ids, its pairs of temperature and hold, its spans. */
import type { CorePair, SafetyRule, SafetyRules } from '../../../solver/kitchen/safety-rules.ts';
import { pathText } from '../issue-faults.ts';
import { crossed, placed, repeatedIds, type Finding } from './finding.ts';

type Keys = readonly (string | number)[];

/** Findings of safety rules that their schema accepted; empty: they fit together. */
export function rulesFindings(rules: SafetyRules): readonly Finding[] {
  return [
    ...repeatedIds(placed(rules.rules, 'rules')),
    ...rules.rules.flatMap((rule, index) => ruleFindings(rule, ['rules', index])),
  ];
}

function ruleFindings(rule: SafetyRule, path: Keys): readonly Finding[] {
  switch (rule.kind) {
    case 'core':
    case 'reheating':
      return pairFindings(rule.pairs, [...path, 'pairs']);
    case 'storage':
      return [
        ...(rule.fridgeDays === undefined
          ? []
          : crossed(rule.fridgeDays.least, rule.fridgeDays.most, 'days', [...path, 'fridgeDays', 'least'])),
        ...(rule.freezerMonths === undefined
          ? []
          : crossed(rule.freezerMonths.least, rule.freezerMonths.most, 'months', [...path, 'freezerMonths', 'least'])),
      ];
    default:
      return [];
  }
}

/** Pairs go from cooler to hotter, and a hotter core never asks for a longer hold. */
const pairFindings = (pairs: readonly CorePair[], path: Keys): readonly Finding[] =>
  pairs.flatMap(({ celsius, holdSeconds }, index): readonly Finding[] => {
    const before = pairs[index - 1];
    if (before === undefined || (before.celsius < celsius && before.holdSeconds >= holdSeconds)) return [];
    return [
      {
        path: pathText([...path, index]),
        found: `${celsius} °C for ${holdSeconds} s after ${before.celsius} °C for ${before.holdSeconds} s`,
        wanted: 'pairs from cooler to hotter, none with a longer hold than the one before it',
        mend: 'put the pairs in order, or correct one',
      },
    ];
  });
