/**
 * The lumped model of an oven: one heat capacity C at one temperature T, heated by the part η of the rated power P that enters
 * the oven, and losing heat to the room in proportion to how much hotter it is:
 *
 *     C · dT/dt = η·P − U·(T − Tr)
 *
 * Everything here is that line solved, so that it can be checked by hand. With τ = C/U, what power can reach is Tr + η·P/U.
 * Speeds depend on the temperature alone. "The oven" is all that warms with it: air, walls, racks, the glass of the door.
 */
import type { Source } from '../source.ts';
import type { Working, WorkingInput } from '../working.ts';

export interface OvenModel {
  /** Heat capacity of all that warms with the oven, J/K, > 0. */
  readonly capacityJPerK: number;
  /** Heat lost for each kelvin that the oven is hotter than the room, W/K, > 0. */
  readonly lossWPerK: number;
  /** Rated power, W, ≥ 0. */
  readonly powerW: number;
  /** Part of the rated power that enters the oven, 0–1: 1 for electric elements inside, less where a flue takes its share. */
  readonly enteringShare: number;
}

export const LUMPED_MODEL: Source = {
  standing: 'derived',
  cite: "Heat balance of a body at one temperature with Newton's law of cooling (lumped capacity)",
};

/** Time constant C/U, minutes: in this time the difference to the room falls to 37 %. */
export const timeConstantMin = (model: OvenModel): number => model.capacityJPerK / model.lossWPerK / 60;

/** Heat that enters at full power, W. */
export const enteringW = (model: OvenModel): number => model.powerW * model.enteringShare;

/** The temperature that full power comes ever closer to and never passes, °C. */
export const hottestC = (model: OvenModel, roomC: number): number => roomC + enteringW(model) / model.lossWPerK;

/**
 * Minutes at full power from one temperature to another, exact.
 *
 * @param roomC temperature of the room, °C
 * @returns 0 where it is already as hot; `never` where the loss at or below `toC` reaches the power that enters
 */
export function minutesToHeat(model: OvenModel, roomC: number, fromC: number, toC: number): number | 'never' {
  if (toC <= fromC) return 0;
  const most = hottestC(model, roomC);
  return toC >= most ? 'never' : timeConstantMin(model) * Math.log((most - fromC) / (most - toC));
}

/**
 * Minutes to fall from one temperature to another, switched off and shut, exact.
 *
 * @returns 0 where it is already as cool; `never` where `toC` is not hotter than the room
 */
export function minutesToCool(model: OvenModel, roomC: number, fromC: number, toC: number): number | 'never' {
  if (toC >= fromC) return 0;
  return toC <= roomC ? 'never' : timeConstantMin(model) * Math.log((fromC - roomC) / (toC - roomC));
}

/**
 * Temperature some minutes later, °C.
 *
 * @param power `full`: at full power; `off`: switched off, door shut
 * @param minutes ≥ 0
 */
export function celsiusLater(
  model: OvenModel,
  roomC: number,
  fromC: number,
  power: 'full' | 'off',
  minutes: number,
): number {
  const towards = power === 'full' ? hottestC(model, roomC) : roomC;
  return towards + (fromC - towards) * Math.exp(-minutes / timeConstantMin(model));
}

/** Mean draw while a temperature is held, W: what is lost, over the part of the power that enters. At most the rated power. */
export const holdingDrawW = (model: OvenModel, roomC: number, celsius: number): number =>
  Math.min(model.powerW, (model.lossWPerK * Math.max(0, celsius - roomC)) / model.enteringShare);

const celsius = (symbol: string, name: string, value: number): WorkingInput => ({ symbol, name, value, unit: '°C' });

/** What a working shows of a model; `source` is of its heat capacity and loss. */
export const modelInputs = (model: OvenModel, source: Source): readonly WorkingInput[] => [
  { symbol: 'C', name: 'heat capacity of the oven', value: model.capacityJPerK, unit: 'J/K', source },
  { symbol: 'U', name: 'heat loss of the oven', value: model.lossWPerK, unit: 'W/K', source },
  { symbol: 'P', name: 'rated power', value: model.powerW, unit: 'W' },
  { symbol: 'η', name: 'part of the power that enters', value: model.enteringShare, unit: '1', source },
];

const CAUTION =
  'A model of an oven that is empty, shut and as hot throughout as its thermometer says. Measure your own oven before relying on minutes.';

/**
 * Working of `minutesToHeat`.
 * @returns null where power cannot reach the temperature
 */
export function heatUpWorking(
  model: OvenModel,
  roomC: number,
  fromC: number,
  toC: number,
  source: Source,
): Working | null {
  const value = minutesToHeat(model, roomC, fromC, toC);
  if (value === 'never') return null;
  return {
    name: `Time to heat the oven from ${fromC} to ${toC} °C`,
    value,
    unit: 'min',
    formula: 't = C/(60·U) · ln((Tr + η·P/U − T₁) / (Tr + η·P/U − T₂))',
    inputs: [
      ...modelInputs(model, source),
      celsius('Tr', 'temperature of the room', roomC),
      celsius('T₁', 'temperature before', fromC),
      celsius('T₂', 'temperature after', toC),
    ],
    source: LUMPED_MODEL,
    caution: CAUTION,
  };
}

/**
 * Working of `minutesToCool`.
 * @returns null where it never falls so low
 */
export function coolDownWorking(
  model: OvenModel,
  roomC: number,
  fromC: number,
  toC: number,
  source: Source,
): Working | null {
  const value = minutesToCool(model, roomC, fromC, toC);
  if (value === 'never') return null;
  return {
    name: `Time for the switched-off oven to fall from ${fromC} to ${toC} °C`,
    value,
    unit: 'min',
    formula: 't = C/(60·U) · ln((T₁ − Tr) / (T₂ − Tr))',
    inputs: [
      ...modelInputs(model, source).slice(0, 2),
      celsius('Tr', 'temperature of the room', roomC),
      celsius('T₁', 'temperature before', fromC),
      celsius('T₂', 'temperature after', toC),
    ],
    source: LUMPED_MODEL,
    caution: CAUTION,
  };
}

/** Working of `holdingDrawW`. */
export function holdingWorking(model: OvenModel, roomC: number, atC: number, source: Source): Working {
  return {
    name: `Mean draw of the oven while it holds ${atC} °C`,
    value: holdingDrawW(model, roomC, atC),
    unit: 'W',
    formula: 'min(P, U·(T − Tr) / η)',
    inputs: [
      ...modelInputs(model, source).slice(1),
      celsius('T', 'temperature held', atC),
      celsius('Tr', 'temperature of the room', roomC),
    ],
    source: LUMPED_MODEL,
  };
}
