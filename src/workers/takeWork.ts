/** What a take worker can be asked, and what it answers: measuring, turning sound into stored bytes and back, a spectrum to look at. */
import type { SpectrumPoint, SpectrumRequest } from '../analysis/signal/levelSpectrum.ts';
import type { TakeSound } from '../piano/instrument.ts';
import type { StringPosition, TakeOutcome } from '../piano/reading.ts';
import type { SegmentToMeasure } from './listeningMessages.ts';

export type MeasureWork = {
  readonly kind: 'measure';
  readonly segment: SegmentToMeasure;
  readonly expectedMidi: number | null;
};
export type EncodeWork = {
  readonly kind: 'encode';
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
};
export type DecodeWork = { readonly kind: 'decode'; readonly bytes: Uint8Array<ArrayBuffer> };
export type MeasureAgainWork = {
  readonly kind: 'measure-again';
  readonly sound: Pick<TakeSound, 'bytes' | 'onsetIndex' | 'startS'>;
  readonly pitchStandardHz: number;
  readonly stringPosition: StringPosition;
  /** The note that the take is of: it stays that note. */
  readonly midi: number;
  readonly hasHole: boolean;
};
export type SpectrumWork = {
  readonly kind: 'spectrum';
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  readonly request: SpectrumRequest;
};
export type TakeWork = MeasureWork | EncodeWork | DecodeWork | MeasureAgainWork | SpectrumWork;

export type MeasuredSegment = { readonly outcome: TakeOutcome; readonly hasHole: boolean };
export type PlainSound = { readonly samples: Float32Array<ArrayBuffer>; readonly sampleRateHz: number };

export type TakeResult<Work extends TakeWork> = Work extends EncodeWork
  ? Uint8Array<ArrayBuffer>
  : Work extends DecodeWork
    ? PlainSound
    : Work extends MeasureAgainWork
      ? TakeOutcome
      : Work extends SpectrumWork
        ? readonly SpectrumPoint[]
        : MeasuredSegment;

export type TakeRequest =
  /** Requests come through this port too. */
  | { readonly kind: 'serve'; readonly port: MessagePort }
  | { readonly kind: 'work'; readonly number: number; readonly work: TakeWork };

export type TakeAnswer =
  | { readonly kind: 'done'; readonly number: number; readonly result: TakeResult<TakeWork> }
  | { readonly kind: 'failed'; readonly number: number; readonly detail: string };
