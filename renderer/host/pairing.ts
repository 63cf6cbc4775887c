/** Trades the start code in the address for the cookie, once, and takes it out of the address and the history. */
import { CODE_KEY, type Refusal } from '../../app/web/contract.ts';

export interface Paired {
  readonly ok: boolean;
  /** What to say where it is not. */
  readonly words: string;
}

/** The start code in a fragment such as `#code=…`; null where there is none. */
export function codeIn(fragment: string): string | null {
  return new URLSearchParams(fragment.replace(/^#/, '')).get(CODE_KEY);
}

export const refusalWords = async (response: Response): Promise<string> => {
  try {
    return ((await response.json()) as Refusal).error;
  } catch {
    return `The program answered ${response.status}.`;
  }
};

/**
 * @param location of the page
 * @param forget puts an address without the code in the place of this one, before anything is asked
 * @param ask as `fetch`
 */
export async function pair(
  location: Pick<Location, 'hash' | 'pathname' | 'search'>,
  forget: (address: string) => void,
  ask: typeof fetch,
): Promise<Paired> {
  const code = codeIn(location.hash);
  if (code === null) return { ok: true, words: '' };
  forget(`${location.pathname}${location.search}`);
  const response = await ask('/api/pair', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code }),
    credentials: 'same-origin',
  });
  return response.ok ? { ok: true, words: '' } : { ok: false, words: await refusalWords(response) };
}
