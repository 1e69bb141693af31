import * as v from 'valibot';

/** @throws {TypeError} naming the part of the message that does not fit */
export function checkedMessage<Schema extends v.GenericSchema>(schema: Schema, data: unknown): v.InferOutput<Schema> {
  const result = v.safeParse(schema, data);
  if (result.success) return result.output;
  const issue = result.issues[0];
  throw new TypeError(`message does not fit at ${v.getDotPath(issue) ?? 'its top'}: ${issue.message}`);
}
