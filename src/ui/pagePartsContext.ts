import { createContext } from 'react';

export type PagePart = { readonly headingId: string; readonly title: string };

/** A section tells the page around it that it is there; what comes back takes it off the list again. Null on a page without a list. */
export const PagePartsContext = createContext<((part: PagePart) => () => void) | null>(null);
