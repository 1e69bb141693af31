/** What is known of the room before the first take: the quiet, and the loudest blow so far. */
import type { QuietRoom } from '../analysis/signal/quietRoom.ts';
import type { Blow } from '../survey/roomAdvice.ts';

export type RoomState = {
  readonly quiet: QuietRoom | null;
  readonly blow: Blow | null;
  /** The level told last: a strike is noticed a moment after its peak was. */
  readonly lastLevel: Blow | null;
};

export type RoomEvent =
  | { readonly kind: 'quiet'; readonly quiet: QuietRoom }
  | { readonly kind: 'level'; readonly level: Blow }
  | { readonly kind: 'strike' };

export const UNHEARD_ROOM: RoomState = { quiet: null, blow: null, lastLevel: null };

export function nextRoom(room: RoomState, event: RoomEvent): RoomState {
  switch (event.kind) {
    case 'quiet':
      return { ...room, quiet: event.quiet };
    case 'strike':
      // A device that begins to deliver sounds like a strike.
      if (room.quiet === null) return room;
      return { ...room, blow: louder(room.blow, room.lastLevel) };
    case 'level':
      return { ...room, lastLevel: event.level, blow: room.blow && louder(room.blow, event.level) };
  }
}

function louder(a: Blow | null, b: Blow | null): Blow | null {
  if (a === null || b === null) return a ?? b;
  return { peakDbfs: Math.max(a.peakDbfs, b.peakDbfs), isClipped: a.isClipped || b.isClipped };
}
