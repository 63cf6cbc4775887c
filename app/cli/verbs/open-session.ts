/** What the verbs that take a session share: the session, its library, the kitchens asked for, and the request. */
import type { Answer, PlanRequest } from '../../api.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import type { Library } from '../../documents/library.ts';
import type { Options } from '../arguments.ts';
import { authorityId, findNamed, kitchenIds } from '../find-documents.ts';

export interface OpenSession {
  readonly session: Session;
  readonly library: Library;
  /** Ids of the kitchens named by `--kitchen`. */
  readonly kitchens: readonly string[];
  /** The request for a kitchen; without one the session's first. */
  readonly requestFor: (kitchen?: string) => PlanRequest;
}

/** Opens the session that an argument names, or gives the faults of what was named. */
export async function openSession(subject: string, options: Options, folder: string): Promise<Answer<OpenSession>> {
  const [named, kitchens, authority] = await Promise.all([
    findNamed('session', subject, {
      folder,
      also: [...options.kitchens, ...(options.authority === undefined ? [] : [options.authority])],
      ...(options.data === undefined ? {} : { data: options.data }),
    }),
    kitchenIds(options.kitchens, folder),
    authorityId(options.authority, folder),
  ]);
  if (!named.ok || !kitchens.ok || !authority.ok)
    return {
      ok: false,
      faults: [named, kitchens, authority].flatMap((answer) => (answer.ok ? [] : answer.faults)),
    };
  const { document: session, library } = named.value;
  const { crew, intent, effort, seed } = options;
  return {
    ok: true,
    value: {
      session,
      library,
      kitchens: kitchens.value,
      requestFor: (kitchen) => ({
        session: session.id,
        ...(kitchen === undefined ? {} : { kitchen }),
        ...(crew === undefined ? {} : { crew }),
        ...(intent === undefined ? {} : { intent }),
        ...(authority.value === null ? {} : { authority: authority.value }),
        ...(effort === undefined ? {} : { effort }),
        ...(seed === undefined ? {} : { seed }),
      }),
    },
  };
}
