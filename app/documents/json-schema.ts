/** The published JSON Schema of each kind of document, made from the schemas that read them. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { SCHEMAS, type Kind } from './kinds.ts';

/**
 * JSON Schema (draft 7) of a kind of document. What JSON Schema cannot say (a duration's exact form) is left out of it; reading a
 * document checks that too.
 */
export function jsonSchemaOf(kind: Kind): Record<string, unknown> {
  const schema = toJsonSchema(SCHEMAS[kind], { errorMode: 'ignore', target: 'draft-07' });
  return { ...schema, title: `Afterheat ${kind} document, version 1` };
}
