/** Rule 3, power: at no moment more watts than a limit of the home, a circuit or a hob half allows. */
import { burnerWatts } from '../water/burner-power.ts';
import { usesOfPart } from './boiling.ts';
import { called, calledUse, stepsOfUse, type Reading } from './reading.ts';
import { firstOver } from './sweep.ts';
import type { Violation } from './violation.ts';

interface Draw {
  readonly what: string;
  readonly label: string;
  readonly steps: readonly string[];
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

function ovenDraws({ plan }: Reading): readonly Draw[] {
  return plan.ovens.flatMap(({ oven: id, settings }) => {
    const oven = plan.kitchen.ovens.find((each) => each.id === id);
    if (oven === undefined || oven.kind === 'gas') return [];
    return settings.flatMap(({ minute, celsius }, index): readonly Draw[] =>
      celsius === null
        ? []
        : [
            {
              what: id,
              label: oven.name,
              steps: [],
              from: minute,
              until: settings[index + 1]?.minute ?? plan.allAwayMinutes,
              amount: oven.powerW,
            },
          ],
    );
  });
}

function hobDraws(reading: Reading): readonly Draw[] {
  const { kitchen, pools } = reading.plan;
  if (kitchen.hob.heat === 'gas') return [];
  const burner = (id: string) => kitchen.hob.burners.find((each) => each.id === id);
  const underSteps = reading.uses.flatMap((use): readonly Draw[] => {
    const under = use.need.use === 'burner' ? burner(use.place.id) : undefined;
    if (use.need.use !== 'burner' || under === undefined) return [];
    const { from, until } = use.place;
    const steps = stepsOfUse(use, reading);
    return [
      { what: under.id, label: calledUse(use), steps, from, until, amount: burnerWatts(kitchen, under, use.need.heat) },
    ];
  });
  const underPools = pools.flatMap(({ pool, boils }) =>
    boils.flatMap((boil): readonly Draw[] => {
      const under = burner(boil.burner);
      if (under === undefined) return [];
      const { onHeat: from, offHeat: until } = boil;
      return [{ what: under.id, label: pool, steps: [], from, until, amount: burnerWatts(kitchen, under, 'full') }];
    }),
  );
  return [...underSteps, ...underPools];
}

function kettleDraws(reading: Reading): readonly Draw[] {
  const { kettle } = reading.plan.kitchen;
  if (kettle === undefined) return [];
  return reading.steps
    .flatMap(({ pieces }) => pieces)
    .flatMap((piece) =>
      (piece.way?.parts ?? []).flatMap((part, index): readonly Draw[] => {
        if (part.hands === 'on' || part.boilMl === 0 || piece.spans === null) return [];
        if (usesOfPart(piece, index, 'kettle', reading).length === 0) return [];
        const { start: from, end: until } = piece.spans[index]!;
        const { planned } = piece;
        return [{ what: kettle.id, label: called(planned), steps: [planned.id], from, until, amount: kettle.powerW }];
      }),
    );
}

function applianceDraws(reading: Reading): readonly Draw[] {
  return reading.uses.flatMap((use): readonly Draw[] => {
    const appliance = reading.plan.kitchen.appliances.find(({ id }) => id === use.place.id);
    if (use.need.use !== 'appliance' || appliance === undefined) return [];
    const { from, until } = use.place;
    const steps = stepsOfUse(use, reading);
    return [{ what: appliance.id, label: calledUse(use), steps, from, until, amount: appliance.powerW }];
  });
}

export function checkPower(reading: Reading): readonly Violation[] {
  const { plan, clock } = reading;
  const draws = [...ovenDraws(reading), ...hobDraws(reading), ...kettleDraws(reading), ...applianceDraws(reading)];
  return plan.kitchen.power.flatMap(({ name, limitW, members }) => {
    const on = draws.filter(({ what }) => members === undefined || members.includes(what));
    return firstOver(on, limitW).map(({ minute, sum, together }): Violation => ({
      rule: 3,
      message: `${name} allows ${limitW} W, and at ${clock.at(minute)} it is ${sum} W: ${together.map(({ label }) => label).join(', ')}.`,
      steps: together.flatMap(({ steps }) => steps),
      minute,
    }));
  });
}
