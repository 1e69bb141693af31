/** The visit that is still under way, if there is one. */
import type { Survey, Visit } from '../../piano/instrument.ts';

/** A visit of several days, or one whose as-left survey is recorded the morning after. Chosen. */
const LONGEST_DAYS = 3;
const MS_PER_DAY = 86_400_000;

/**
 * The latest visit, if it is of today, or of the days before and no as-left survey of it was ended. A visit dated ahead is none.
 * @param visits in the order of their dates
 * @param today ISO 8601 calendar date
 */
export function openVisit(visits: readonly Visit[], surveys: readonly Survey[], today: string): Visit | null {
  const latest = visits.at(-1);
  if (!latest) return null;
  const days = (Date.parse(today) - Date.parse(latest.visitedOn)) / MS_PER_DAY;
  if (days === 0) return latest;
  const isLeft = surveys.some(
    ({ visitId, stage, finishedAt }) => visitId === latest.id && stage === 'as-left' && finishedAt !== null,
  );
  return days > 0 && days <= LONGEST_DAYS && !isLeft ? latest : null;
}
