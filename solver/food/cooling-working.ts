/** How the minutes of a cooling come about, for a person to check by hand. */
import {
  AROUND_SOURCE,
  coolFood,
  GUARD,
  GUARD_SOURCE,
  type Cooling,
  type CoolingCourse,
  type CoolingStep,
} from '../heat/food-cooling.ts';
import { CONVECTION } from '../heat/food-surface.ts';
import type { Source } from '../source.ts';
import type { Working } from '../working.ts';
import { CHOI_OKOS, type Composition } from './properties.ts';

const ONE_TERM: Source = {
  standing: 'secondary',
  cite: 'Çengel, Heat and Mass Transfer, chapter 4: one-term solutions of transient conduction in a plane wall and a sphere',
};

function stepWorking(step: CoolingStep, course: CoolingCourse): Working {
  const excess = (celsius: number): number => celsius - course.aroundC;
  return {
    name: `From ${round(step.fromC)} to ${round(step.toC)} °C`,
    value: step.minutes,
    unit: 'min',
    formula: 't = L²/α · ln(θ₁/θ₂) / λ²',
    inputs: [
      { symbol: 'θ₁/θ₂', name: 'share of the excess left', value: excess(step.fromC) / excess(step.toC), unit: '1' },
      { symbol: 'λ', name: 'first root', value: step.root, unit: '1', source: ONE_TERM },
      { symbol: 'Bi↓', name: 'Biot number of the lower face, h·L/k', value: step.bi.lower, unit: '1' },
      { symbol: 'Bi↑', name: 'Biot number of the upper face, h·L/k', value: step.bi.upper, unit: '1' },
      { symbol: 'h↓', name: 'heat given off below', value: step.h.lower, unit: 'W/(m²·K)', source: CONVECTION },
      { symbol: 'h↑', name: 'heat given off above', value: step.h.upper, unit: 'W/(m²·K)', source: CONVECTION },
    ],
    source: ONE_TERM,
  };
}
const round = (celsius: number): number => Math.round(celsius * 10) / 10;

/**
 * The working of a cooling's minutes.
 * @returns null where it never gets there
 */
export function coolingWorking(cooling: Cooling, composition: Composition): Working | null {
  const course = coolFood(cooling, composition);
  if (course.kind === 'never') return null;
  const { properties, lengthM } = course;
  return {
    name: 'Time to cool',
    value: course.minutes,
    unit: 'min',
    formula: 't = g·(t₀ + Σ tᵢ), rounded up',
    inputs: [
      { symbol: 'g', name: 'guard', value: GUARD, unit: '1', source: GUARD_SOURCE },
      { symbol: 'T₁', name: 'warmest place at first', value: cooling.fromC, unit: '°C' },
      { symbol: 'T₂', name: 'warmest place at the end', value: cooling.toC, unit: '°C' },
      {
        symbol: 'T∞',
        name:
          cooling.in === 'cold-water' ? 'what it settles at, between the water and the air above' : 'what is around it',
        value: course.aroundC,
        unit: '°C',
        ...(cooling.aroundC === undefined ? { source: AROUND_SOURCE } : {}),
      },
      { symbol: 'L', name: cooling.shape === 'sphere' ? 'radius' : 'depth', value: lengthM, unit: 'm' },
      { symbol: 'k', name: 'conductivity', value: properties.conductivity, unit: 'W/(m·K)', source: CHOI_OKOS },
      { symbol: 'ρ', name: 'density', value: properties.density, unit: 'kg/m³', source: CHOI_OKOS },
      { symbol: 'c', name: 'specific heat', value: properties.specificHeat, unit: 'J/(kg·K)', source: CHOI_OKOS },
      { symbol: 'α', name: 'diffusivity, k/(ρ·c)', value: properties.diffusivity, unit: 'm²/s', source: CHOI_OKOS },
      { symbol: 'Fo', name: 'Fourier number at the end, α·t/L²', value: course.fourier, unit: '1' },
      { symbol: 't₀', name: 'until the cold has reached the middle', value: course.delayMinutes, unit: 'min' },
    ],
    source: ONE_TERM,
    caution:
      'A reckoning, not a reading: a probe thermometer in the middle decides whether food is cold enough, and local rules come first.',
    parts: course.steps.map((step) => stepWorking(step, course)),
  };
}
