import { useEffect } from 'react';
import printedPageCss from './printedPage.css?inline';

/**
 * Makes the screen fit for paper as long as it is there, since a rule for paper holds for the whole document.
 * @param margin of each sheet, as CSS writes it; should suit A4 and US Letter
 */
export function usePrintStyle(margin: string): void {
  useEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`@page { margin: ${margin}; }\n${printedPageCss}`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== sheet);
    };
  }, [margin]);
}
