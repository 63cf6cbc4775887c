/** What a user reads off an oven's thermometer, and the readings that cannot be. */
import type { InputFault } from '../kitchen/fault.ts';

/** Minutes from cold at full power to a temperature. */
export interface HeatReading {
  readonly minutes: number;
  readonly celsius: number;
}
/** Temperature some minutes after switching off at `fromC`, door shut. */
export interface OffReading {
  readonly fromC: number;
  readonly minutes: number;
  readonly celsius: number;
}
export interface OvenReadings {
  readonly toHeat?: readonly HeatReading[] | undefined;
  readonly afterOff?: readonly OffReading[] | undefined;
}

/** Readings of both kinds, none of them impossible. */
export interface SoundReadings {
  readonly toHeat: readonly HeatReading[];
  readonly afterOff: readonly OffReading[];
}

/** A fault of a reading; its path is within the readings, such as `toHeat[1].celsius`. */
export type ReadingFault = Omit<InputFault, 'document'>;

/** Heat capacity of dry air near room temperature, J per litre and K: 1.2 kg/m³ × 1.006 kJ/(kg·K), common handbook values. */
const AIR_J_PER_L_K = 1.2;

/** What is known of the oven beside the readings. */
export interface ReadOven {
  readonly volumeL: number;
  readonly powerW: number;
}

function heatFault(reading: HeatReading, path: string, roomC: number, oven: ReadOven): ReadingFault | null {
  const { minutes, celsius } = reading;
  if (celsius <= roomC)
    return {
      path: `${path}.celsius`,
      found: `${celsius} °C in a heated oven`,
      wanted: `a temperature above the room's ${roomC} °C`,
      mend: 'correct the reading, or the temperature of the room',
    };
  if (minutes <= 0)
    return {
      path: `${path}.minutes`,
      found: `${celsius} °C after ${minutes} minutes`,
      wanted: 'some minutes of heating from cold',
      mend: 'write the minutes from switching on to this temperature',
    };
  // Not even the air in it could be heated so fast.
  if (oven.powerW * minutes * 60 < AIR_J_PER_L_K * oven.volumeL * (celsius - roomC))
    return {
      path: `${path}.minutes`,
      found: `${celsius} °C after ${minutes} minutes with ${oven.powerW} W`,
      wanted: 'a time in which this power can heat at least the air in the oven',
      mend: 'correct the minutes, or the rated power',
    };
  return null;
}

function offFault(reading: OffReading, path: string, roomC: number): ReadingFault | null {
  const { fromC, minutes, celsius } = reading;
  if (fromC <= roomC)
    return {
      path: `${path}.fromC`,
      found: `an oven switched off at ${fromC} °C`,
      wanted: `a temperature above the room's ${roomC} °C`,
      mend: 'write the temperature at which it was switched off',
    };
  if (minutes <= 0)
    return {
      path: `${path}.minutes`,
      found: `${minutes} minutes after switching off`,
      wanted: 'some minutes after switching off, such as 20',
      mend: 'wait some minutes and read again',
    };
  if (celsius >= fromC)
    return {
      path: `${path}.celsius`,
      found: `${celsius} °C ${minutes} minutes after switching off at ${fromC} °C`,
      wanted: `less than ${fromC} °C: a switched-off oven falls`,
      mend: 'correct the reading; a thermostat overshoots, so read only once it has settled',
    };
  if (celsius <= roomC)
    return {
      path: `${path}.celsius`,
      found: `${celsius} °C ${minutes} minutes after switching off`,
      wanted: `more than the room's ${roomC} °C, which a shut oven falls to and never below`,
      mend: 'correct the reading, or the temperature of the room, or read sooner',
    };
  return null;
}

/** A later reading of one course that contradicts an earlier one. */
function orderFaults<R extends HeatReading>(
  list: readonly R[],
  alike: (a: R, b: R) => boolean,
  contradicts: (earlier: R, later: R) => boolean,
  told: (earlier: R, later: R) => Omit<ReadingFault, 'path'>,
  path: string,
): readonly (ReadingFault & { readonly index: number })[] {
  return list.flatMap((later, index) => {
    const earlier = list.find(
      (each) => each !== later && alike(each, later) && each.minutes < later.minutes && contradicts(each, later),
    );
    return earlier === undefined ? [] : [{ index, path: `${path}[${index}].celsius`, ...told(earlier, later) }];
  });
}

const plain = ({ path, found, wanted, mend }: ReadingFault): ReadingFault => ({ path, found, wanted, mend });

function judge(
  readings: OvenReadings,
  roomC: number,
  oven: ReadOven,
): { readonly faults: readonly ReadingFault[]; readonly sound: SoundReadings } {
  const { toHeat = [], afterOff = [] } = readings;
  const heat = toHeat.map((reading, index) => heatFault(reading, `toHeat[${index}]`, roomC, oven));
  const off = afterOff.map((reading, index) => offFault(reading, `afterOff[${index}]`, roomC));
  const risen = orderFaults(
    toHeat,
    () => true,
    (earlier, later) => later.celsius <= earlier.celsius,
    (earlier, later) => ({
      found: `${later.celsius} °C after ${later.minutes} minutes, and ${earlier.celsius} °C after ${earlier.minutes}`,
      wanted: 'temperatures that rise with the minutes, at full power',
      mend: 'correct one of the two; leave out what was read once the thermostat had reached its setting',
    }),
    'toHeat',
  );
  const fallen = orderFaults(
    afterOff,
    (a, b) => a.fromC === b.fromC,
    (earlier, later) => later.celsius >= earlier.celsius,
    (earlier, later) => ({
      found: `${later.celsius} °C after ${later.minutes} minutes, and ${earlier.celsius} °C after ${earlier.minutes}`,
      wanted: 'temperatures that fall with the minutes',
      mend: 'correct one of the two',
    }),
    'afterOff',
  );
  const soundHeat = (index: number): boolean => heat[index] === null && risen.every((each) => each.index !== index);
  const soundOff = (index: number): boolean => off[index] === null && fallen.every((each) => each.index !== index);
  return {
    faults: [
      ...heat.filter((fault) => fault !== null),
      ...off.filter((fault) => fault !== null),
      ...risen.filter(({ index }) => heat[index] === null).map(plain),
      ...fallen.filter(({ index }) => off[index] === null).map(plain),
    ],
    sound: {
      toHeat: toHeat.filter((_, index) => soundHeat(index)),
      afterOff: afterOff.filter((_, index) => soundOff(index)),
    },
  };
}

/**
 * Readings that contradict physics or each other, all at once.
 *
 * @param roomC temperature of the room, °C
 * @returns empty where all can be
 */
export const readingFaults = (readings: OvenReadings, roomC: number, oven: ReadOven): readonly ReadingFault[] =>
  judge(readings, roomC, oven).faults;

/** The readings that have no fault. */
export const soundReadings = (readings: OvenReadings, roomC: number, oven: ReadOven): SoundReadings =>
  judge(readings, roomC, oven).sound;
