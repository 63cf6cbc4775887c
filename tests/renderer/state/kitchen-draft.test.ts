import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Host } from '../../../app/api.ts';
import { reckonKitchen } from '../../../app/host/reckon-kitchen.ts';
import { KitchenDraftState } from '../../../renderer/state/kitchen-draft.svelte.ts';
import type { Keeper } from '../../../renderer/state/settings.svelte.ts';
import { standInHost } from '../../support/stand-in-host.ts';
import { kitchen } from '../../support/supper.ts';

const other = { ...kitchen, id: 'other-kitchen', name: 'other kitchen' };
const kitchens = [kitchen, other];

/** The stand-in with two kitchens, which reads what it is handed as the program does. */
function opened(extra: Partial<Host> = {}, keeper: Keeper | null = null) {
  const stand = standInHost();
  const asked: string[] = [];
  const host: Host = {
    ...stand,
    kitchen: (id) => {
      asked.push(id);
      const found = kitchens.find((each) => each.id === id);
      return found === undefined ? stand.kitchen(id) : Promise.resolve({ ok: true, value: found });
    },
    kitchenFigures: (given) => Promise.resolve(reckonKitchen(given)),
    ...extra,
  };
  return { editing: new KitchenDraftState(host, keeper), saved: stand.saved, asked };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const aMomentLater = () => vi.advanceTimersByTimeAsync(1000);

describe('a kitchen that is edited', () => {
  test('is reckoned as it is opened, and anew a moment after a change', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    const before = editing.figures!;
    expect([editing.changed, editing.canUndo]).toEqual([false, false]);
    editing.set(['altitudeM'], 1524);
    expect([editing.changed, editing.figures === before]).toEqual([true, true]);
    await aMomentLater();
    // source: USDA FSIS, High Altitude Cooking: 203 °F at 5,000 ft, which are 95 °C at 1524 m (read at second hand)
    expect(before.water[0]!.working.value).toBeCloseTo(100, 0);
    expect(editing.figures!.water[0]!.working.value).toBeCloseTo(95, 0);
  });

  test('keeps an impossible number as it was typed, with its fault, and the figures of the last sound draft', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    editing.set(['roomC'], 'warm');
    await aMomentLater();
    expect(editing.draft).toMatchObject({ roomC: 'warm' });
    expect(editing.faults).toMatchObject([{ path: 'roomC', found: '"warm"' }]);
    expect(editing.figures).not.toBeNull();
    editing.set(['roomC'], 21);
    await aMomentLater();
    expect(editing.faults).toEqual([]);
  });

  test('goes back and forth by undo and redo, and a new change ends the way forth', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    editing.set(['roomC'], 22);
    editing.set(['roomC'], 24);
    editing.undo();
    expect(editing.draft!.roomC).toBe(22);
    editing.undo();
    expect([editing.draft!.roomC, editing.canUndo, editing.changed]).toEqual([20, false, false]);
    editing.redo();
    expect(editing.draft!.roomC).toBe(22);
    editing.set(['roomC'], 18);
    expect(editing.canRedo).toBe(false);
    editing.redo();
    expect(editing.draft!.roomC).toBe(18);
  });

  test('is not changed by a field that is left as it was, nor by a change that is typed back', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    editing.set(['roomC'], 20);
    expect([editing.changed, editing.canUndo]).toEqual([false, false]);
    editing.set(['roomC'], 21);
    editing.set(['roomC'], 20);
    expect([editing.changed, editing.canUndo]).toEqual([false, true]);
  });

  test('is saved as it stands, and what is typed while it is being saved is not saved yet', async () => {
    const { editing, saved } = opened();
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    const saving = editing.save();
    editing.set(['roomC'], 25);
    expect(await saving).toBe(kitchen.id);
    expect(saved).toMatchObject([{ id: kitchen.id, roomC: 23 }]);
    expect([editing.draft!.roomC, editing.changed]).toEqual([25, true]);
  });

  test('is kept where saving fails, and why is said', async () => {
    const fault = { document: 'the kitchen', path: '', found: 'a full disk', wanted: 'room', mend: 'make room' };
    const { editing } = opened({ saveKitchen: () => Promise.resolve({ ok: false, faults: [fault] }) });
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    expect(await editing.save()).toBeNull();
    expect([editing.faults, editing.changed, editing.draft!.roomC]).toEqual([[fault], true, 23]);
    expect(editing.told).toMatch(/^Not saved/);
  });

  test('is kept where the program cannot be reached, and that is said', async () => {
    const { editing } = opened({ saveKitchen: () => Promise.reject(new Error('not paired')) });
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    expect(await editing.save()).toBeNull();
    expect([editing.lost, editing.changed]).toEqual(['not paired', true]);
  });
});

describe('another kitchen', () => {
  test('leaves the one before as it was typed, names it as not saved, and finds it so again', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    await editing.open(other.id);
    expect([editing.draft!.id, editing.changed, editing.canUndo]).toEqual([other.id, false, false]);
    expect(editing.unsaved).toEqual([kitchen.id]);
    await editing.open(kitchen.id);
    expect([editing.draft!.roomC, editing.changed]).toEqual([23, true]);
    editing.undo();
    expect([editing.draft!.roomC, editing.unsaved]).toEqual([20, []]);
  });

  test('is reckoned by itself, though a change of the one before was still waiting to be', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    editing.set(['altitudeM'], 1524);
    await editing.open(other.id);
    await aMomentLater();
    expect(editing.figures!.water[0]!.working.value).toBeCloseTo(100, 0);
  });

  test('is read anew when it was not changed here, since its file may have been', async () => {
    const { editing, asked } = opened();
    await editing.open(kitchen.id);
    await editing.open(other.id);
    await editing.open(kitchen.id);
    expect(asked).toEqual([kitchen.id, other.id, kitchen.id]);
  });

  test('that cannot be read leaves the one before open, and why is said', async () => {
    const { editing } = opened();
    await editing.open(kitchen.id);
    await editing.open('nowhere');
    expect(editing.draft!.id).toBe(kitchen.id);
    expect(editing.unreadable).toMatchObject([{ document: 'kitchen nowhere' }]);
    expect(editing.faults).toEqual([]);
  });

  test('that was picked last is the one that opens, whichever is read first', async () => {
    const late = new Map<string, () => void>();
    const { editing } = opened({
      kitchen: (id) =>
        new Promise((resolve) => late.set(id, () => resolve({ ok: true, value: kitchens.find((k) => k.id === id)! }))),
    });
    const opening = [editing.open(kitchen.id), editing.open(other.id)];
    late.get(other.id)!();
    late.get(kitchen.id)!();
    await Promise.all(opening);
    expect(editing.draft!.id).toBe(other.id);
  });
});

describe('what is not saved', () => {
  const keeper = (first: string | null = null) => {
    let kept = first;
    return { getItem: () => kept, setItem: (_key: string, value: string) => void (kept = value) };
  };

  test('is there again in a window that is opened later, sound or not', async () => {
    const place = keeper();
    const { editing } = opened({}, place);
    await editing.open(kitchen.id);
    editing.set(['roomC'], 'warm');
    const { editing: later } = opened({}, place);
    expect(later.unsaved).toEqual([kitchen.id]);
    await later.open(kitchen.id);
    expect([later.draft!.roomC, later.changed]).toEqual(['warm', true]);
  });

  test('is kept no longer once it is saved', async () => {
    const place = keeper();
    const { editing } = opened({}, place);
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    await editing.save();
    expect(opened({}, place).editing.unsaved).toEqual([]);
  });

  test.each(['', 'not json', '[]', '7', '{"a":1}', '{"small-kitchen":{"saved":{},"now":{"id":"another"}}}'])(
    'is nothing where what was kept makes no sense (%s)',
    async (kept) => {
      const { editing } = opened({}, keeper(kept));
      await editing.open(kitchen.id);
      expect([editing.unsaved, editing.draft]).toEqual([[], kitchen]);
    },
  );

  test('is edited on where nothing can be kept', async () => {
    const full = {
      getItem: () => null,
      setItem: () => {
        throw new Error('no room');
      },
    };
    const { editing } = opened({}, full);
    await editing.open(kitchen.id);
    editing.set(['roomC'], 23);
    expect(editing.draft!.roomC).toBe(23);
  });
});
