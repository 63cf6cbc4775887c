/** How long the food of a session takes to cool, in lines. */
import type { SessionCooling } from '../../../solver/food/session-coolings.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import { minutesText } from './figures.ts';

export const COOLING_CAUTION =
  'Reckoned, not read: a probe thermometer in the middle decides whether food is cold enough, and the rules of your local food authority come first.';

const PLACES: Readonly<Record<SessionCooling['cools']['in'], string>> = {
  air: 'on the worktop',
  rack: 'on a rack',
  'cold-water': 'in cold water',
  fridge: 'in the fridge',
  freezer: 'in the freezer',
};

function coolingText({ what, step, cools, minutes, shallower }: SessionCooling): readonly string[] {
  const size = cools.shape === 'sphere' ? `pieces of ${cools.depthMm} mm` : `${cools.depthMm} mm deep`;
  const how = `${size}, ${cools.covered === true ? 'covered' : 'open'} ${PLACES[cools.in]}`;
  return [
    `${what}${step === null ? '' : `: ${step}`}`,
    `   ${cools.fromC} to ${cools.toC} °C, ${how}: ${minutesText(minutes)}`,
    ...(shallower === null
      ? []
      : [`   shared out half as deep ${minutesText(shallower.half)}, a third as deep ${minutesText(shallower.third)}`]),
  ];
}

export function coolingsText(session: Session, coolings: readonly SessionCooling[]): string {
  if (coolings.length === 0) return `${session.name}: no step says how its food cools`;
  return [session.name, '', ...coolings.flatMap(coolingText), '', COOLING_CAUTION].join('\n');
}
