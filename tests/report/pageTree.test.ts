import { expect, it } from 'vitest';
import { element, treeToHtml } from '../../src/report/pageTree.ts';

it('writes elements, attributes and text, and leaves out what is null or false', () => {
  const tree = element('p', { class: 'small', 'data-n': 2 }, 'one', null, false, [element('b', {}, 3), ' two']);
  expect(treeToHtml(tree)).toBe('<p class="small" data-n="2">one<b>3</b> two</p>');
});

it('takes no text for markup, neither between elements nor in attributes', () => {
  const html = treeToHtml(element('p', { title: '" onload="x' }, '<script>alert("&")</script>'));
  expect(html).toBe('<p title="&quot; onload=&quot;x">&lt;script&gt;alert(&quot;&amp;&quot;)&lt;/script&gt;</p>');
});

it('closes no element that HTML never closes, and puts spaces for control characters', () => {
  expect(treeToHtml(element('img', { alt: 'a\u0000b' }))).toBe('<img alt="a b">');
});
