/**
 * A page as a tree of elements: plain data, which a file gets as HTML and a screen as nodes of its own. Text is never taken for markup: it
 * stands between elements and in attributes only, and is escaped where it is written out.
 */

export type PageNode = PageElement | string;

export type PageElement = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly PageNode[];
};

/** Null and false stand for nothing. */
export type PagePart = PageNode | number | null | false | readonly PagePart[];

/** @example element('p', { class: 'small' }, 'a < b') */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  ...parts: readonly PagePart[]
): PageElement {
  const asText = Object.entries(attributes).map(([key, value]) => [key, String(value)] as const);
  return { name, attributes: Object.fromEntries(asText), children: nodesOf(parts) };
}

function nodesOf(part: PagePart): PageNode[] {
  if (part === null || part === false) return [];
  if (typeof part === 'string') return [part];
  if (typeof part === 'number') return [String(part)];
  return isElement(part) ? [part] : part.flatMap(nodesOf);
}

function isElement(part: PageElement | readonly PagePart[]): part is PageElement {
  return 'attributes' in part;
}

/** Elements that HTML never closes. */
const VOID = ['img', 'br', 'meta', 'input', 'source'];

/** @example treeToHtml(element('p', {}, 'a < b')) // '<p>a &lt; b</p>' */
export function treeToHtml(node: PageNode): string {
  if (typeof node === 'string') return escapeText(node);
  const attributes = Object.entries(node.attributes).map(([key, value]) => ` ${key}="${escapeText(value)}"`);
  const open = `<${node.name}${attributes.join('')}>`;
  return VOID.includes(node.name) ? open : `${open}${node.children.map(treeToHtml).join('')}</${node.name}>`;
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** For text between tags and in quoted attributes; control characters that no document may hold become spaces. */
export function escapeText(text: string): string {
  return (
    text
      .replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/g, ' ')
  );
}
