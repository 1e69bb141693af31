import { useEffect, useRef } from 'react';
import styles from './PageSheet.module.css';

/** A page as plain data: elements with attributes, and text between them. */
export type SheetNode =
  | string
  | {
      readonly name: string;
      readonly attributes: Readonly<Record<string, string>>;
      readonly children: readonly SheetNode[];
    };

type PageSheetProps = {
  readonly page: SheetNode;
  readonly css: string;
  /** A picture rather than a page: no paper around it. */
  readonly isBare?: boolean;
};

/** So many elements and stretches of text are made before the page may answer. Chosen: what a slow machine lays out at once unnoticed. */
const NODES_IN_A_STEP = 600;

/**
 * A page that stands apart: neither its looks nor the program's reach across. It prints as it stands. A long one is made in steps, from its
 * top, between which the program answers; whoever prints gets all of it.
 */
export function PageSheet({ page, css, isBare }: PageSheetProps) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!host.current) return;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: 'open' });
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    root.adoptedStyleSheets = [sheet];
    root.replaceChildren();
    return inSteps(grown(root, page));
  }, [page, css]);
  return isBare ? <div ref={host} /> : <div ref={host} className={styles.sheet} />;
}

/** The first step at once; gives how to leave the others. */
function inSteps(work: Iterator<unknown>): () => void {
  let next = 0;
  const step = () => {
    for (let count = 0; count < NODES_IN_A_STEP; count++) if (work.next().done) return leave();
    next = window.setTimeout(step);
  };
  const doAll = () => {
    leave();
    while (!work.next().done);
  };
  const leave = () => {
    clearTimeout(next);
    window.removeEventListener('beforeprint', doAll);
  };
  window.addEventListener('beforeprint', doAll);
  step();
  return leave;
}

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** Makes a node of the page inside its parent, then what is in it, in the page's order. */
function* grown(parent: Node, node: SheetNode, isDrawing = false): Generator<void> {
  yield;
  if (typeof node === 'string') return void parent.appendChild(document.createTextNode(node));
  const isSvg = isDrawing || node.name === 'svg';
  const made = isSvg ? document.createElementNS(SVG_NAMESPACE, node.name) : document.createElement(node.name);
  for (const [name, value] of Object.entries(node.attributes)) if (name !== 'xmlns') made.setAttribute(name, value);
  parent.appendChild(made);
  for (const child of node.children) yield* grown(made, child, isSvg);
}
