import { LEVELS, type Level } from './divergingScale.ts';
import styles from './NoteMap.module.css';

/** Hatching for flat, dots for sharp, the denser the further: what the colours say, in grey print. */
export function MapPatterns({ prefix }: { readonly prefix: string }) {
  return (
    <defs>
      {LEVELS.filter((level) => level !== 0).map((level) => (
        <pattern
          key={level}
          id={patternId(prefix, level)}
          width={SIZES[Math.abs(level)]}
          height={SIZES[Math.abs(level)]}
          patternUnits="userSpaceOnUse"
        >
          {level < 0 ? <Hatch size={SIZES[Math.abs(level)] ?? 6} level={level} /> : <Dot level={level} />}
        </pattern>
      ))}
    </defs>
  );
}

/** By distance from nought: the further, the denser. */
const SIZES = [0, 7, 5.5, 4];

export function patternId(prefix: string, level: Level): string {
  return `${prefix}-${level < 0 ? 'flat' : 'sharp'}-${Math.abs(level)}`;
}

function Hatch({ size, level }: { readonly size: number; readonly level: Level }) {
  return (
    <path
      className={styles.hatch}
      data-level={level}
      d={`M-1 1L1 -1M0 ${size}L${size} 0M${size - 1} ${size + 1}L${size + 1} ${size - 1}`}
    />
  );
}

function Dot({ level }: { readonly level: Level }) {
  return <circle className={styles.dot} data-level={level} cx={2} cy={2} r={0.55 + 0.2 * level} />;
}
