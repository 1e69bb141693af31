import { lazy, Suspense } from 'react';
import type { Records } from '../records/records.ts';
import { HeldScreen } from '../screens/acrossInstruments/HeldScreen.tsx';
import { HearingScreen } from '../screens/hearing/HearingScreen.tsx';
import { InstrumentScreen } from '../screens/instrument/InstrumentScreen.tsx';
import { InstrumentFormScreen } from '../screens/instrumentForm/InstrumentFormScreen.tsx';
import { LongRecordScreen } from '../screens/longRecord/LongRecordScreen.tsx';
import { MicrophoneClockScreen } from '../screens/microphoneClock/MicrophoneClockScreen.tsx';
import { PhotographsScreen } from '../screens/photographs/PhotographsScreen.tsx';
import { RecordingScreen } from '../screens/recording/RecordingScreen.tsx';
import { RecordsScreen } from '../screens/records/RecordsScreen.tsx';
import { OwnersPageScreen } from '../screens/report/OwnersPageScreen.tsx';
import { SurveyScreen } from '../screens/survey/SurveyScreen.tsx';
import { TakeScreen } from '../screens/take/TakeScreen.tsx';
import { InstrumentTorqueScreen } from '../screens/torque/InstrumentTorqueScreen.tsx';
import { VisitTorqueScreen } from '../screens/torque/VisitTorqueScreen.tsx';
import { VisitScreen } from '../screens/visit/VisitScreen.tsx';
import { VisitFormScreen } from '../screens/visitForm/VisitFormScreen.tsx';
import { WorkshopScreen } from '../screens/workshop/WorkshopScreen.tsx';
import { NotFound } from '../ui/NotFound.tsx';
import { ReadState } from '../ui/ReadState.tsx';
import { type Route, routeToHref } from '../ui/routes.ts';

// Large, and not looked at on every visit: fetched when it is.
const StabilityScreen = lazy(async () => ({
  default: (await import('../screens/stability/StabilityScreen.tsx')).StabilityScreen,
}));

/** The key makes a screen start afresh when its subject changes. */
export function ScreenOfRoute({ route, records }: { readonly route: Route; readonly records: Records }) {
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
      return (
        <Suspense fallback={<ReadState observed={{ state: 'loading' }} />}>
          <StabilityScreen key={route.instrumentId} records={records} instrumentId={route.instrumentId} />
        </Suspense>
      );
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
    case 'held':
      return <HeldScreen records={records} />;
    case 'survey':
      return <SurveyScreen key={route.surveyId} records={records} surveyId={route.surveyId} />;
    case 'recording':
      return <RecordingScreen key={route.surveyId} records={records} surveyId={route.surveyId} />;
    case 'take':
      return <TakeScreen key={route.takeId} records={records} takeId={route.takeId} />;
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
