/** The inner consistency of a document of any kind. */
import type { AnyDocument } from '../kinds.ts';
import { componentFindings } from './component-findings.ts';
import type { Finding } from './finding.ts';
import { kitchenFindings } from './kitchen-findings.ts';
import { rulesFindings } from './rules-findings.ts';
import { sessionFindings } from './session-findings.ts';
import { unknownIds } from './finding.ts';

/**
 * What in a document that its schema accepted names nothing or contradicts itself. Whether a plan is valid is the checker's to
 * say; here its frozen documents are read alone and together.
 */
export function findingsOf(document: AnyDocument): readonly Finding[] {
  switch (document.kind) {
    case 'kitchen':
      return kitchenFindings(document);
    case 'component':
      return componentFindings(document);
    case 'session':
      return sessionFindings(document);
    case 'safety-rules':
      return rulesFindings(document);
    case 'plan':
      return [
        ...beneath('kitchen', kitchenFindings(document.kitchen)),
        ...beneath('session', sessionFindings(document.session)),
        ...(document.rules === undefined ? [] : beneath('rules', rulesFindings(document.rules))),
        ...document.components.flatMap((component, index) =>
          beneath(`components[${index}]`, componentFindings(component)),
        ),
        ...unknownIds(
          document.session.dishes.map(({ component }) => component),
          document.components.map(({ id }) => id),
          'a component of this plan',
          ['session', 'dishes'],
        ),
        ...unknownIds(
          document.crew,
          document.session.people.map(({ id }) => id),
          'a person of the session',
          ['crew'],
        ),
      ];
  }
}

const beneath = (path: string, findings: readonly Finding[]): readonly Finding[] =>
  findings.map((finding) => ({ ...finding, path: finding.path === '' ? path : `${path}.${finding.path}` }));
