/** What the player chose for full hands: a click, and what a foot switch does. Remembered on this device. */
import * as v from 'valibot';
import { FOOT_ACTIONS, type FootKeys, USUAL_FOOT_KEYS } from './recordingKeys.ts';

export type DeskSettings = {
  /** A soft click when a usable take is stored. Off unless chosen: the microphone may hear it. */
  readonly hasClick: boolean;
  readonly footKeys: FootKeys;
};

export const USUAL_DESK_SETTINGS: DeskSettings = { hasClick: false, footKeys: USUAL_FOOT_KEYS };

const footAction = v.picklist(FOOT_ACTIONS);
const schema = v.object({
  hasClick: v.boolean(),
  footKeys: v.object({
    ' ': footAction,
    Enter: footAction,
    PageUp: footAction,
    PageDown: footAction,
    ArrowLeft: footAction,
    ArrowRight: footAction,
  }),
});

/** What is kept of them on the device; the usual ones where nothing is kept, or nothing that can be read. */
export function parseDeskSettings(text: string | null): DeskSettings {
  const parsed = v.safeParse(v.pipe(v.string(), v.parseJson(), schema), text);
  return parsed.success ? parsed.output : USUAL_DESK_SETTINGS;
}

export function deskSettingsToText(settings: DeskSettings): string {
  return JSON.stringify(settings);
}
