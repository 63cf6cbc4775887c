/** What a plan takes, who bears it and what sharing saved: one plan by hand, and the demo's. */
import { describe, expect, test } from 'vitest';
import type { Priced } from '../../../solver/accounts/amounts.ts';
import { accountOf, type PlanAccount } from '../../../solver/accounts/plan-account.ts';
import { holdingW, ovenHeat } from '../../../solver/heat/oven-heat.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { planSession } from '../../../solver/translate/plan-session.ts';
import { simmerWorking } from '../../../solver/water/workings.ts';
import { byId, demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { randomSession } from '../../support/random-session.ts';
import { kitchen, supper } from '../../support/supper.ts';

const figures = (amounts: readonly Priced[], of: (amount: Priced) => number): number =>
  amounts.reduce((sum, amount) => sum + of(amount), 0);

/** Sources and components sum to the total, and lines to the saving, in energy, water and money. */
function expectConserved(account: PlanAccount): void {
  for (const of of [
    (amount: Priced) => amount.electricWh,
    (amount: Priced) => amount.gasWh,
    (amount: Priced) => amount.waterMl,
    (amount: Priced) => amount.cost,
  ]) {
    const total = of(account.total);
    expect(
      figures(
        account.sources.map(({ used }) => used),
        of,
      ),
    ).toBeCloseTo(total, 6);
    expect(
      figures(
        account.components.map(({ shared }) => shared),
        of,
      ),
    ).toBeCloseTo(total, 6);
    expect(
      figures(
        account.components.map(({ alone }) => alone),
        of,
      ),
    ).toBeCloseTo(of(account.alone), 6);
    expect(
      figures(
        account.lines.map(({ saved }) => saved),
        of,
      ),
    ).toBeCloseTo(of(account.saved), 6);
    expect(of(account.alone) - total).toBeCloseTo(of(account.saved), 6);
  }
}

describe('the supper by hand', () => {
  const account = accountOf(supper);
  const source = (id: string) => byId(account.sources, id).used;
  const component = (id: string) => byId(account.components, id);
  const line = (by: string) => account.lines.find((each) => each.by === by)!;

  // The oven heats 18 °C a minute from 20 °C at 3000 W, and holds with 900 W.
  // Dial at 190 from minute 0 to 43: 170/18 = 9.444 min at full power, 33.556 min held.
  const oven = (9.4444 * 3000 + 33.5556 * 900) / 60;

  test('the oven takes 976 Wh: 9.4 min at full power and 33.6 min held', () => {
    expect(oven).toBeCloseTo(975.6, 1);
    expect(source('oven').electricWh).toBeCloseTo(oven, 1);
  });

  test('the chicken bears 60 % of a rack for 33 min of it, the squash 50 % for 11 min', () => {
    const chicken = 60 * 33;
    const squash = 50 * 11;
    expect(component('chicken').shared.wattHours).toBeCloseTo((oven * chicken) / (chicken + squash), 1);
    expect(component('squash').shared.wattHours).toBeCloseTo((oven * squash) / (chicken + squash), 1);
  });

  test('alone, chicken and squash each heat the oven to 180 °C, 9 min ahead', () => {
    // 160/18 = 8.889 min at full power; the chicken from minute 1 to 43, the squash from 5 to 25.
    const chicken = (8.8889 * 3000 + (42 - 8.8889) * 900) / 60;
    const squash = (8.8889 * 3000 + (20 - 8.8889) * 900) / 60;
    expect(component('chicken').alone.wattHours).toBeCloseTo(chicken, 1);
    expect(component('squash').alone.wattHours).toBeCloseTo(squash, 1);
    expect(line('kept-hot').saved.wattHours).toBeCloseTo(chicken + squash - oven, 1);
  });

  test('the croutons bear nothing of the oven; alone they would heat it to 100 °C for 10 min', () => {
    // 80/18 = 4.444 min at full power, on from 5 min ahead: minute 44 to 59.
    const alone = (4.4444 * 3000 + (15 - 4.4444) * 900) / 60;
    expect(component('croutons').shared.wattHours).toBe(0);
    expect(component('croutons').alone.wattHours).toBeCloseTo(alone, 1);
    expect(line('afterheat').saved.wattHours).toBeCloseTo(alone, 1);
  });

  // 3 L at 4 min/L on 2000 W: 12 min, 400 Wh; then the boil is kept from minute 13 to 35.
  const keepW = simmerWorking(kitchen, kitchen.hob.burners[0]!, kitchen.pans[0]!, true, 'boil').value;

  test('the pot of water takes 400 Wh to the boil, what it loses for 22 min, and 3 L', () => {
    expect(source('pot-water').wattHours).toBeCloseTo(400 + (keepW * 22) / 60, 3);
    expect(source('pot-water').waterMl).toBe(3000);
  });

  test('its boil is borne by volume and its keeping by minutes', () => {
    // steam: the least in the pot, 2400 mL, for 8 min; drawn: 500 mL; boiled in it: 800 mL of the insert, for 13 min.
    const keep = (keepW * 22) / 60;
    const volume = 2400 + 500 + 800;
    expect(component('greens').shared.wattHours).toBeCloseTo((400 * 2400) / volume + (keep * 8) / 21, 3);
    expect(component('millet').shared.wattHours).toBeCloseTo((400 * 500) / volume, 3);
    expect(component('pasta').shared.wattHours).toBeCloseTo((400 * 800) / volume + (keep * 13) / 21, 3);
    expect(component('millet').shared.waterMl).toBeCloseTo((3000 * 500) / volume, 6);
  });

  test('alone, greens and pasta boil 2.4 L each and the millet 0.5 L, so one boil saves 2.3 L', () => {
    const keep = (minutes: number) => (keepW * minutes) / 60;
    const alone = (2.4 * 4 * 2000) / 60 + keep(8) + (2.4 * 4 * 2000) / 60 + keep(13) + (0.5 * 4 * 2000) / 60;
    expect(line('one-boil').alone.wattHours).toBeCloseTo(alone, 3);
    expect(line('one-boil').saved.waterMl).toBeCloseTo(2400 + 2400 + 500 - 3000, 6);
  });

  test('the kettle takes 2000 W for 1 min, and half a litre', () => {
    expect(source('kettle').wattHours).toBeCloseTo(2000 / 60, 6);
    expect(source('kettle').waterMl).toBe(500);
  });

  test('the sauce boils its half litre at full power and simmers for the rest of 17 min', () => {
    // 0.5 L at 6 min/L on 1000 W: 3 min; then what the lidded saucepan loses for 14 min.
    const keep = simmerWorking(kitchen, kitchen.hob.burners[1]!, kitchen.pans[1]!, true, 'simmer').value;
    expect(source('small').wattHours).toBeCloseTo((3 * 1000 + 14 * keep) / 60, 6);
    expect(component('sauce').alone).toEqual(component('sauce').shared);
  });

  test('the greens’ 8 min of steam boil away what 1400 W over the pot’s loss evaporate, of 0.6 L to spare', () => {
    // 2000 W at 70 %; 2256 kJ/kg; 8 min is 480 s.
    const loss = keepW * 0.7;
    const steam = account.pools.find(({ kind }) => kind === 'steam')!;
    expect(steam.working.value).toBeCloseTo(((1400 - loss) / 2256) * 480, 0);
    expect(steam.text).toBe('8 min over it boil away 0.3 L at full power, of 0.6 L to spare');
    expect(steam.mind).toBeNull();
  });

  test('food without a mass is said to be reckoned as nothing', () => {
    expect(account.pools.find(({ kind }) => kind === 'dip')!.mind).toMatch(/no mass/);
  });

  test('a kilogram of cold food in 3 L of boiling water lets it fall, and is made good by the burner', () => {
    const components = supper.components.map((each) =>
      each.id === 'pasta' ? { ...each, ingredients: each.ingredients.map((one) => ({ ...one, massG: 1000 })) } : each,
    );
    const dip = accountOf({ ...supper, components }).pools.find(({ kind }) => kind === 'dip')!;
    // 80 K of a kilogram that takes 4.184 kJ/(kg·K), over what 1400 W leave beside the loss.
    expect(dip.working.value).toBeCloseTo((80 * 4184) / (1400 - keepW * 0.7) / 60, 1);
    expect(dip.mind).toBeNull();
  });

  test('money is Wh at 0.30 and mL at 4 a cubic metre', () => {
    const { electricWh, waterMl, cost } = account.total;
    expect(cost).toBeCloseTo((electricWh * 0.3) / 1000 + (waterMl * 4) / 1e6, 9);
    expect(account.total.carbonG).toBeNull();
  });

  test('a box bears a quarter of all that is packed', () => {
    expect(account.box?.boxes).toBe(4);
    expect(account.box!.each.wattHours).toBeCloseTo(account.total.wattHours / 4, 6);
  });

  test('sources, components and lines sum up', () => {
    expectConserved(account);
  });
});

test('what has an oven or a pot to itself takes alone what it took, and no line speaks of it', () => {
  const only = {
    ...supper,
    session: {
      ...supper.session,
      dishes: supper.session.dishes.filter(({ component }) => ['squash', 'greens'].includes(component)),
    },
  };
  const account = accountOf(only);
  for (const id of ['squash', 'greens'])
    expect(byId(account.components, id).alone).toEqual(byId(account.components, id).shared);
  expect(byId(account.components, 'greens').shared.waterMl).toBe(3000);
  expect(account.lines).toEqual([]);
});

describe('tariffs', () => {
  test('a gas hob and its pots are paid at the price of gas', () => {
    const gas: Plan = { ...supper, kitchen: { ...kitchen, hob: { ...kitchen.hob, heat: 'gas' } } };
    const account = accountOf(gas);
    expect(byId(account.sources, 'pot-water').used.electricWh).toBe(0);
    expect(byId(account.sources, 'pot-water').used.cost).toBeCloseTo(
      (byId(account.sources, 'pot-water').used.gasWh * 0.1) / 1000 + (3000 * 4) / 1e6,
      9,
    );
    expectConserved(account);
  });

  test('carbon is told where every source used has a factor', () => {
    const tariff = { ...kitchen.tariff, carbonGPerKWh: 200 };
    const account = accountOf({ ...supper, kitchen: { ...kitchen, tariff } });
    expect(account.total.carbonG).toBeCloseTo(account.total.electricWh * 0.2, 6);
  });
});

describe('plans of random sessions', () => {
  test('sum up, whatever is shared, and nothing in them is without a number', () => {
    let plans = 0;
    for (let seed = 0; seed < 25; seed++) {
      const outcome = planSession({ ...randomSession(seed, 1), seed: 1, effort: 10_000 });
      if (outcome.kind !== 'planned') continue;
      plans++;
      const account = accountOf(outcome.plan);
      expectConserved(account);
      expect(account.total.wattHours).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(account.alone.wattHours)).toBe(true);
    }
    expect(plans).toBeGreaterThan(18);
  });
});

describe('the demo’s one-oven plan', () => {
  const session = byId(demoSessions(), 'harbour-sunday');
  const one = byId(demoKitchens(), 'harbour-one-oven');
  const result = planSession({ session, kitchen: one, components: demoComponents(), seed: 1, effort: 400_000 });
  if (result.kind !== 'planned') throw new Error(JSON.stringify(result));
  const { plan } = result;
  const account = accountOf(plan);

  test('costs less than each component alone, and the lines say where', () => {
    expect(account.saved.wattHours).toBeGreaterThan(0);
    expect(account.saved.cost).toBeGreaterThan(0);
    expect(new Set(account.lines.map(({ by }) => by))).toEqual(new Set(['kept-hot', 'afterheat', 'one-boil']));
    expectConserved(account);
  });

  test('its oven takes full power while its line rises and its holding draw while it is level', () => {
    const [course] = plan.ovens;
    const heat = ovenHeat(byId(one.ovens, course!.oven), one.roomC);
    const off = course!.settings.at(-1)!.minute;
    let wattHours = 0;
    course!.line.forEach((point, index) => {
      const next = course!.line[index + 1];
      if (next === undefined || point.minute >= off) return;
      const minutes = next.minute - point.minute;
      const rising = next.celsius > point.celsius + 0.05;
      const level = Math.abs(next.celsius - point.celsius) <= 0.05;
      wattHours += (minutes * (rising ? heat.oven.powerW : level ? holdingW(heat, point.celsius) : 0)) / 60;
    });
    // The line has whole minutes, so the minute in which a setting is reached counts as one of full power: 43 Wh for each turn.
    const turns = course!.settings.length;
    const reckoned = byId(account.sources, course!.oven).used.electricWh;
    expect(reckoned).toBeLessThanOrEqual(wattHours + 1);
    expect(reckoned).toBeGreaterThan(wattHours - (turns * heat.oven.powerW) / 60);
  });

  test('one pot of water saves water, as most of what is boiled alone needs the least that a pot must hold', () => {
    const pots = account.lines.filter(({ by }) => by === 'one-boil');
    expect(
      figures(
        pots.map(({ saved }) => saved),
        ({ waterMl }) => waterMl,
      ),
    ).toBeGreaterThan(0);
  });

  // source: Commission Regulation (EU) No 66/2014, Annex I: an electric hob uses less than 195 Wh/kg in the standard's test
  test('its hob stays under the published 195 Wh for each kg of water, over the 99 Wh that water alone takes', () => {
    const hob = account.sanity.filter(({ unit }) => unit === 'Wh/kg');
    expect(hob.length).toBeGreaterThan(0);
    for (const { value, plausible } of hob) {
      expect(value).toBeGreaterThan(98.6);
      expect(value).toBeLessThan(195);
      expect(plausible).toBe(true);
    }
  });
});
