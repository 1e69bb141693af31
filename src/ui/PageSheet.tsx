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

/** A page that stands apart: neither its looks nor the program's reach across. It prints as it stands. */
export function PageSheet({ page, css, isBare }: PageSheetProps) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!host.current) return;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: 'open' });
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    root.adoptedStyleSheets = [sheet];
    root.replaceChildren(nodeOf(page));
  }, [page, css]);
  return isBare ? <div ref={host} /> : <div ref={host} className={styles.sheet} />;
}

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

function nodeOf(node: SheetNode, isDrawing = false): Node {
  if (typeof node === 'string') return document.createTextNode(node);
  const isSvg = isDrawing || node.name === 'svg';
  const made = isSvg ? document.createElementNS(SVG_NAMESPACE, node.name) : document.createElement(node.name);
  for (const [name, value] of Object.entries(node.attributes)) if (name !== 'xmlns') made.setAttribute(name, value);
  made.append(...node.children.map((child) => nodeOf(child, isSvg)));
  return made;
}
