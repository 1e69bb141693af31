/** Lines, marks and letters of a drawing. */
import { element, type PageElement } from './pageTree.ts';

export type Point = { readonly x: number; readonly y: number };
type Look = Readonly<Record<string, string | number>>;

export const INK = '#1c2429';
export const SOFT = '#5a6368';
export const RULE = '#cfd2c9';

/** Tenths of a unit are finer than any printer shows. */
export function px(value: number): string {
  return value.toFixed(1);
}

/** @param points at least one */
export function lineThrough(points: readonly Point[]): string {
  return `M${points.map(({ x, y }) => `${px(x)} ${px(y)}`).join('L')}`;
}

export function line(points: readonly Point[], look: Look): PageElement {
  return element('path', { d: lineThrough(points), fill: 'none', ...look });
}

export function text({ x, y }: Point, letters: string, look: Look): PageElement {
  return element('text', { x: px(x), y: px(y), ...look }, letters);
}

export function disc({ x, y }: Point, radius: number, look: Look): PageElement {
  return element('circle', { cx: px(x), cy: px(y), r: radius, ...look });
}

/** Hollow, point downwards. */
export function triangle({ x, y }: Point, colour: string): PageElement {
  const d = `M${px(x - 4.2)} ${px(y - 3.4)}H${px(x + 4.2)}L${px(x)} ${px(y + 4)}Z`;
  return element('path', { d, fill: '#ffffff', stroke: colour, 'stroke-width': 1.6 });
}
