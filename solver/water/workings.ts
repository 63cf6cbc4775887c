/** Workings of the figures of water, so that a person can check them by hand. */
import type { Burner, Kettle, Kitchen, Pan } from '../kitchen/kitchen.ts';
import type { Source } from '../source.ts';
import type { Working, WorkingInput } from '../working.ts';
import { boiledAwayMl, heatKettle, heatPot, keepBoiling } from './boil-model.ts';
import { airPressure, boilingPointC } from './boiling-point.ts';
import { dipOf, type Food } from './dip.ts';
import { burnerEfficiency, burnerHeatW, KETTLE_SHARE, kettleHeatW } from './heat-sources.ts';
import { kettleOrPan } from './kettle-or-pan.ts';
import { potOf } from './pot.ts';
import { GUARD, SOAK_C, soakMinutes } from './pot-cooling.ts';
import { potLoss, surroundingsOf } from './pot-loss.ts';
import { latentHeat, massKg, specificHeat } from './properties.ts';
import { keepDrawW, keptC, type Kept } from './simmer.ts';
import * as sources from './sources.ts';

const input = (symbol: string, name: string, value: number, unit: string, source?: Source): WorkingInput => ({
  symbol,
  name,
  value,
  unit,
  ...(source === undefined ? {} : { source }),
});

/** The boiling point of a kitchen. */
export function boilingPointWorking(kitchen: Pick<Kitchen, 'altitudeM'>): Working {
  const altitudeM = kitchen.altitudeM ?? 0;
  return {
    name: 'Boiling point',
    value: boilingPointC(altitudeM),
    unit: '°C',
    formula: 'T = 1730.63 / (8.07131 − log₁₀ p) − 233.426, p in mmHg',
    inputs: [
      input('h', 'height above the sea', altitudeM, 'm'),
      input('p', 'pressure of the air', (airPressure(altitudeM) * 760) / 101.325, 'mmHg', sources.STANDARD_ATMOSPHERE),
    ],
    source: sources.STANDARD_ATMOSPHERE,
  };
}

const lossCaution =
  'Losses vary with draughts, the fit of the lid and the stove; readings of your own pans are better.';

/** What a pot loses at the boil or at another temperature. */
export function lossWorking(
  kitchen: Kitchen,
  pan: Pan,
  waterC: number,
  how: { readonly lidded: boolean; readonly onHeat: boolean },
): Working {
  const pot = potOf(pan);
  const around = surroundingsOf(kitchen);
  const loss = potLoss(pot, waterC, around, how.lidded, how.onHeat);
  return {
    name: how.lidded ? 'Loss of the pot, lid on' : 'Loss of the open pot',
    value: loss.watts,
    unit: 'W',
    formula: how.lidded
      ? 'L = q(wall)·A(wall) + q(lid)·A(top)'
      : 'L = q(wall)·A(wall) + (q(convection) + q(radiation) + ṁ·r)·A(top)',
    inputs: [
      input('T', 'water', waterC, '°C'),
      input('Tᵣ', 'room', kitchen.roomC, '°C'),
      input('A(wall)', how.onHeat ? 'wall' : 'wall and bottom', pot.wallM2 + (how.onHeat ? 0 : pot.topM2), 'm²'),
      input('A(top)', 'opening', pot.topM2, 'm²'),
      input('ṁ·r·A', 'of it with vapour', loss.evaporation, 'W', sources.MASS_TRANSFER),
    ],
    source: sources.NATURAL_CONVECTION,
    caution: lossCaution,
  };
}

/** Time to the boil on a burner, from cold. */
export function boilWorking(kitchen: Kitchen, burner: Burner, pan: Pan, ml: number, lidded: boolean): Working {
  const around = surroundingsOf(kitchen);
  const pot = potOf(pan);
  const heat = heatPot(pot, ml, around.tapC, around.boilsC, burnerHeatW(kitchen.hob, burner), around, lidded);
  const mean = heat.minutes === Infinity || heat.minutes === 0 ? 0 : (heat.lostKJ * 1000) / (heat.minutes * 60);
  return {
    name: 'Time to the boil',
    value: heat.minutes,
    unit: 'min',
    formula: 't = (m·c + C)·(Tₛ − T₀) / (η·P − L)',
    inputs: [
      input('m', 'water', massKg(ml, around.tapC), 'kg', sources.WATER_DENSITY),
      input(
        'c',
        'specific heat in the mean',
        specificHeat((around.tapC + around.boilsC) / 2),
        'kJ/(kg·K)',
        sources.WATER_TABLE,
      ),
      input(
        'C',
        'heat taken by the metal',
        pot.metalKJPerK,
        'kJ/K',
        pan.massG === undefined ? sources.PAN_MASS : sources.PAN_METALS,
      ),
      input('Tₛ', 'boiling point', around.boilsC, '°C', sources.STANDARD_ATMOSPHERE),
      input('T₀', 'tap water', around.tapC, '°C'),
      input(
        'η',
        'efficiency',
        burnerEfficiency(kitchen.hob, burner),
        '1',
        burner.efficiency === undefined ? sources.HOB_EFFICIENCY : undefined,
      ),
      input('P', 'power of the burner', burner.powerW, 'W'),
      input('L', 'loss in the mean on the way', mean, 'W', sources.NATURAL_CONVECTION),
    ],
    source: sources.HEAT_BALANCE,
    caution: heat.minutes === Infinity ? 'Never: the losses at the boil reach the heat given.' : lossCaution,
    parts: [boilingPointWorking(kitchen), lossWorking(kitchen, pan, around.boilsC, { lidded, onHeat: true })],
  };
}

/** Time to the boil in the kettle, from cold. */
export function kettleWorking(kitchen: Kitchen, kettle: Kettle, ml: number): Working {
  const { tapC, boilsC } = surroundingsOf(kitchen);
  return {
    name: 'Time to the boil in the kettle',
    value: heatKettle(ml, tapC, boilsC, kettleHeatW(kettle), tapC).minutes,
    unit: 'min',
    formula: 't = m·c·(Tₛ − T₀) / (η·P)',
    inputs: [
      input('m', 'water', massKg(ml, tapC), 'kg', sources.WATER_DENSITY),
      input('c', 'specific heat in the mean', specificHeat((tapC + boilsC) / 2), 'kJ/(kg·K)', sources.WATER_TABLE),
      input('Tₛ', 'boiling point', boilsC, '°C', sources.STANDARD_ATMOSPHERE),
      input('T₀', 'tap water', tapC, '°C'),
      input('η', 'efficiency', KETTLE_SHARE, '1', sources.KETTLE_EFFICIENCY),
      input('P', 'power of the kettle', kettle.powerW, 'W'),
    ],
    source: sources.HEAT_BALANCE,
    parts: [boilingPointWorking(kitchen)],
  };
}

/** Energy drawn for a boil: that of the time it takes. @param boil working of the time, in minutes */
export function boilEnergyWorking(boil: Working, powerW: number): Working {
  return {
    name: 'Energy to the boil',
    value: (boil.value * powerW) / 60,
    unit: 'Wh',
    formula: 'E = P·t / 60',
    inputs: [input('P', 'power', powerW, 'W'), input('t', 'time to the boil', boil.value, 'min', boil.source)],
    source: boil.source,
    parts: [boil],
  };
}

/** Boiling water in a pan the way that is quickest: in the pan alone, or from the kettle and back to the boil. */
export function quickestBoilWorking(kitchen: Kitchen, burner: Burner, pan: Pan, kettle: Kettle, ml: number): Working {
  const { ways, quickest } = kettleOrPan(kitchen, burner, pan, kettle, ml);
  const told = { pan: 'in the pan alone', kettle: 'in the kettle', 'kettle-then-pan': 'by kettle, then pan' } as const;
  return {
    name: `Boiling water in the ${pan.name}, quickest ${told[quickest.way]}`,
    value: quickest.minutes,
    unit: 'min',
    formula: 'the least of the times of the ways',
    inputs: ways
      .filter(({ way }) => way !== 'kettle')
      .flatMap(({ way, minutes, wattHours }, index) => [
        input(`t${index + 1}`, told[way], minutes, 'min'),
        input(`E${index + 1}`, `energy ${told[way]}`, wattHours, 'Wh'),
      ]),
    source: sources.HEAT_BALANCE,
    caution: 'Water poured from the kettle cools on the cold pan; the minute of pouring is not counted.',
    parts: [boilWorking(kitchen, burner, pan, ml, pan.lid), kettleWorking(kitchen, kettle, ml)],
  };
}

/** What a burner draws to keep a pan at the boil, or at a simmer. */
export function simmerWorking(
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan,
  lidded: boolean,
  kept: Kept = 'boil',
): Working {
  const loss = lossWorking(kitchen, pan, keptC(kitchen, kept), { lidded, onHeat: true });
  return {
    name: kept === 'boil' ? 'Draw at the boil' : 'Draw at a simmer',
    value: keepDrawW(kitchen, burner, pan, lidded, kept),
    unit: 'W',
    formula: 'P = L / η, at most the rated power',
    inputs: [
      input(
        'T',
        'kept at',
        keptC(kitchen, kept),
        '°C',
        kept === 'simmer' ? sources.SIMMER_PRACTICE : sources.STANDARD_ATMOSPHERE,
      ),
      input('L', 'loss of the pot at T', loss.value, 'W', sources.NATURAL_CONVECTION),
      input(
        'η',
        'efficiency',
        burnerEfficiency(kitchen.hob, burner),
        '1',
        burner.efficiency === undefined ? sources.HOB_EFFICIENCY : undefined,
      ),
    ],
    source: sources.HEAT_BALANCE,
    caution: 'Whatever more is given boils water away.',
    parts: [loss],
  };
}

/** How long water off the heat stays hot enough to soak in. */
export function soakWorking(kitchen: Kitchen, pan: Pan, ml: number): Working {
  const around = surroundingsOf(kitchen);
  const pot = potOf(pan);
  const middle = (around.boilsC + SOAK_C) / 2;
  const loss = lossWorking(kitchen, pan, middle, { lidded: pan.lid, onHeat: false });
  return {
    name: 'Hot enough to soak in',
    value: soakMinutes(pot, ml, around, pan.lid),
    unit: 'min',
    formula: 't = (m·c + C)·(Tₛ − Tₑ) / (g·L)',
    inputs: [
      input('m', 'least water in the pot', massKg(ml, around.tapC), 'kg', sources.WATER_DENSITY),
      input('c', 'specific heat', specificHeat(middle), 'kJ/(kg·K)', sources.WATER_TABLE),
      input(
        'C',
        'heat held by the metal',
        pot.metalKJPerK,
        'kJ/K',
        pan.massG === undefined ? sources.PAN_MASS : sources.PAN_METALS,
      ),
      input('Tₛ', 'boiling point', around.boilsC, '°C', sources.STANDARD_ATMOSPHERE),
      input('Tₑ', 'coolest to soak in', SOAK_C, '°C', sources.SOAK_PRACTICE),
      input('g', 'guard', GUARD, '1', {
        standing: 'derived',
        cite: 'One series of readings of open beakers cooled up to 1.36 times as fast as reckoned',
      }),
      input('L', 'loss half way', loss.value, 'W', sources.NATURAL_CONVECTION),
    ],
    source: sources.HEAT_BALANCE,
    caution: `${lossCaution} Measure the water where it matters.`,
    parts: [loss],
  };
}

/** How long a pot needs to boil again after food went in. */
export function dipWorking(
  kitchen: Kitchen,
  burner: Burner,
  pan: Pan,
  ml: number,
  food: Food,
  lidded: boolean,
): Working {
  const around = surroundingsOf(kitchen);
  const pot = potOf(pan);
  const heatW = burnerHeatW(kitchen.hob, burner);
  const dip = dipOf(pot, ml, food, heatW, around, lidded);
  const loss = lossWorking(kitchen, pan, around.boilsC, { lidded, onHeat: true });
  return {
    name: 'Time to boil again after food went in',
    value: dip.recoveryMinutes,
    unit: 'min',
    formula: 't = m·c·(Tₛ − T₀) / (Q − L)',
    inputs: [
      input('m', 'food', food.massG / 1000, 'kg'),
      input('c', 'specific heat of the food', food.specificHeat, 'kJ/(kg·K)'),
      input('T₀', 'food', food.celsius, '°C'),
      input('Tₛ', 'boiling point', around.boilsC, '°C', sources.STANDARD_ATMOSPHERE),
      input('Q', 'heat given to the pot', heatW, 'W', sources.HOB_EFFICIENCY),
      input('L', 'loss at the boil', loss.value, 'W', sources.NATURAL_CONVECTION),
      input('T', 'lowest that the water falls to', dip.lowestC, '°C', sources.HEAT_BALANCE),
    ],
    source: sources.HEAT_BALANCE,
    caution: 'Reckoned as if the food took its heat at once; thick pieces take it slower.',
    parts: [loss],
  };
}

/** Water that boils away over some minutes of heat. */
export function steamWorking(kitchen: Kitchen, burner: Burner, pan: Pan, minutes: number): Working {
  const around = surroundingsOf(kitchen);
  const pot = potOf(pan);
  const heatW = burnerHeatW(kitchen.hob, burner);
  return {
    name: 'Water boiled away',
    value: boiledAwayMl(pot, heatW, minutes, around, true),
    unit: 'mL',
    formula: 'V = (Q − L)·t / r',
    inputs: [
      input('Q', 'heat given to the pot', heatW, 'W', sources.HOB_EFFICIENCY),
      input('L', 'loss at the boil', keepBoiling(pot, around, true).heatW, 'W', sources.NATURAL_CONVECTION),
      input('t', 'time', minutes, 'min'),
      input('r', 'latent heat', latentHeat(around.boilsC), 'kJ/kg', sources.WATER_TABLE),
    ],
    source: sources.HEAT_BALANCE,
    caution: 'Steam scalds: lift the lid away from you.',
  };
}
