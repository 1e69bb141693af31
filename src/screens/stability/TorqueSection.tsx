import { memo } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import { torqueAndSlip } from '../../stability/torqueAgainstSlip.ts';
import type { PinTorque } from '../../stability/torquePins.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { TorqueAgainstSlip } from '../../ui/torque/TorqueAgainstSlip.tsx';

const words = texts.stability.torque;

type Props = {
  readonly instrument: Instrument;
  readonly pins: readonly JudgedPin[];
  readonly torques: readonly PinTorque[];
};

/** Whether the pins that slip are the loose ones. */
export const TorqueSection = memo(function TorqueSection({ instrument, pins, torques }: Props) {
  return (
    <Section title={words.title} note={words.note}>
      {torques.length === 0 ? (
        <EmptyState>
          <p>{words.empty}</p>
        </EmptyState>
      ) : (
        <>
          <TorqueAgainstSlip pins={torqueAndSlip(torques, pins)} />
          <LinkButton href={routeToHref({ screen: 'instrument-torque', instrumentId: instrument.id })}>
            {words.open}
          </LinkButton>
        </>
      )}
    </Section>
  );
});
