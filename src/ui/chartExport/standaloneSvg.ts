/**
 * A drawn chart as an SVG file that stands alone: its title, legend and drawing with every colour and size written into it, always in the
 * page's light colours on paper, whatever the screen's are.
 */

export type ChartOnPage = {
  /** Holds the drawing's SVG elements and nothing else that is drawn. */
  readonly drawing: HTMLElement;
  /** Elements of a sign (SVG) and its meaning (text). */
  readonly legend: readonly HTMLElement[];
  readonly title: string;
  /** Whose chart it is, under the drawing. */
  readonly origin: string;
};

const NAMESPACE = 'http://www.w3.org/2000/svg';
const MARGIN = 16;
const TITLE_SIZE = 15;
const SMALL_SIZE = 12;
const LINE = 1.35;
/** Mean width of a letter of a plain sans serif face, as a share of its size. Wide enough for German. */
const LETTER_SHARE = 0.56;

/** What a style sheet may say of a shape or a text that a file has to say itself. */
const STYLES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-opacity',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'dominant-baseline',
  'visibility',
  'r',
] as const;

export type StandaloneSvg = { readonly text: string; readonly width: number; readonly height: number };

export function standaloneSvg(chart: ChartOnPage): StandaloneSvg {
  return inLightColours(() => {
    const frame = chart.drawing.getBoundingClientRect();
    const width = Math.ceil(frame.width) + 2 * MARGIN;
    const parts = [...titleLines(chart.title, width), ...legendParts(chart.legend, width, chart.title)];
    const top = Math.max(MARGIN, ...parts.map((part) => part.bottom)) + SMALL_SIZE;
    const height = top + Math.ceil(frame.height) + SMALL_SIZE * LINE + MARGIN;
    const root = element('svg', { width, height, viewBox: `0 0 ${width} ${height}`, xmlns: NAMESPACE });
    const title = element('title', {});
    title.textContent = chart.title;
    const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper-raised').trim() || '#ffffff';
    root.append(title, element('rect', { width, height, fill: paper }));
    for (const part of parts) root.append(part.node);
    for (const svg of outerDrawings(chart.drawing)) root.append(placed(svg, frame, top));
    root.append(words(chart.origin, MARGIN, height - MARGIN, SMALL_SIZE).node);
    const text = `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(root)}\n`;
    return { text, width, height };
  });
}

/** Nothing is painted in between: the page does not flicker. */
function inLightColours<Value>(work: () => Value): Value {
  const page = document.documentElement;
  const before = page.dataset.theme;
  page.dataset.theme = 'light';
  try {
    return work();
  } finally {
    if (before === undefined) delete page.dataset.theme;
    else page.dataset.theme = before;
  }
}

function outerDrawings(drawing: HTMLElement): SVGSVGElement[] {
  return [...drawing.querySelectorAll('svg')].filter((svg) => !svg.parentElement?.closest('svg'));
}

function placed(svg: SVGSVGElement, frame: DOMRect, top: number): SVGElement {
  const { left, top: above, width, height } = svg.getBoundingClientRect();
  const copy = styledCopy(svg);
  copy.setAttribute('x', String(MARGIN + left - frame.left));
  copy.setAttribute('y', String(top + above - frame.top));
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  return copy;
}

/** A copy without classes, roles and handlers, with its styles written out. */
function styledCopy(original: SVGElement): SVGElement {
  const copy = original.cloneNode(true) as SVGElement;
  const originals = [original, ...original.querySelectorAll<SVGElement>('*')];
  const copies = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  copies.forEach((one, index) => {
    const source = originals[index];
    if (!source) return;
    const styles = getComputedStyle(source);
    if (styles.display === 'none') one.setAttribute('display', 'none');
    for (const name of STYLES) {
      const value = styles.getPropertyValue(name);
      if (value !== '' && (name !== 'r' || one.tagName === 'circle')) one.setAttribute(name, value);
    }
    for (const { name } of [...one.attributes]) if (isOfThePage(name)) one.removeAttribute(name);
  });
  return copy;
}

function isOfThePage(name: string): boolean {
  return name === 'class' || name === 'style' || name === 'tabindex' || name === 'role' || /^(data|aria)-/.test(name);
}

type Part = { readonly node: SVGElement; readonly bottom: number };

function titleLines(title: string, width: number): Part[] {
  return wrapped(title, (width - 2 * MARGIN) / (TITLE_SIZE * LETTER_SHARE)).map((line, index) =>
    words(line, MARGIN, MARGIN + TITLE_SIZE * (1 + index * LINE), TITLE_SIZE),
  );
}

/** Signs and their meanings side by side, in as many rows as they need. */
function legendParts(legend: readonly HTMLElement[], width: number, title: string): Part[] {
  let x = MARGIN;
  let y = MARGIN + TITLE_SIZE * LINE * titleLines(title, width).length + SMALL_SIZE * LINE;
  return legend.flatMap((item) => {
    const meaning = item.textContent?.trim() ?? '';
    const sign = item.querySelector('svg');
    const signWidth = sign ? sign.getBoundingClientRect().width + SMALL_SIZE / 3 : 0;
    const needed = signWidth + meaning.length * SMALL_SIZE * LETTER_SHARE + 1.5 * SMALL_SIZE;
    if (x > MARGIN && x + needed > width - MARGIN) {
      x = MARGIN;
      y += 1.5 * SMALL_SIZE;
    }
    const parts = [words(meaning, x + signWidth, y, SMALL_SIZE)];
    if (sign) parts.push(signAt(sign, x, y));
    x += needed;
    return parts;
  });
}

function signAt(sign: SVGSVGElement, x: number, baseline: number): Part {
  const { width, height } = sign.getBoundingClientRect();
  const copy = styledCopy(sign);
  copy.setAttribute('x', String(x));
  copy.setAttribute('y', String(baseline - 0.8 * height));
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  return { node: copy, bottom: baseline };
}

function words(text: string, x: number, y: number, size: number): Part {
  const face = getComputedStyle(document.body).fontFamily;
  const fill = getComputedStyle(document.documentElement).getPropertyValue('--ink').trim() || '#000000';
  const node = element('text', { x, y, 'font-size': size, 'font-family': face, fill });
  node.textContent = text;
  return { node, bottom: y };
}

function wrapped(text: string, longest: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= longest) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(NAMESPACE, name);
  for (const [key, value] of Object.entries(attributes)) if (key !== 'xmlns') made.setAttribute(key, String(value));
  return made;
}
