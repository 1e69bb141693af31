import { Component, type ErrorInfo, type ReactNode } from 'react';
import { Button } from '../ui/Button.tsx';
import { Notice } from '../ui/Notice.tsx';
import { texts } from '../ui/texts.ts';
import styles from './Shell.module.css';

type Props = { readonly children: ReactNode };
type State = { readonly fault: Error | null };

/** In place of a blank page: what happened, that nothing is lost, and what to do. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { fault: null };

  static getDerivedStateFromError(error: unknown): State {
    return { fault: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (!fault) return this.props.children;
    return (
      <div className={styles.message}>
        <h1>{texts.common.broken.title}</h1>
        <p>{texts.common.broken.what}</p>
        <p className={styles.actions}>
          <Button look="primary" onPress={() => this.setState({ fault: null })}>
            {texts.common.broken.again}
          </Button>
          <Button onPress={() => window.location.reload()}>{texts.common.unavailable.again}</Button>
          <a href="#/">{texts.common.gone.back}</a>
        </p>
        <Notice kind="fault" word={`${texts.common.broken.detail}:`}>
          {fault.message}
        </Notice>
      </div>
    );
  }
}
