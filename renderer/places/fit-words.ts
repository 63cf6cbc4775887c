/** How well an oven's fit is founded, in words. */
import type { OvenFigures } from '../../solver/answers/kitchen-figures.ts';

type Fit = OvenFigures['fit'];

const FROM: Readonly<Record<Fit['capacityFrom'], string>> = {
  readings: 'from the readings',
  both: 'from the readings, held near that of a typical oven',
  typical: 'of a typical oven of this volume',
};

/** What the two numbers of a fit rest on, and how far the readings lie from it. */
export function fitWords({ rmsK, capacityFrom, timeConstantFrom }: Fit): string {
  if (capacityFrom === 'typical' && timeConstantFrom === 'typical')
    return 'No readings yet: a typical oven of this volume. Your own may be quite different.';
  const founded =
    capacityFrom === timeConstantFrom
      ? `Speeds of heating and cooling: ${FROM[capacityFrom]}.`
      : `Speed of heating: ${FROM[capacityFrom]}. Speed of cooling: ${FROM[timeConstantFrom]}.`;
  return `${founded} The readings lie ${rmsK < 0.05 ? 'on the fit' : `${rmsK.toFixed(1)} K from the fit on the mean`}.`;
}
