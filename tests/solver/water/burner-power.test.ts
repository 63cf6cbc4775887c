import { expect, test } from 'vitest';
import { burnerWatts, SIMMER_SHARE } from '../../../solver/water/burner-power.ts';
import { keepDrawW } from '../../../solver/water/simmer.ts';
import { smallKitchen } from '../../support/documents.ts';

const kitchen = smallKitchen();
const strong = kitchen.hob.burners[0]!;

test('a burner at full power is reckoned with all of it, one that simmers with a share', () => {
  const small = { id: 'small', name: 'small pan', volumeMl: 1000, acrossCm: strong.leastPanCm, lid: true };
  const roomy = { ...kitchen, pans: [small] };
  expect(burnerWatts(roomy, strong, 'full')).toBe(strong.powerW);
  expect(burnerWatts(roomy, strong, 'simmer')).toBe(Math.ceil(strong.powerW * SIMMER_SHARE));
});

test('no less is kept free than a wide open pan draws in the mean on a weak burner', () => {
  const weak = { ...strong, powerW: 600 };
  const wide = { id: 'wide', name: 'wide pan', volumeMl: 9000, acrossCm: strong.mostPanCm, lid: false };
  const crowded = { ...kitchen, pans: [wide], hob: { ...kitchen.hob, burners: [weak] } };
  const mean = keepDrawW(crowded, weak, wide, false, 'simmer');
  expect(mean).toBeGreaterThan(weak.powerW * SIMMER_SHARE);
  expect(burnerWatts(crowded, weak, 'simmer')).toBe(Math.ceil(mean));
});
