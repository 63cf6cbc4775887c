/** The names by which lags of the problem refer back to what the user asked for. One place, for who writes them and who looks them up. */

interface Named {
  readonly name: string;
}

export const orderName = (after: { readonly step: Named; readonly component: Named }, before: string): string =>
  `${after.step.name} (${after.component.name}) follows ${before}`;

export const aheadName = (ahead: Named): string => `${ahead.name} the day before lasts its time`;

export const fridgeName = (component: Named, minutes: number): string =>
  `${component.name} is in the fridge within ${minutes} min`;

/** Asked by the safety rules, whatever the component says. */
export const fridgeRuleName = (component: Named): string =>
  `${component.name} is in the fridge in time after the heat, as the safety rules ask`;

export const coolingRuleName = (component: Named): string => `${component.name} cools in time, as the safety rules ask`;

export const restName = ({ step, component }: { readonly step: Named; readonly component: Named }): string =>
  `${component.name} rests after ${step.name}, as the safety rules ask`;

export const tableName = (component: Named): string => `${component.name} is on the table in time`;

export const byTableName = (step: Named, component: Named): string =>
  `${step.name} (${component.name}) is done by table time`;

/** @param index of the pin in the session, from 0 */
export const pinName = (index: number, pin: { readonly component: string; readonly step: string }): string =>
  `pin ${index + 1}: ${pin.component}/${pin.step}`;

export const hotHoldName = (step: Named): string => `${step.name} is not kept hot too long`;

export const preheatName = (oven: Named, step: Named): string => `${oven.name} is hot before ${step.name}`;

/** @param task that holds the place in the oven */
export const afterheatName = (task: string): string => `${task} is in the afterheat`;

export const poolName = (pool: Named): string => `${pool.name} is used only while it is hot`;

/** Whether a requirement keeps food safe, so that it is the last to be let go where not every limit can be kept. */
export const guardsFood = (requirement: string): boolean =>
  /, as the safety rules ask$| is in the fridge within \d+ min$| is not kept hot too long$/.test(requirement);
