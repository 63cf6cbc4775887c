/** Whether a kitchen document fits together: ids told apart, measured tables in order, limits naming what is there. */
import { readingFaults } from '../../../solver/heat/oven-readings.ts';
import type { Kitchen } from '../../../solver/kitchen/kitchen.ts';
import { pathText } from '../issue-faults.ts';
import { crossed, placed, repeatedIds, unknownIds, type Finding } from './finding.ts';

/** Findings of a kitchen that its schema accepted; empty: it fits together. */
export function kitchenFindings(kitchen: Kitchen): readonly Finding[] {
  const electric = [
    ...kitchen.ovens,
    ...kitchen.appliances,
    ...kitchen.hob.burners,
    ...(kitchen.kettle === undefined ? [] : [kitchen.kettle]),
  ].map(({ id }) => id);
  return [
    ...repeatedIds([
      ...placed(kitchen.ovens, 'ovens'),
      ...kitchen.ovens.flatMap((oven, index) => placed(oven.racks, 'ovens', index, 'racks')),
      ...placed(kitchen.appliances, 'appliances'),
      ...placed(kitchen.hob.burners, 'hob', 'burners'),
      ...(kitchen.kettle === undefined ? [] : [{ id: kitchen.kettle.id, path: ['kettle'] }]),
      ...placed(kitchen.pans, 'pans'),
      ...placed(kitchen.trays, 'trays'),
      ...placed(kitchen.boards, 'boards'),
      ...placed(kitchen.bowls, 'bowls'),
      ...placed(kitchen.tools, 'tools'),
    ]),
    ...repeatedIds(placed(kitchen.power, 'power')),
    ...kitchen.power.flatMap((limit, index) =>
      unknownIds(limit.members, electric, 'an oven, burner, kettle or appliance of this kitchen', [
        'power',
        index,
        'members',
      ]),
    ),
    ...kitchen.hob.burners.flatMap((burner, index) =>
      crossed(burner.leastPanCm, burner.mostPanCm, 'cm', ['hob', 'burners', index, 'leastPanCm']),
    ),
    ...kitchen.ovens.flatMap((oven, index) => [
      ...crossed(oven.dial.leastC, oven.dial.mostC, '°C', ['ovens', index, 'dial', 'leastC']),
      ...tableFindings(oven.heating ?? [], 'rise', ['ovens', index, 'heating']),
      ...tableFindings(oven.cooling ?? [], 'fall', ['ovens', index, 'cooling']),
      ...readingFaults(oven.readings ?? {}, kitchen.roomC, oven).map((fault) => ({
        ...fault,
        path: `${pathText(['ovens', index, 'readings'])}.${fault.path}`,
      })),
    ]),
    ...kitchen.pans.flatMap((pan, index) =>
      (pan.staysHot ?? []).flatMap((row, at, rows) =>
        at > 0 && row.ml <= rows[at - 1]!.ml
          ? [
              {
                path: pathText(['pans', index, 'staysHot', at, 'ml']),
                found: `${row.ml} mL after ${rows[at - 1]!.ml} mL`,
                wanted: 'volumes that rise from row to row',
                mend: 'put the rows in order of their volume',
              },
            ]
          : [],
      ),
    ),
  ];
}

interface Row {
  readonly minutes: number;
  readonly celsius: number;
}
function tableFindings(
  rows: readonly Row[],
  course: 'rise' | 'fall',
  path: readonly (string | number)[],
): readonly Finding[] {
  return rows.flatMap((row, index) => {
    const before = rows[index - 1];
    if (before === undefined) return [];
    const findings: Finding[] = [];
    if (row.minutes <= before.minutes)
      findings.push({
        path: pathText([...path, index, 'minutes']),
        found: `${row.minutes} minutes after ${before.minutes} minutes`,
        wanted: 'minutes that rise from reading to reading',
        mend: 'put the readings in order of their minutes',
      });
    if (course === 'rise' ? row.celsius < before.celsius : row.celsius > before.celsius)
      findings.push({
        path: pathText([...path, index, 'celsius']),
        found: `${row.celsius} °C after ${before.celsius} °C`,
        wanted: `temperatures that ${course}`,
        mend: 'correct the reading',
      });
    return findings;
  });
}
