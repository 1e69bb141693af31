/** What stands on the pages of a PDF, read by Mozilla's PDF reader. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type PdfPage = { readonly text: string; readonly widthPt: number; readonly heightPt: number };

export async function pdfPages(bytes: Uint8Array): Promise<PdfPage[]> {
  const loading = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 });
  const document = await loading.promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join('');
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    pages.push({ text: text.replace(/[\s\u00a0\u2009]+/g, ' '), widthPt: right - left, heightPt: top - bottom });
  }
  await loading.destroy();
  return pages;
}
