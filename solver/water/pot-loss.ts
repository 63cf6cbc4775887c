/** What a pot of hot water loses to the room, lid on or off, on the heat or beside it. */
import type { Kitchen } from '../kitchen/kitchen.ts';
import { airPressure, boilingPointC } from './boiling-point.ts';
import type { Pot } from './pot.ts';
import { dryLossWPerM2, wetLoss, type Air } from './surface-loss.ts';

/** Of cold tap water, °C, where the kitchen does not say. The standard test of hobs starts from it. */
export const TAP_C = 15;

/** What is around the pots of a kitchen. */
export interface Surroundings extends Air {
  readonly tapC: number;
  /** °C at which water boils there. */
  readonly boilsC: number;
}

export const surroundingsOf = (kitchen: Pick<Kitchen, 'roomC' | 'altitudeM' | 'tapC'>): Surroundings => ({
  roomC: kitchen.roomC,
  kPa: airPressure(kitchen.altitudeM ?? 0),
  tapC: kitchen.tapC ?? TAP_C,
  boilsC: boilingPointC(kitchen.altitudeM ?? 0),
});

export interface PotLoss {
  /** W in all. */
  readonly watts: number;
  /** Of these, W that leave with vapour. */
  readonly evaporation: number;
  /** Vapour, kg/s. */
  readonly vapour: number;
}

/**
 * Loss of a pot, everything inside it and its metal at one temperature. Its whole wall is reckoned as hot, with the vapour behind
 * it; under a lid the vapour runs back, and the lid loses as a dry surface. So a lid never costs.
 *
 * @param waterC °C
 * @param lidded whether the lid is on
 * @param onHeat on a burner its bottom loses nothing; off the heat the bottom counts like a wall
 * @see NATURAL_CONVECTION and MASS_TRANSFER in sources.ts
 */
export function potLoss(pot: Pot, waterC: number, air: Air, lidded: boolean, onHeat: boolean): PotLoss {
  const lengthM = pot.acrossM / 4;
  const wall = dryLossWPerM2(waterC, pot.wallM, air, 'side') * (pot.wallM2 + (onHeat ? 0 : pot.topM2));
  if (lidded) return { watts: wall + dryLossWPerM2(waterC, lengthM, air, 'up') * pot.topM2, evaporation: 0, vapour: 0 };
  const top = wetLoss(waterC, lengthM, air);
  return {
    watts: wall + (top.convection + top.radiation + top.evaporation) * pot.topM2,
    evaporation: top.evaporation * pot.topM2,
    vapour: top.vapour * pot.topM2,
  };
}
