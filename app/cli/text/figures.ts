/** The figures of a plan, and of several side by side. */
import type { Plan, PlanTier } from '../../../solver/kitchen/plan.ts';

const TIER_NAMES: Readonly<Record<PlanTier['id'], string>> = {
  finish: 'finish',
  'latest-start': 'hands at work before the table',
  'others-finish': 'all other work done',
  waiting: 'food waiting past its best',
  energy: 'energy',
  calm: 'changes of dish',
};

/** `95 min` as `1 h 35 min`. */
export function minutesText(minutes: number): string {
  const sign = minutes < 0 ? '−' : '';
  const whole = Math.abs(minutes);
  if (whole < 60) return `${sign}${whole} min`;
  return `${sign}${Math.floor(whole / 60)} h${whole % 60 === 0 ? '' : ` ${whole % 60} min`}`;
}

/** One line: how long, and what is proved of it. */
export function headlineOf(plan: Plan): string {
  const first = plan.tiers[0];
  const proved = first?.proven === true ? 'proven the least' : `at least ${minutesText(plan.boundMinutes)}`;
  return [
    first?.id === 'latest-start'
      ? `first hand at work ${minutesText(first.value)} before the table (${proved})`
      : `finish after ${minutesText(plan.finishMinutes)} (${proved})`,
    `hands-on ${minutesText(plan.handsOnMinutes)}`,
    `all away after ${minutesText(plan.allAwayMinutes)}`,
    ...(plan.stopped ? ['ended before all was proved'] : []),
  ].join('; ');
}

/** One line a tier: name, value, bound. */
export function tiersText(plan: Plan): string {
  return plan.tiers
    .map(
      ({ id, value, bound, unit, proven }) =>
        `  ${TIER_NAMES[id]}: ${value} ${unit}${proven ? ', proven' : `, at least ${bound}`}`,
    )
    .join('\n');
}

/** Figures of several plans in columns, the difference to the first under each. */
export function comparisonText(plans: readonly Plan[]): string {
  const tierIds = plans[0]!.tiers.map(({ id }) => id);
  const rows: readonly (readonly [string, (plan: Plan) => number | null, string])[] = [
    ['finish', (plan) => plan.finishMinutes, 'min'],
    ['bound of the finish', (plan) => (plan.tiers[0]?.id === 'finish' ? plan.boundMinutes : null), 'min'],
    ['hands-on', (plan) => plan.handsOnMinutes, 'min'],
    ['all away', (plan) => plan.allAwayMinutes, 'min'],
    ...tierIds
      .filter((id) => id !== 'finish')
      .map((id) => {
        const tier = (plan: Plan) => plan.tiers.find((other) => other.id === id);
        return [TIER_NAMES[id], (plan: Plan) => tier(plan)?.value ?? null, tier(plans[0]!)?.unit ?? ''] as const;
      }),
  ];
  const cells = rows.map(([name, value, unit]) => {
    const first = value(plans[0]!);
    return [
      name,
      ...plans.map((plan, index) => {
        const own = value(plan);
        if (own === null) return '–';
        const gain =
          index === 0 || first === null || own === first ? '' : ` (${own > first ? '+' : '−'}${Math.abs(own - first)})`;
        return `${own} ${unit}${gain}`;
      }),
    ];
  });
  const table = [
    ['', ...plans.map((plan) => plan.kitchen.name)],
    ['status', ...plans.map((plan) => plan.status)],
    ...cells,
  ];
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  return table
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column]!))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
