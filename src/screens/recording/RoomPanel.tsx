import type { RoomState } from '../../listening/roomState.ts';
import { type RoomFinding, roomFindings } from '../../survey/roomAdvice.ts';
import { texts } from '../../ui/texts.ts';
import styles from './RoomPanel.module.css';
import { roomSentence } from './roomWords.ts';

const words = texts.room;

/** Until the first take: whether the microphone stands well and the room is quiet enough, in words. */
export function RoomPanel({ room }: { readonly room: RoomState }) {
  const findings = roomFindings(room.quiet, room.blow);
  return (
    <section className={styles.room} aria-label={words.title}>
      <h2>{words.title}</h2>
      <ul className={styles.findings}>
        {room.quiet === null && <li>{words.listening}</li>}
        {findings.map((finding) => (
          <Finding key={finding.kind} finding={finding} />
        ))}
        {room.blow === null && room.quiet !== null && <li className={styles.next}>{words.strikeOnce}</li>}
      </ul>
    </section>
  );
}

function Finding({ finding }: { readonly finding: RoomFinding }) {
  const { sentence, remedy } = roomSentence(finding);
  return (
    <li>
      {sentence} {remedy && <span className={styles.remedy}>{remedy}</span>}
    </li>
  );
}
