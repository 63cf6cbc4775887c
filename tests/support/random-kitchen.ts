/** Random kitchens; every number is invented, within what a home has. */
import type { Burner, Kitchen, Oven, Pan } from '../../solver/kitchen/kitchen.ts';
import type { Seeded } from './seeded.ts';

/** Names for the things of a list: `pan-1`, `pan-2`… */
const several = <T>(count: number, make: (index: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));

function oven(chance: Seeded, index: number, racks: number): Oven {
  const slow = chance.pick([0.6, 0.8, 1, 1.3]);
  const heating: readonly (readonly [number, number])[] = [
    [0, 20],
    [4, 100],
    [8, 160],
    [12, 200],
    [17, 230],
    [22, 250],
  ];
  const cooling: readonly (readonly [number, number])[] = [
    [0, 250],
    [6, 200],
    [14, 160],
    [26, 120],
    [50, 80],
    [120, 30],
  ];
  const curve = (points: readonly (readonly [number, number])[], factor: number) =>
    points.map(([minutes, celsius]) => ({ minutes: Math.round(minutes * factor * 10) / 10, celsius }));
  const facts = {
    id: `oven-${index + 1}`,
    name: `oven ${index + 1}`,
    volumeL: 60,
    powerW: chance.pick([1800, 2400, 3000]),
    holdingW: 800,
    functions: chance.chance(0.7) ? ['conventional' as const, 'fan' as const] : ['conventional' as const],
    dial: { leastC: 50, mostC: 250, stepC: chance.pick([5, 10, 10, 25]) },
    racks: several(racks, (rack) => ({ id: `rack-${index + 1}-${rack + 1}`, name: `rack ${rack + 1}` })),
  };
  const tables = { heating: curve(heating, slow), cooling: curve(cooling, chance.pick([0.7, 1, 1.5])) };
  // Some kitchens tell their ovens by a few readings, and of some second oven nothing.
  if (slow === 0.8)
    return {
      ...facts,
      readings: { toHeat: tables.heating.slice(2, 4), afterOff: [{ fromC: 250, ...tables.cooling[3]! }] },
    };
  return slow === 1.3 && index > 0 ? facts : { ...facts, ...tables };
}

function burner(chance: Seeded, index: number): Burner {
  const large = index % 2 === 0;
  const lidded = chance.pick([3, 4, 5.5]);
  return {
    id: `burner-${index + 1}`,
    name: `burner ${index + 1}`,
    leastPanCm: large ? 16 : 10,
    mostPanCm: large ? 30 : 20,
    powerW: large ? 2000 : 1200,
    efficiency: 0.7,
    boilMinutesPerLitre: { lidded, open: lidded * 1.3 },
  };
}

/** The first pan fits every pool; others may be too small for some dishes. */
function pan(chance: Seeded, index: number): Pan {
  const pot = index === 0;
  return {
    id: `pan-${index + 1}`,
    name: `pan ${index + 1}`,
    volumeMl: pot ? 6000 : chance.pick([1500, 2500, 4000]),
    acrossCm: pot ? 22 : chance.pick([16, 18, 20]),
    lid: pot || chance.chance(0.7),
    ...(pot || chance.chance(0.3)
      ? {
          insertMl: 2500,
          tiers: chance.int(1, 2),
          staysHot: [
            { ml: 1000, minutes: 12 },
            { ml: 5000, minutes: 30 },
          ],
        }
      : {}),
  };
}

/** @param size 1: a small home; larger: more of everything */
export function randomKitchen(chance: Seeded, size: number): Kitchen {
  const ovens = chance.chance(0.15) ? 2 : 1;
  const burners = chance.int(2, 4);
  const heat = chance.pick(['gas', 'ceramic', 'induction'] as const);
  const thing = (kind: string) => (index: number) => ({ id: `${kind}-${index + 1}`, name: `${kind} ${index + 1}` });
  const kitchen: Kitchen = {
    kind: 'kitchen',
    version: 1,
    id: 'random-kitchen',
    name: 'Random kitchen (invented)',
    roomC: 20,
    ovens: several(ovens, (index) => oven(chance, index, chance.int(1, 3))),
    appliances: chance.chance(0.4)
      ? [{ id: 'microwave', name: 'microwave', does: 'microwave', powerW: 1000, places: 1 }]
      : [],
    hob: { heat, burners: several(burners, (index) => burner(chance, index)) },
    ...(chance.chance(0.8)
      ? { kettle: { id: 'kettle', name: 'kettle', mostMl: 1700, powerW: 2200, minutesPerLitre: 2.5 } }
      : {}),
    pans: several(2 + chance.int(0, 1 + size), (index) => pan(chance, index)),
    trays: several(chance.int(1, 1 + size), thing('tray')),
    boards: several(chance.int(1, 2), thing('board')),
    bowls: several(chance.int(1, 2 + size), (index) => ({ ...thing('bowl')(index), volumeMl: 3000 })),
    tools: several(chance.int(1, 2), (index) => ({ ...thing('knife')(index), kind: 'knife' })),
    sink: { places: 1 },
    resting: { places: chance.int(2, 5) },
    cooling: { places: chance.int(2, 6) },
    drying: { places: 4 },
    fridgeL: 200,
    freezerL: 80,
    washing: { board: 1.5, pan: 2, tray: 2, bowl: 1, tool: 0.5, hands: chance.pick([0.5, 1]) },
    power: [],
    tariff: { currency: 'EUR', electricityPerKWh: 0.3, gasPerKWh: 0.1, waterPerM3: 4 },
  };
  if (chance.chance(0.4))
    kitchen.power.push({ id: 'home', name: 'the home', limitW: chance.pick([4600, 5750, 7400, 9000]) });
  if (chance.chance(0.2))
    kitchen.power.push({ id: 'left', name: 'left half of the hob', limitW: 3000, members: ['burner-1', 'burner-2'] });
  return kitchen;
}
