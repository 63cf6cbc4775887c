/** Minutes and names of a session in a cook's words. */
import type { Session } from '../kitchen/session.ts';
import { durationMinutes } from '../kitchen/values.ts';

/** `90` is "1 h 30 min". */
export function minutesInWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** The clock at an offset from the session's start, on days of 24 hours: `18:45`. */
export function clockAt(session: Pick<Session, 'start'>, offset: string): string {
  const { local } = session.start;
  const at = Number(local.slice(11, 13)) * 60 + Number(local.slice(14, 16)) + Math.round(durationMinutes(offset));
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(at / 60) % 24)}:${two(at % 60)}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
