/** Whether it is time for a backup. */
import type { Records } from './records.ts';

/** Settings of this device. */
export const BACKUP_SETTINGS = {
  /** ISO 8601 date and time of the last backup that was written whole. */
  lastAt: 'backup.lastAt',
  /** One of REMINDER_DAYS; absent: 30. */
  reminderDays: 'backup.reminderDays',
  /** ISO 8601 date and time; no reminder before. */
  putOffUntil: 'backup.putOffUntil',
  /** The folder that was chosen, where the browser can. */
  folder: 'backup.folder',
} as const;

/** 0: never remind. */
export const REMINDER_DAYS = [7, 30, 90, 0] as const;
export type ReminderDays = (typeof REMINDER_DAYS)[number];

/** So many surveys since the last backup are too many to lose, however young it is. Chosen. */
const SURVEYS_AT_STAKE = 6;

export type BackupAge = {
  /** Null where none was made yet. */
  readonly lastAt: string | null;
  readonly reminderDays: ReminderDays;
  readonly putOffUntil: string | null;
  /** Of one's own instruments, begun after the last backup. */
  readonly surveysSince: number;
  /** When the first of them was begun; null where there is none. */
  readonly firstSurveyAt: string | null;
};

type Source = Pick<Records, 'setting' | 'surveysBegunSince'>;

export async function backupAge(records: Source): Promise<BackupAge> {
  const lastAt = textOrNull(await records.setting(BACKUP_SETTINGS.lastAt));
  const days = await records.setting(BACKUP_SETTINGS.reminderDays);
  const putOffUntil = textOrNull(await records.setting(BACKUP_SETTINGS.putOffUntil));
  const { count, firstAt } = await records.surveysBegunSince(lastAt ?? '');
  const reminderDays = REMINDER_DAYS.find((value) => value === days) ?? 30;
  return { lastAt, reminderDays, putOffUntil, surveysSince: count, firstSurveyAt: firstAt };
}

/** True where surveys are at stake and the last backup is old, or many surveys are, unless the reminder was put off. */
export function isBackupDue(age: BackupAge, now: Date): boolean {
  const { lastAt, reminderDays, putOffUntil, surveysSince, firstSurveyAt } = age;
  if (reminderDays === 0 || surveysSince === 0) return false;
  if (putOffUntil !== null && now < new Date(putOffUntil)) return false;
  const since = new Date(lastAt ?? firstSurveyAt ?? now);
  const days = (now.getTime() - since.getTime()) / 86_400_000;
  return surveysSince >= SURVEYS_AT_STAKE || days >= (lastAt === null ? 1 : reminderDays);
}

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}
