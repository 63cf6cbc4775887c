/** Rule 9, toxins: food that holds one soaks long enough, its water is poured away, and it then boils long enough. */
import type { Component, Ingredient } from '../kitchen/component.ts';
import { toxinRule } from '../safety/limits.ts';
import { boilMinutes, usesOfPart } from './boiling.ts';
import { called, type PieceReading, type Reading, type StepReading } from './reading.ts';
import { told } from './safety-told.ts';
import type { Violation } from './violation.ts';

const of = (reading: Reading, component: Component, id: string | undefined): readonly StepReading[] =>
  reading.steps.filter(
    ({ instance, pieces }) => pieces.length > 0 && instance.component.id === component.id && instance.step.id === id,
  );

/** When the soak of an ingredient ends, and how long it was, minutes; null: none is planned. */
function soakOf(
  reading: Reading,
  component: Component,
  id: string | undefined,
): { end: number; minutes: number } | null {
  const day = reading.plan.ahead.find((each) => each.component === component.id && each.step === id);
  if (day !== undefined) return { end: day.until, minutes: day.until - day.start - day.handsOnMinutes };
  const [step] = of(reading, component, id);
  if (step === undefined) return null;
  const waits = step.pieces.flatMap(({ main }) => main.filter(({ hands }) => hands === 'off'));
  return { end: step.end, minutes: Math.max(0, ...waits.map(({ start, end }) => end - start)) };
}

/** Minutes that a piece keeps its water at the boil at a stretch. */
function atTheBoil(piece: PieceReading, reading: Reading): number {
  const lengths = (piece.way?.parts ?? []).map((part, index): number => {
    const span = piece.spans?.[index];
    if (part.hands === 'on' || span === undefined) return 0;
    const overHeat = usesOfPart(piece, index, 'burner', reading).some(
      ({ need }) => need.use === 'burner' && need.heat === 'full',
    );
    const inPool = piece.uses.some(({ need }) => need.use === 'pool' && need.how === 'boil');
    return overHeat || inPool ? span.end - span.start - boilMinutes(piece, index, part, reading) : 0;
  });
  return Math.max(0, ...lengths);
}

function checkToxin(reading: Reading, component: Component, { name, toxin }: Ingredient): readonly Violation[] {
  const rule = toxin === undefined ? null : toxinRule(reading.rules, toxin.kind);
  if (toxin === undefined || rule === null) return [];
  const soak = soakOf(reading, component, toxin.soak);
  const drains = of(reading, component, toxin.drain);
  const boils = of(reading, component, toxin.boil);
  const violations: Violation[] = [];
  const say = (message: string, steps: readonly StepReading[], minute: number): void => {
    violations.push(
      told(
        message,
        steps.flatMap(({ pieces }) => pieces.map(({ planned }) => planned.id)),
        minute,
        'toxin',
      ),
    );
  };
  if (rule.soakMinutes > 0) {
    if (soak === null || soak.minutes < rule.soakMinutes)
      say(
        `${component.name}: the ${name} soak for ${soak === null ? 'no time at all' : `${soak.minutes} min`}, and the safety rules ask for ${rule.soakMinutes} min (${rule.name}).`,
        boils,
        soak?.end ?? 0,
      );
    const early = boils.find(
      ({ start }) => !drains.some(({ start: from, end }) => from >= (soak?.end ?? 0) && end <= start),
    );
    if (early !== undefined)
      say(
        `${component.name}: the ${name} are boiled without their soaking water being poured away first (${rule.name}).`,
        [early],
        early.start,
      );
  }
  if (boils.length === 0) say(`${component.name}: the ${name} are never boiled (${rule.name}).`, [], 0);
  for (const boil of boils) {
    const minutes = Math.max(0, ...boil.pieces.map((piece) => atTheBoil(piece, reading)));
    if (minutes < rule.boilMinutes)
      say(
        `${called(boil.pieces[0]!.planned)} keeps the ${name} at the boil for ${Math.floor(minutes)} min, and the safety rules ask for ${rule.boilMinutes} min (${rule.name}).`,
        [boil],
        boil.end,
      );
  }
  return violations;
}

export const checkToxins = (reading: Reading): readonly Violation[] =>
  reading.dishes.flatMap(({ component }) =>
    component.ingredients.flatMap((ingredient) => checkToxin(reading, component, ingredient)),
  );
