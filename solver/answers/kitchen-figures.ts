/**
 * What can be reckoned of a kitchen: its ovens with the fit through their readings, its burners, kettle and pans, each number
 * with its working.
 */
import { afterheatWorking } from '../heat/afterheat.ts';
import { fitWorking, sourceOfFit, type OvenFit } from '../heat/oven-calibration.ts';
import { heatAndHoldWorking } from '../heat/oven-energy.ts';
import { fitPlot, type OvenFitPlot } from '../heat/oven-fit-plot.ts';
import { ovenHeat } from '../heat/oven-heat.ts';
import { recoveryWorking } from '../heat/oven-load.ts';
import { coolDownWorking, heatUpWorking, holdingWorking } from '../heat/oven-model.ts';
import { fahrenheitWorking, fanWorking, gasMarkWorking } from '../heat/oven-scale.ts';
import { standardCycleWorking } from '../heat/oven-standard-cycle.ts';
import type { Burner, Kettle, Kitchen, Oven, Pan } from '../kitchen/kitchen.ts';
import {
  boilEnergyWorking,
  boilingPointWorking,
  boilWorking,
  kettleWorking,
  quickestBoilWorking,
  simmerWorking,
  soakWorking,
} from '../water/workings.ts';
import type { Working } from '../working.ts';

/** A number of a kitchen, by what it tells: `200 °C from cold`. */
export interface KitchenFigure {
  readonly label: string;
  readonly working: Working;
}

export interface ThingFigures {
  readonly id: string;
  readonly name: string;
  readonly figures: readonly KitchenFigure[];
}

export interface OvenFigures extends ThingFigures {
  /** Readings and fitted curves. */
  readonly plot: OvenFitPlot;
  readonly fit: Pick<OvenFit, 'rmsK' | 'capacityFrom' | 'timeConstantFrom'>;
}

export interface KitchenFigures {
  readonly ovens: readonly OvenFigures[];
  /** Burners on which some pan stands. */
  readonly burners: readonly ThingFigures[];
  readonly kettle: ThingFigures | null;
  /** Pans with a lid: those whose water stays hot. */
  readonly pans: readonly ThingFigures[];
  readonly water: readonly KitchenFigure[];
}

/** What the figures are shown for: a roast, gentle drying, an hour's baking, a tray of cold food. */
const [ROAST_C, DRY_C, BAKE_C, BAKE_MIN] = [200, 80, 180, 60];
const COLD_LOAD = { massG: 1000, fromC: 5, trayG: 1000 };

const figure = (label: string, working: Working | null): readonly KitchenFigure[] =>
  working === null ? [] : [{ label, working }];

/**
 * Reckons a kitchen.
 * @param kitchen a kitchen that its schema accepted
 */
export function kitchenFigures(kitchen: Kitchen): KitchenFigures {
  return {
    ovens: kitchen.ovens.map((oven) => ovenFigures(oven, kitchen.roomC)),
    burners: kitchen.hob.burners.flatMap((burner) => burnerFigures(kitchen, burner)),
    kettle:
      kitchen.kettle === undefined
        ? null
        : {
            id: kitchen.kettle.id,
            name: kitchen.kettle.name,
            figures: kettleFigures(kitchen, kitchen.kettle),
          },
    pans: kitchen.pans.filter(({ lid }) => lid).map((pan) => panFigures(kitchen, pan)),
    water: figure('water boils at', boilingPointWorking(kitchen)),
  };
}

function ovenFigures(oven: Oven, roomC: number): OvenFigures {
  const heat = ovenHeat(oven, roomC);
  const fit = heat.fit();
  const source = sourceOfFit(fit);
  const { model } = fit;
  const top = Math.min(ROAST_C, oven.dial.mostC);
  const bake = Math.min(BAKE_C, oven.dial.mostC);
  const { capacity, loss } = fitWorking(fit, roomC);
  return {
    id: oven.id,
    name: oven.name,
    plot: fitPlot(heat),
    fit: { rmsK: fit.rmsK, capacityFrom: fit.capacityFrom, timeConstantFrom: fit.timeConstantFrom },
    figures: [
      ...figure(`${top} °C from cold`, heatUpWorking(model, roomC, roomC, top, source)),
      ...figure(`${top} °C down to ${DRY_C} °C`, coolDownWorking(model, roomC, top, DRY_C, source)),
      ...figure(`afterheat: surely ${DRY_C} °C, off at ${top} °C`, afterheatWorking(heat, top, DRY_C)),
      ...figure(`draw while ${bake} °C is held`, holdingWorking(model, roomC, bake, source)),
      ...figure(`heating to ${bake} °C and an hour there`, heatAndHoldWorking(model, roomC, bake, BAKE_MIN, source)),
      ...figure(`door opened, a kilogram of cold food in at ${bake} °C`, recoveryWorking(heat, bake, COLD_LOAD)),
      ...(oven.functions.includes('fan') && oven.functions.includes('conventional')
        ? figure(`fan setting for ${bake} °C conventional`, fanWorking(bake, oven.fanOffsetK))
        : []),
      ...figure(`${bake} °C in °F`, fahrenheitWorking(bake)),
      ...(oven.kind === 'gas' ? figure(`gas mark for ${bake} °C`, gasMarkWorking(bake)) : []),
      ...figure('heat capacity', capacity),
      ...figure('heat loss', loss),
      ...(oven.kind === 'gas'
        ? []
        : figure(
            'a standard cycle, as a share of the standard for its volume',
            standardCycleWorking(model, oven.volumeL, oven.functions.includes('fan') ? 'fan' : 'conventional', source),
          )),
    ],
  };
}

function burnerFigures(kitchen: Kitchen, burner: Burner): readonly ThingFigures[] {
  const pan = kitchen.pans.find(({ acrossCm }) => burner.leastPanCm <= acrossCm && acrossCm <= burner.mostPanCm);
  if (pan === undefined) return [];
  const litre = Math.min(1000, pan.volumeMl);
  return [
    {
      id: burner.id,
      name: burner.name,
      figures: [
        ...(pan.lid
          ? figure(
              `${litre / 1000} L to the boil in the ${pan.name}, lid on`,
              boilWorking(kitchen, burner, pan, litre, true),
            )
          : []),
        ...figure(
          `${litre / 1000} L to the boil in the ${pan.name}, open`,
          boilWorking(kitchen, burner, pan, litre, false),
        ),
        ...figure(
          `energy of it${pan.lid ? ', lid on' : ''}`,
          boilEnergyWorking(boilWorking(kitchen, burner, pan, litre, pan.lid), burner.powerW),
        ),
        ...(kitchen.kettle === undefined
          ? []
          : figure('the quickest, kettle at hand', quickestBoilWorking(kitchen, burner, pan, kitchen.kettle, litre))),
        ...figure('draw at the boil', simmerWorking(kitchen, burner, pan, pan.lid)),
      ],
    },
  ];
}

function kettleFigures(kitchen: Kitchen, kettle: Kettle): readonly KitchenFigure[] {
  const litre = kettleWorking(kitchen, kettle, 1000);
  return [...figure('a litre to the boil', litre), ...figure('energy of it', boilEnergyWorking(litre, kettle.powerW))];
}

function panFigures(kitchen: Kitchen, pan: Pan): ThingFigures {
  const half = Math.round(pan.volumeMl / 2);
  return {
    id: pan.id,
    name: pan.name,
    figures: figure(
      `${(half / 1000).toFixed(1)} L off the heat, hot enough to soak in`,
      soakWorking(kitchen, pan, half),
    ),
  };
}
