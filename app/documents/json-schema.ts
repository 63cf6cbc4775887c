/** The published JSON Schema of each kind of document, made from the schemas that read them. */
import { toJsonSchema } from '@valibot/to-json-schema';
import { Duration } from '../../solver/kitchen/values.ts';
import { SCHEMAS, type Kind } from './kinds.ts';

const [, durationCheck] = Duration.pipe;

/**
 * JSON Schema (draft 7) of a kind of document. A duration has its format; whether names lead anywhere and spans are in order is
 * checked only when a document is read.
 */
export function jsonSchemaOf(kind: Kind): Record<string, unknown> {
  const schema = toJsonSchema(SCHEMAS[kind], {
    target: 'draft-07',
    overrideAction: ({ valibotAction, jsonSchema }) =>
      valibotAction === durationCheck ? { ...jsonSchema, format: 'duration' } : undefined,
  });
  return { ...schema, title: `Afterheat ${kind} document, version 1` };
}
