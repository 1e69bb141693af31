import { formatDate } from '../../piano/format.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { scopeText } from '../../ui/scopeText.ts';
import { texts } from '../../ui/texts.ts';
import type { SurveyRow } from './useVisit.ts';

const words = texts.visit.surveys;

const COLUMNS: readonly Column<SurveyRow>[] = [
  {
    key: 'stage',
    title: words.stage,
    isRowHeader: true,
    cell: ({ survey }) => (
      <a href={routeToHref({ screen: 'survey', surveyId: survey.id })}>{texts.common.stage[survey.stage]}</a>
    ),
  },
  { key: 'strings', title: words.strings, cell: ({ survey }) => texts.common.strings[survey.strings] },
  {
    key: 'scope',
    title: words.scope,
    cell: ({ survey }) => scopeText(survey.scope) || texts.visit.scope.allNotes,
  },
  { key: 'notes', title: words.notes, isNumber: true, cell: (row) => row.keptNoteCount },
  { key: 'started', title: words.started, cell: ({ survey }) => formatDate(survey.startedAt) },
  {
    key: 'state',
    title: words.state,
    cell: ({ survey }) =>
      survey.finishedAt === null ? (
        <a href={routeToHref({ screen: 'recording', surveyId: survey.id })}>{words.goOn}</a>
      ) : (
        words.finished
      ),
  },
];

export function SurveyTable({ surveys }: { readonly surveys: readonly SurveyRow[] }) {
  if (surveys.length === 0)
    return (
      <EmptyState>
        <p>{words.empty}</p>
      </EmptyState>
    );
  return (
    <DataTable
      caption={words.caption}
      isCaptionHidden
      columns={COLUMNS}
      rows={surveys}
      rowKey={({ survey }) => survey.id}
      stacksWhenNarrow
    />
  );
}
