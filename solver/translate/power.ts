/** Power: limits in watts for the home and per circuit, as cumulative resources that everything switched on draws from. */
import type { Use } from '../engine/problem.ts';
import type { Kitchen } from '../kitchen/kitchen.ts';
import type { Translation } from './legend.ts';

export function declarePower(t: Translation): void {
  for (const limit of t.kitchen.power) t.builder.resource(`power:${limit.id}`, Math.floor(limit.limitW));
}

const burnsGas = (kitchen: Kitchen, id: string): boolean =>
  (kitchen.hob.heat === 'gas' && kitchen.hob.burners.some((burner) => burner.id === id)) ||
  kitchen.ovens.some((oven) => oven.id === id && oven.kind === 'gas');

/** What an appliance draws from each limit it is on; gas draws nothing. */
export function draws(kitchen: Kitchen, applianceId: string, watts: number): readonly Use[] {
  if (watts <= 0 || burnsGas(kitchen, applianceId)) return [];
  return kitchen.power
    .filter((limit) => limit.members === undefined || limit.members.includes(applianceId))
    .map((limit) => ({ resource: `power:${limit.id}`, amount: Math.ceil(watts) }));
}

/** Watt-hours a minute, rounded: the unit in which tiers count energy. */
export const wattHoursPerMinute = (watts: number): number => Math.round(watts / 60);
