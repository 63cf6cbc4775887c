/** An oven's fitted curves and the readings on them, as plain points for a plot. */
import { hottestC, type OvenModel } from './oven-model.ts';
import { modelCurve, type HeatCurve } from './heat-curve.ts';
import type { OvenHeat } from './oven-heat.ts';

interface Point {
  readonly minutes: number;
  readonly celsius: number;
}
/** A reading, and what the fitted oven has at that minute, °C. */
export interface PlottedReading extends Point {
  readonly modelC: number;
}
export interface FitSide {
  /** Minutes from 0, rising. */
  readonly curve: readonly Point[];
  readonly readings: readonly PlottedReading[];
}

export interface OvenFitPlot {
  /** From the cold oven at full power. */
  readonly heating: FitSide;
  /** Switched off and shut. A reading taken from another temperature stands later, where the curve passes that temperature. */
  readonly cooling: FitSide;
}

/** Points of a curve, and how far it is followed where no reading is later: to the dial's end, and to so much over the room, K. */
const POINTS = 60;
const NEARLY_COLD_K = 30;

/**
 * Points of an oven's fit.
 * @param heat of an oven in its kitchen
 */
export function fitPlot(heat: OvenHeat): OvenFitPlot {
  const { oven, roomC } = heat;
  const fit = heat.fit();
  const { model } = fit;
  const heating = modelCurve(model, roomC, 'heating');
  const falling = modelCurve(model, roomC, 'cooling');
  const top = Math.max(
    Math.min(oven.dial.mostC, hottestC(model, roomC) - 1),
    ...fit.readings.map((reading) => (reading.kind === 'afterOff' ? reading.fromC : reading.celsius)),
  );
  // The falling curve is drawn from the hottest on, whatever minute that is on the model's own curve.
  const zero = falling.minutesAt(top);
  const fromTop: HeatCurve = {
    minutesAt: (celsius) => falling.minutesAt(celsius) - zero,
    celsiusAt: (minutes) => falling.celsiusAt(minutes + zero),
  };
  const heatRead = fit.readings.flatMap((reading) =>
    reading.kind === 'toHeat' ? [{ minutes: reading.minutes, celsius: reading.celsius, modelC: reading.modelC }] : [],
  );
  const offRead = fit.readings.flatMap((reading) =>
    reading.kind === 'afterOff'
      ? [
          {
            minutes: fromTop.minutesAt(reading.fromC) + reading.minutes,
            celsius: reading.celsius,
            modelC: reading.modelC,
          },
        ]
      : [],
  );
  return {
    heating: { curve: sampled(heating, heatRead, heatEnd(model, roomC, heating, top)), readings: heatRead },
    cooling: { curve: sampled(fromTop, offRead, fromTop.minutesAt(roomC + NEARLY_COLD_K)), readings: offRead },
  };
}

/** Minute at which full power comes to the hottest temperature drawn. */
function heatEnd(model: OvenModel, roomC: number, heating: HeatCurve, top: number): number {
  return heating.minutesAt(Math.min(top, hottestC(model, roomC) - 1));
}

function sampled(curve: HeatCurve, readings: readonly Point[], until: number): readonly Point[] {
  const last = Math.max(1, Number.isFinite(until) ? until : 1, ...readings.map(({ minutes }) => minutes));
  return Array.from({ length: POINTS + 1 }, (_, index) => {
    const minutes = (last * index) / POINTS;
    return { minutes, celsius: curve.celsiusAt(minutes) };
  });
}
