import { expect, test } from 'vitest';
import { jsonSchemaOf } from '../../../app/documents/json-schema.ts';
import { KINDS } from '../../../app/documents/kinds.ts';

test.each(KINDS)('the published schema of a %s names its kind and version, and allows no other keys', (kind) => {
  expect(jsonSchemaOf(kind)).toMatchObject({
    $schema: 'http://json-schema.org/draft-07/schema#',
    type: 'object',
    additionalProperties: false,
    properties: { kind: { const: kind }, version: { const: 1 } },
  });
});

test('durations, limits and lists of values are in the published schema', () => {
  const session = jsonSchemaOf('session') as { properties: Record<string, unknown> };
  expect(session.properties['longest']).toMatchObject({ type: 'string', format: 'duration' });
  expect(session.properties['intent']).toMatchObject({ enum: ['soonest', 'freshest', 'thriftiest', 'calmest'] });
  expect(session.properties['people']).toMatchObject({ type: 'array', minItems: 1 });
});
