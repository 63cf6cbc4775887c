/** Rule 1, the figures: finish, end of everything and minutes of hands are those of the steps. */
import type { Reading } from './reading.ts';
import type { Violation } from './violation.ts';

export function checkTotals(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const puttingAway = new Set(
    reading.steps
      .filter(({ instance }) => !instance.inFinish)
      .flatMap(({ pieces }) => pieces.map(({ planned }) => planned.id)),
  );
  const handsOn = plan.steps.flatMap(({ id, segments }) =>
    segments.filter(({ hands }) => hands === 'on').map((segment) => ({ id, ...segment })),
  );
  const finish = Math.max(0, ...handsOn.filter(({ id }) => !puttingAway.has(id)).map(({ end }) => end));
  const allAway = Math.max(0, ...plan.steps.map(({ end }) => end));
  const minutes = handsOn.reduce((sum, { start, end }) => sum + end - start, 0);
  const violations: Violation[] = [];
  const compare = (what: string, said: number, is: number, shown: (minute: number) => string): void => {
    if (said !== is)
      violations.push({ rule: 1, message: `${what} is ${shown(is)}, and the plan says ${shown(said)}.`, steps: [] });
  };
  compare('The finish', plan.finishMinutes, finish, clock.at);
  compare('The end of everything', plan.allAwayMinutes, allAway, clock.at);
  compare('The sum of hands-on work', plan.handsOnMinutes, minutes, (sum) => `${sum} min`);
  return violations;
}
