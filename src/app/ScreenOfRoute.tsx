import { lazy, Suspense } from 'react';
import type { Records } from '../records/records.ts';
import { InstrumentScreen } from '../screens/instrument/InstrumentScreen.tsx';
import { VisitScreen } from '../screens/visit/VisitScreen.tsx';
import { WorkshopScreen } from '../screens/workshop/WorkshopScreen.tsx';
import { NotFound } from '../ui/NotFound.tsx';
import { ReadState } from '../ui/ReadState.tsx';
import { type Route, routeToHref } from '../ui/routes.ts';

// Fetched when first looked at, so that the first screen is there at once; without a network they come from the page's own store.
const HearingScreen = lazy(async () => ({
  default: (await import('../screens/hearing/HearingScreen.tsx')).HearingScreen,
}));
const HeldScreen = lazy(async () => ({
  default: (await import('../screens/acrossInstruments/HeldScreen.tsx')).HeldScreen,
}));
const InstrumentFormScreen = lazy(async () => ({
  default: (await import('../screens/instrumentForm/InstrumentFormScreen.tsx')).InstrumentFormScreen,
}));
const InstrumentTorqueScreen = lazy(async () => ({
  default: (await import('../screens/torque/InstrumentTorqueScreen.tsx')).InstrumentTorqueScreen,
}));
const LongRecordScreen = lazy(async () => ({
  default: (await import('../screens/longRecord/LongRecordScreen.tsx')).LongRecordScreen,
}));
const MethodScreen = lazy(async () => ({ default: (await import('../screens/method/MethodScreen.tsx')).MethodScreen }));
const MicrophoneClockScreen = lazy(async () => ({
  default: (await import('../screens/microphoneClock/MicrophoneClockScreen.tsx')).MicrophoneClockScreen,
}));
const OwnersPageScreen = lazy(async () => ({
  default: (await import('../screens/report/OwnersPageScreen.tsx')).OwnersPageScreen,
}));
const PhotographsScreen = lazy(async () => ({
  default: (await import('../screens/photographs/PhotographsScreen.tsx')).PhotographsScreen,
}));
const RecordingScreen = lazy(async () => ({
  default: (await import('../screens/recording/RecordingScreen.tsx')).RecordingScreen,
}));
const RecordsScreen = lazy(async () => ({
  default: (await import('../screens/records/RecordsScreen.tsx')).RecordsScreen,
}));
const StabilityScreen = lazy(async () => ({
  default: (await import('../screens/stability/StabilityScreen.tsx')).StabilityScreen,
}));
const StringingScreen = lazy(async () => ({
  default: (await import('../screens/stringing/StringingScreen.tsx')).StringingScreen,
}));
const StringScreen = lazy(async () => ({
  default: (await import('../screens/strings/StringScreen.tsx')).StringScreen,
}));
const StringsScreen = lazy(async () => ({
  default: (await import('../screens/strings/StringsScreen.tsx')).StringsScreen,
}));
const SurveyScreen = lazy(async () => ({ default: (await import('../screens/survey/SurveyScreen.tsx')).SurveyScreen }));
const TakeScreen = lazy(async () => ({ default: (await import('../screens/take/TakeScreen.tsx')).TakeScreen }));
const VisitFormScreen = lazy(async () => ({
  default: (await import('../screens/visitForm/VisitFormScreen.tsx')).VisitFormScreen,
}));
const VisitTorqueScreen = lazy(async () => ({
  default: (await import('../screens/torque/VisitTorqueScreen.tsx')).VisitTorqueScreen,
}));

const WorkListScreen = lazy(async () => ({
  default: (await import('../screens/strings/WorkListScreen.tsx')).WorkListScreen,
}));

type Props = { readonly route: Route; readonly records: Records };

/** The key makes a screen start afresh when its subject changes. */
export function ScreenOfRoute(props: Props) {
  return (
    <Suspense fallback={<ReadState observed={{ state: 'loading' }} />}>
      <Screen {...props} />
    </Suspense>
  );
}

function Screen({ route, records }: Props) {
  switch (route.screen) {
    case 'workshop':
      return <WorkshopScreen records={records} />;
    case 'new-instrument':
      return <InstrumentFormScreen records={records} instrumentId={null} />;
    case 'edit-instrument':
      return <InstrumentFormScreen records={records} instrumentId={route.instrumentId} />;
    case 'instrument':
      return <InstrumentScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'owners-page':
      return <OwnersPageScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'stability':
      return <StabilityScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'hearing':
      return <HearingScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'long-record':
      return <LongRecordScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'new-visit':
      return <VisitFormScreen records={records} instrumentId={route.instrumentId} />;
    case 'edit-visit':
      return <VisitFormScreen records={records} visitId={route.visitId} />;
    case 'visit':
      return <VisitScreen key={route.visitId} records={records} visitId={route.visitId} />;
    case 'visit-torque':
      return <VisitTorqueScreen key={route.visitId} records={records} visitId={route.visitId} />;
    case 'instrument-torque':
      return <InstrumentTorqueScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'stringing':
      return <StringingScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'strings':
      return <StringsScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'string': {
      const { instrumentId, midi, stringPosition } = route;
      const place = { midi, stringPosition };
      return <StringScreen key={routeToHref(route)} records={records} instrumentId={instrumentId} place={place} />;
    }
    case 'work-list':
      return <WorkListScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />;
    case 'held':
      return <HeldScreen records={records} />;
    case 'survey':
      return <SurveyScreen key={route.surveyId} records={records} surveyId={route.surveyId} />;
    case 'recording':
      return <RecordingScreen key={route.surveyId} records={records} surveyId={route.surveyId} />;
    case 'take':
      return <TakeScreen key={route.takeId} records={records} takeId={route.takeId} />;
    case 'method':
      return <MethodScreen />;
    case 'microphone-clock':
      return <MicrophoneClockScreen records={records} />;
    case 'photographs':
      return <PhotographsScreen key={routeToHref(route)} records={records} subject={route} />;
    case 'records':
      return <RecordsScreen records={records} />;
    case 'unknown':
      return <NotFound />;
  }
}
