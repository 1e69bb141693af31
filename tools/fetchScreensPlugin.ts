/**
 * Vite plugin: the page has its screens fetched with its first script, which draws them once the language is known. Without it they would
 * be asked for only when that script runs, which over a slow network is half a second later. Does nothing while developing.
 */
import type { HtmlTagDescriptor, Plugin, Rollup } from 'vite';

const DRAWS_SCREENS = 'src/app/showScreens.tsx';

export function fetchScreensPlugin(): Plugin {
  return {
    name: 'fetch-screens',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle = {} }) {
        const chunks = Object.values(bundle).filter((output) => output.type === 'chunk');
        const screens = chunks.find(({ facadeModuleId }) => facadeModuleId?.endsWith(DRAWS_SCREENS));
        if (!screens) throw new Error(`the build has no chunk of its own for ${DRAWS_SCREENS}`);
        const needed = withImports(screens, chunks);
        const styles = needed.flatMap((chunk) => [...(chunk.viteMetadata?.importedCss ?? [])]);
        return [
          ...needed.map(({ fileName }) => link('modulepreload', fileName)),
          ...styles.map((fileName) => link('stylesheet', fileName)),
        ].filter(({ attrs }) => !html.includes(attrs.href));
      },
    },
  };
}

type Chunk = Rollup.OutputChunk;

/** The chunk after all that it cannot do without, each once. */
function withImports(chunk: Chunk, all: readonly Chunk[], seen = new Set<Chunk>()): Chunk[] {
  if (seen.has(chunk)) return [];
  seen.add(chunk);
  const imported = all.filter(({ fileName }) => chunk.imports.includes(fileName));
  return [...imported.flatMap((one) => withImports(one, all, seen)), chunk];
}

function link(rel: string, fileName: string) {
  const attrs = { rel, crossorigin: true, href: `./${fileName}` };
  return { tag: 'link', attrs, injectTo: 'head' } as const satisfies HtmlTagDescriptor;
}
