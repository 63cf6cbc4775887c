/** The dial's turns against the oven's own tables; ovens and windows are invented. */
import { describe, expect, test } from 'vitest';
import { ovenCourse } from '../../../solver/checker/oven-course.ts';
import { ovenProgramme, type WindowUse } from '../../../solver/heat/oven-programme.ts';
import { ovenHeat, type OvenHeat } from '../../../solver/heat/oven-heat.ts';
import { coolMinutes, dialWindow, heatMinutes } from '../../../solver/heat/oven-tables.ts';
import type { Oven } from '../../../solver/kitchen/kitchen.ts';
import { randomKitchen } from '../../support/random-kitchen.ts';
import { seeded, type Seeded } from '../../support/seeded.ts';

/** Whether the later use may come when it does: on the same setting, or with the minutes of heating or cooling between. */
function allows(heat: OvenHeat, a: WindowUse, b: WindowUse): boolean {
  const { oven } = heat;
  const [first, second] = a.start <= b.start ? [a, b] : [b, a];
  const [from, to] = [dialWindow(oven, first.leastC, first.mostC)!, dialWindow(oven, second.leastC, second.mostC)!];
  if (from.leastC <= to.mostC && to.leastC <= from.mostC) return true;
  const minutes =
    from.mostC < to.leastC ? heatMinutes(heat, from.mostC, to.leastC) : coolMinutes(heat, from.leastC, to.mostC);
  return second.start - first.end >= Math.ceil(minutes);
}

function randomUses(chance: Seeded, heat: OvenHeat): readonly WindowUse[] {
  const { oven } = heat;
  const uses: WindowUse[] = [];
  for (let tries = 0; tries < 40 && uses.length < 6; tries++) {
    const leastC = chance.int(6, 22) * 10;
    const start = chance.int(0, 150);
    const use: WindowUse = {
      start,
      end: start + chance.int(1, 30),
      function: 'conventional',
      leastC,
      mostC: leastC + chance.pick([5, 10, 25, 40]),
    };
    const window = dialWindow(oven, use.leastC, use.mostC);
    if (window === null || use.start < Math.ceil(heatMinutes(heat, 20, window.leastC))) continue;
    if (uses.every((other) => allows(heat, other, use))) uses.push(use);
  }
  return uses;
}

/** Ways in which a kitchen may tell an oven's heat: its tables, two readings of them, or nothing. */
const ways: readonly { readonly name: string; readonly asWritten: (oven: Oven) => Oven }[] = [
  { name: 'as its kitchen does', asWritten: (oven) => oven },
  {
    name: 'by readings',
    asWritten: ({ heating, cooling, readings, ...oven }) => ({
      ...oven,
      readings: readings ?? { toHeat: [heating![3]!], afterOff: [{ fromC: cooling![0]!.celsius, ...cooling![2]! }] },
    }),
  },
  { name: 'as typical of its volume', asWritten: ({ heating: _, cooling: __, readings: ___, ...oven }) => oven },
];

describe.each(ways)('the programme of an oven $name', ({ asWritten }) => {
  test('serves every schedule whose uses leave each other time to heat and cool', () => {
    const missed: string[] = [];
    for (let seed = 0; seed < 4000; seed++) {
      const chance = seeded(seed);
      const oven = asWritten(randomKitchen(chance, 1).ovens[0]!);
      const heat = ovenHeat(oven, 20);
      const uses = randomUses(chance, heat);
      if (uses.length === 0) continue;
      const until = Math.max(...uses.map(({ end }) => end));
      const programme = ovenProgramme(heat, uses, { from: 0, until }, until)!;
      const course = ovenCourse(oven, 20, programme.settings, until);
      for (const use of uses) {
        const window = dialWindow(oven, use.leastC, use.mostC)!;
        for (let minute = use.start; minute <= use.end; minute++) {
          const celsius = course.celsiusAt(minute);
          if (celsius < window.leastC - 1 || celsius > window.mostC + 1)
            missed.push(`seed ${seed}: ${celsius.toFixed(1)} °C at ${minute} for ${JSON.stringify(use)}`);
        }
      }
    }
    expect(missed.slice(0, 5)).toEqual([]);
  });
});
