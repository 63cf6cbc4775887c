/** Kettle against pan: the same cold water brought to the boil in the pan, minutes and energy of each way. */
import type { Burner, Kettle, Kitchen, Pan } from '../kitchen/kitchen.ts';
import { heatKettle, heatPot } from './boil-model.ts';
import { burnerHeatW, kettleHeatW } from './heat-sources.ts';
import { potOf } from './pot.ts';
import { surroundingsOf } from './pot-loss.ts';
import { massKg, specificHeat } from './properties.ts';

export interface BoilWay {
  readonly way: 'pan' | 'kettle' | 'kettle-then-pan';
  readonly minutes: number;
  /** Drawn from the mains or as gas, Wh. */
  readonly wattHours: number;
  /** At the kitchen's tariff, in its currency. */
  readonly cost: number;
}

export interface KettleOrPan {
  readonly ways: readonly BoilWay[];
  readonly quickest: BoilWay;
  readonly thriftiest: BoilWay;
  readonly cheapest: BoilWay;
}

const least = (ways: readonly BoilWay[], of: (way: BoilWay) => number): BoilWay =>
  ways.reduce((best, way) => (of(way) < of(best) ? way : best));

/**
 * Ways of having boiling water in a pan. `kettle` alone is water for a bowl; `kettle-then-pan` pours it into the cold pan, whose
 * metal cools it, and brings it back to the boil.
 *
 * @param ml cold water, mL; more than the kettle holds is boiled fill by fill
 */
export function kettleOrPan(kitchen: Kitchen, burner: Burner, pan: Pan, kettle: Kettle, ml: number): KettleOrPan {
  const around = surroundingsOf(kitchen);
  const pot = potOf(pan);
  const { electricityPerKWh, gasPerKWh } = kitchen.tariff;
  const hobPrice = kitchen.hob.heat === 'gas' ? gasPerKWh : electricityPerKWh;
  const heatW = burnerHeatW(kitchen.hob, burner);
  const inPan = (fromC: number) => heatPot(pot, ml, fromC, around.boilsC, heatW, around, pan.lid).minutes;
  const onHob = inPan(around.tapC);
  const hob = (minutes: number): number => (minutes * burner.powerW) / 60;
  const inKettle = heatKettle(ml, around.tapC, around.boilsC, kettleHeatW(kettle), around.tapC).minutes;
  const kettleWh = (inKettle * kettle.powerW) / 60;
  const waterKJPerK = massKg(ml, around.tapC) * specificHeat(around.boilsC);
  const pouredC =
    (waterKJPerK * around.boilsC + pot.metalKJPerK * around.roomC) / Math.max(1e-9, waterKJPerK + pot.metalKJPerK);
  const back = inPan(pouredC);
  const ways: readonly BoilWay[] = [
    { way: 'pan', minutes: onHob, wattHours: hob(onHob), cost: (hob(onHob) * hobPrice) / 1000 },
    { way: 'kettle', minutes: inKettle, wattHours: kettleWh, cost: (kettleWh * electricityPerKWh) / 1000 },
    {
      way: 'kettle-then-pan',
      minutes: inKettle + back,
      wattHours: kettleWh + hob(back),
      cost: (kettleWh * electricityPerKWh + hob(back) * hobPrice) / 1000,
    },
  ];
  const boilsInPan = ways.filter(({ way }) => way !== 'kettle');
  return {
    ways,
    quickest: least(boilsInPan, ({ minutes }) => minutes),
    thriftiest: least(boilsInPan, ({ wattHours }) => wattHours),
    cheapest: least(boilsInPan, ({ cost }) => cost),
  };
}
