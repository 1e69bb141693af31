import { LinkButton } from './Button.tsx';
import { EmptyState } from './EmptyState.tsx';
import { PageHeading } from './PageHeading.tsx';
import { texts } from './texts.ts';

/** For an address that leads nowhere, and for a record that is not on this device. */
export function NotFound() {
  return (
    <>
      <PageHeading title={texts.common.gone.title} />
      <EmptyState
        actions={
          <LinkButton look="primary" href="#/">
            {texts.common.gone.back}
          </LinkButton>
        }
      >
        <p>{texts.common.gone.what}</p>
      </EmptyState>
    </>
  );
}
