/**
 * How long food takes to cool: a layer in a tray or box, or whole round pieces, in the air of the kitchen, on a rack, in cold water,
 * in fridge or freezer. What counts is the warmest place within, where a probe would be put.
 *
 * One-term solutions in a row: the warmest place falls by so many degrees at a time, each with the coefficients that the faces have
 * at its end, which are the least of it; t = L²/α·(ln A + Σ ln(θᵢ₋₁/θᵢ))/λᵢ², with the longest ln A/λ² of all for the delay until
 * the cold has reached the middle. The one-term solution is above the series until Fo 0.2, and the same from there on.
 *
 * The food conducts, and does not move: of a stew this is not true while it is stirred, and the time is then on the safe side. So it
 * is by all that is left out: the sides, the metal of the tray, water that evaporates unless the food is said to be wet on top.
 */
import { heatProperties, type Composition, type HeatProperties } from '../food/properties.ts';
import type { Source } from '../source.ts';
import { hottestPlace, slabModes, sphereModes } from './food-conduction.ts';
import {
  BRIGHT,
  MATT,
  evaporationRatio,
  plateConvection,
  radiation,
  sphereConvection,
  type Around,
} from './food-surface.ts';

export const COOLING_PLACES = ['air', 'rack', 'cold-water', 'fridge', 'freezer'] as const;
export type CoolingPlace = (typeof COOLING_PLACES)[number];

/** What cools, from what to what, and where. */
export interface Cooling {
  /** Warmest place within, °C, at first and when it is cool enough. */
  readonly fromC: number;
  readonly toC: number;
  /** Of the layer; of round pieces their diameter. mm, > 0 */
  readonly depthMm: number;
  /** `air`: on the worktop, nothing passes below. `rack`: air below too. `cold-water`: the vessel stands in water up to the food. */
  readonly in: CoolingPlace;
  /** A lid or foil above it; default: open. */
  readonly covered?: boolean;
  /** `slab`, the default: a layer, wide beside its depth. `sphere`: round pieces, side by side and not heaped. */
  readonly shape?: 'slab' | 'sphere';
  /** Plastic or glass below the food, mm; absent: metal. */
  readonly wallMm?: number;
  /** Its surface stays wet to the end, as of rice, stew or steamed greens: evaporation counts. Default: it dries, and does not. */
  readonly wet?: boolean;
  /** Temperature around it, °C; default by place. */
  readonly aroundC?: number;
  /** Coefficients of lower and upper face where they are known, W/(m²·K); of a sphere the upper counts. Default: reckoned. */
  readonly coefficients?: Faces;
}
export interface Faces {
  readonly lower: number;
  readonly upper: number;
}

/** What is around it where the document does not say, °C. */
export const AROUND_C: Readonly<Record<CoolingPlace, number>> = {
  air: 25,
  rack: 25,
  'cold-water': 15,
  fridge: 5,
  freezer: -18,
};
export const AROUND_SOURCE: Source = {
  standing: 'common-practice',
  cite: 'common practice: a kitchen in use is at 25 °C, tap water at 15 °C; a fridge is at 5 °C and a freezer at −18 °C',
};

/** Minutes are lengthened by this much: properties of food and coefficients of surfaces are known to about a tenth. */
export const GUARD = 1.1;
export const GUARD_SOURCE: Source = {
  standing: 'common-practice',
  cite: 'guard of this program: a tenth on top, then rounded up to whole minutes',
};

/** Area ÷ perimeter of a large tray (0.53 m × 0.325 m), m. A smaller one cools a little sooner. */
const TRAY_LENGTH_M = 0.1;
/** A lid adds a layer of air that lets through about as much as the air above it; so does a fridge's shelf below. */
const COVERED = 0.5;

/** A part of the cooling: the warmest place falls from one temperature to the next under the coefficients it ends with. */
export interface CoolingStep {
  readonly fromC: number;
  readonly toC: number;
  readonly h: Faces;
  /** h·L/k of the faces, L the full thickness, or of a sphere its radius (both alike). */
  readonly bi: Faces;
  /** First root and weight of the shape, the weight at the warmest place. */
  readonly root: number;
  readonly weight: number;
  readonly minutes: number;
}
export interface CoolingCourse {
  readonly kind: 'cools';
  /** Whole minutes, with the guard, rounded up; 0 where it is cool enough at first. */
  readonly minutes: number;
  /** Without guard and rounding. */
  readonly exactMinutes: number;
  /** Of these, until the cold has reached the warmest place. */
  readonly delayMinutes: number;
  readonly steps: readonly CoolingStep[];
  /** α·t/L² at the end. */
  readonly fourier: number;
  readonly properties: HeatProperties;
  readonly lengthM: number;
  /** What it settles at, °C: what is around it; in cold water a little more, for the air above. */
  readonly aroundC: number;
}
/** It never gets there: what is around is not colder. */
export interface NeverCools {
  readonly kind: 'never';
  readonly aroundC: number;
}

/** Coefficients of a layer's faces at the excess of each over what is around, K. */
function slabFaces(cooling: Cooling, aroundC: number, excess: Faces): Faces {
  const medium: Around = cooling.in === 'cold-water' ? 'water' : 'air';
  const vessel = cooling.wallMm === undefined ? BRIGHT : MATT;
  const below =
    cooling.in === 'air'
      ? 0
      : plateConvection(medium, 'down', excess.lower, TRAY_LENGTH_M) +
        (medium === 'air' ? radiation(vessel, aroundC + excess.lower, aroundC) : 0);
  // Above a vessel in cold water is the kitchen's air: what it takes is not counted, what it gives is in `settlesAt`.
  if (medium === 'water') return { lower: below, upper: 0 };
  const convection = plateConvection('air', 'up', excess.upper, TRAY_LENGTH_M);
  const wet =
    cooling.wet === true && cooling.covered !== true
      ? evaporationRatio(aroundC + excess.upper, aroundC) * convection
      : 0;
  const above = convection + wet + radiation(MATT, aroundC + excess.upper, aroundC);
  return {
    lower: cooling.in === 'fridge' || cooling.in === 'freezer' ? below * COVERED : below,
    upper: cooling.covered === true ? above * COVERED : above,
  };
}

function sphereFace(cooling: Cooling, aroundC: number, excess: number, diameterM: number): number {
  if (cooling.in === 'cold-water') return sphereConvection('water', excess, diameterM);
  const convection = sphereConvection('air', excess, diameterM);
  const wet =
    cooling.wet === true && cooling.covered !== true ? evaporationRatio(aroundC + excess, aroundC) * convection : 0;
  // Neighbours are as warm as the piece itself: only its upper half sees the room.
  const all = convection + wet + radiation(MATT, aroundC + excess, aroundC) / 2;
  return cooling.covered === true ? all * COVERED : all;
}

/**
 * What a layer in cold water settles at where it is warmest, on top: between the water below and the kitchen's air above, °C.
 *
 * The way down is through the layer and the film of water, with the weak convection of the last kelvin.
 */
function settlesAt(cooling: Cooling, waterC: number, lengthM: number, conductivity: number): number {
  const airC = AROUND_C.air;
  if (cooling.coefficients !== undefined || waterC >= airC) return waterC;
  const above = plateConvection('air', 'down', airC - waterC, TRAY_LENGTH_M) + radiation(MATT, airC, airC);
  const gain = cooling.covered === true ? above * COVERED : above;
  const wayDown = 1 / plateConvection('water', 'down', 1, TRAY_LENGTH_M) + lengthM / conductivity;
  return waterC + ((airC - waterC) * gain * wayDown) / (1 + gain * wayDown);
}

/** A coefficient moves with the fourth root of the excess, so each round leaves less than a quarter of the error. */
const ROUNDS = 6;
/** Most degrees by which the warmest place falls under the same coefficients, K. */
const STEP_K = 5;

/** One-term solution whose faces have the coefficients of a temperature of the warmest place, found by going back and forth. */
function solveFaces(cooling: Cooling, aroundC: number, warmestC: number, lengthM: number, conductivity: number) {
  const sphere = cooling.shape === 'sphere';
  const all = warmestC - aroundC;
  let excess: Faces = { lower: all, upper: all };
  for (let round = 0; ; round++) {
    const face = sphere ? sphereFace(cooling, aroundC, excess.upper, 2 * lengthM) : 0;
    const reckoned = sphere ? { lower: face, upper: face } : slabFaces(cooling, aroundC, excess);
    const h = cooling.coefficients ?? reckoned;
    const bi = { lower: (h.lower * lengthM) / conductivity, upper: (h.upper * lengthM) / conductivity };
    const modes = sphere ? sphereModes(bi.upper, 1) : slabModes(bi.lower, bi.upper, 1);
    const warmest = sphere ? 0 : hottestPlace(modes, bi.lower);
    const at = (place: number): number => modes.weights(place)[0]!;
    if (round === ROUNDS) return { root: modes.roots[0]!, weight: at(warmest), bi, h };
    // A face that is all but as cold as what is around still has some excess, for a coefficient to be reckoned from.
    const share = (place: number): number => Math.max(1e-3, at(place) / at(warmest));
    excess = { lower: all * share(sphere ? 1 : 0), upper: all * share(1) };
  }
}

/**
 * How long food takes to cool.
 *
 * @param composition of the food, mass fractions
 * @returns minutes with all that they follow from; `never` where what is around is not colder than what is wanted
 * @source Çengel, Heat and Mass Transfer, chapter 4 (one-term solutions of a slab and a sphere); properties: Choi and Okos (1986);
 *   faces: food-surface.ts; a plastic wall counts like as much more food: Dickerson and Read, Journal of Milk and Food Technology 36
 *   (1973)
 */
export function coolFood(cooling: Cooling, composition: Composition): CoolingCourse | NeverCools {
  const { toC } = cooling;
  const properties = heatProperties(composition, Math.min(100, Math.max(0, (Math.max(cooling.fromC, toC) + toC) / 2)));
  const { conductivity, diffusivity } = properties;
  const depthM = (cooling.depthMm + (cooling.wallMm ?? 0)) / 1000;
  const lengthM = cooling.shape === 'sphere' ? depthM / 2 : depthM;
  const medium = cooling.aroundC ?? AROUND_C[cooling.in];
  const inWater = cooling.in === 'cold-water' && cooling.shape !== 'sphere';
  const aroundC = inWater ? settlesAt(cooling, medium, lengthM, conductivity) : medium;
  if (toC <= aroundC) return { kind: 'never', aroundC };
  // What lies deeper settles colder, so there is more to lose than down to the warmest: as if it began by so much hotter.
  const fromC = cooling.fromC <= toC ? cooling.fromC : cooling.fromC + aroundC - medium;
  /** L²/α in minutes. */
  const scale = lengthM ** 2 / diffusivity / 60;
  const count = Math.max(0, Math.ceil((fromC - toC) / STEP_K));
  const steps = Array.from({ length: count }, (_, index): CoolingStep => {
    const from = fromC - ((fromC - toC) * index) / count;
    const to = fromC - ((fromC - toC) * (index + 1)) / count;
    const solved = solveFaces(cooling, aroundC, to, lengthM, conductivity);
    const minutes = (scale * Math.log((from - aroundC) / (to - aroundC))) / solved.root ** 2;
    return { fromC: from, toC: to, ...solved, minutes };
  });
  const delayMinutes = scale * Math.max(0, ...steps.map(({ weight, root }) => Math.log(weight) / root ** 2));
  const exactMinutes = steps.reduce((sum, { minutes }) => sum + minutes, delayMinutes);
  return {
    kind: 'cools',
    minutes: Math.max(0, Math.ceil(exactMinutes * GUARD - 1e-9)),
    exactMinutes,
    delayMinutes,
    steps,
    fourier: exactMinutes / scale,
    properties,
    lengthM,
    aroundC,
  };
}

/**
 * The warmest place of a cooling food, °C, without the guard.
 * @param minutes from the start, ≥ 0; past the end the last coefficients stay
 */
export function warmestAt(course: CoolingCourse, fromC: number, minutes: number): number {
  let left = minutes - course.delayMinutes;
  if (left <= 0 || course.steps.length === 0) return fromC;
  for (const [index, step] of course.steps.entries()) {
    const excess = (celsius: number): number => celsius - course.aroundC;
    if (left <= step.minutes || index === course.steps.length - 1)
      return Math.min(
        fromC,
        course.aroundC + excess(step.fromC) * (excess(step.toC) / excess(step.fromC)) ** (left / step.minutes),
      );
    left -= step.minutes;
  }
  return fromC;
}
