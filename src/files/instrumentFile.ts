/** The little about an instrument that the judgement of its drift can use, from JSON. */
import * as v from 'valibot';
import { type Compass, parseCompass } from '../piano/compass.ts';
import { nameToMidi } from '../piano/note.ts';

export type InstrumentFile = {
  readonly compass: Compass | null;
  readonly bassBridgeTopMidi: number | null;
  readonly strutsAfterMidi: readonly number[];
};

const note = v.pipe(
  v.string(),
  v.check((name) => nameToMidi(name) !== undefined, 'has to be a note name such as E2'),
);

const InstrumentSchema = v.object({
  compass: v.optional(
    v.pipe(
      v.string(),
      v.check((text) => parseCompass(text) !== undefined, 'has to be two notes as in A0-C8'),
    ),
  ),
  bassBridgeTop: v.optional(v.nullable(note)),
  strutsAfter: v.optional(v.array(note)),
});

export function readInstrumentFile(
  text: string,
): { readonly ok: true; readonly instrument: InstrumentFile } | { readonly ok: false; readonly message: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return {
      ok: false,
      message: 'is not JSON; it has to look like {"compass": "A0-C8", "bassBridgeTop": "E2", "strutsAfter": ["E2"]}',
    };
  }
  if (Array.isArray(json)) return { ok: false, message: 'is a list; it has to be one object in braces' };
  const parsed = v.safeParse(InstrumentSchema, json);
  if (!parsed.success) {
    const [issue] = parsed.issues;
    return { ok: false, message: `${v.getDotPath(issue) ?? 'the whole'}: ${issue.message}` };
  }
  const { compass, bassBridgeTop, strutsAfter } = parsed.output;
  return {
    ok: true,
    instrument: {
      compass: compass === undefined ? null : (parseCompass(compass) ?? null),
      bassBridgeTopMidi: bassBridgeTop ? (nameToMidi(bassBridgeTop) ?? null) : null,
      strutsAfterMidi: (strutsAfter ?? []).flatMap((name) => nameToMidi(name) ?? []),
    },
  };
}
