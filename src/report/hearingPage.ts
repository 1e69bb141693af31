/** The same note at two visits as one file that plays by itself: sounds and picture inside, no network. */
import { type BeatPictureWords, beatPicture, type PicturedSound, positionInPicture } from './beatPicture.ts';
import { element, escapeText, treeToHtml } from './pageTree.ts';
import type { ReportWords } from './words.ts';

export type HearingPage = {
  readonly title: string;
  readonly subtitle: string;
  readonly demonstration: string | null;
  readonly sounds: readonly (PicturedSound & { readonly dataUri: string })[];
  readonly picture: BeatPictureWords;
  readonly sentences: readonly string[];
};

export function hearingFile(page: HearingPage, words: ReportWords): string {
  return `<!doctype html>
<html lang="${escapeText(words.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; media-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>${escapeText(page.title)}</title>
<style>${CSS}</style>
</head>
<body>
${treeToHtml(tree(page, words))}
<script>${SCRIPT}</script>
</body>
</html>
`;
}

function tree({ title, subtitle, demonstration, sounds, picture, sentences }: HearingPage, { hearing }: ReportWords) {
  const players = sounds.map((sound) =>
    element(
      'section',
      {},
      element('h2', {}, sound.title),
      element('p', {}, sound.beats),
      element('audio', { controls: '', preload: 'auto', src: sound.dataUri, 'aria-label': sound.title }),
    ),
  );
  return element(
    'main',
    {},
    element('h1', {}, title),
    element('p', { class: 'subtitle' }, subtitle),
    demonstration !== null && element('p', { class: 'invented' }, demonstration),
    element('p', {}, element('button', { type: 'button', hidden: '' }, hearing.playBoth)),
    element(
      'div',
      { class: 'picture' },
      beatPicture(sounds, picture),
      sounds.map((_, index) => position(sounds, index)),
    ),
    element('div', { class: 'players' }, players),
    sentences.map((sentence) => element('p', {}, sentence)),
  );
}

/** A line that the script moves from where the sound begins to where it ends. */
function position(sounds: HearingPage['sounds'], index: number) {
  const { durationS } = sounds[index] ?? { durationS: 0 };
  const start = positionInPicture(sounds, index, 0);
  const end = positionInPicture(sounds, index, durationS);
  const percent = (share: number) => `${(100 * share).toFixed(3)}%`;
  return element('i', {
    class: 'position',
    hidden: '',
    'data-from': start.x,
    'data-to': end.x,
    'data-duration': durationS,
    style: `left:${percent(start.x)};top:${percent(start.top)};height:${percent(start.height)}`,
  });
}

const CSS = `
body { margin: 0; background: #f4f4ef; color: #1c2429; font: 16px/1.5 system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif; }
main { max-width: 46rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1, h2 { font-family: "Iowan Old Style", Palatino, Georgia, serif; line-height: 1.2; margin: 0; }
h2 { font-size: 1.1rem; }
p { margin: 0.4rem 0; }
.subtitle { color: #4c565c; }
.invented { border: 1px solid #1c2429; padding: 0.3rem 0.6rem; font-weight: 600; }
.picture { position: relative; background: #fff; border: 1px solid #cfd2c9; margin: 1rem 0; }
.beats { display: block; width: 100%; height: auto; }
.position { position: absolute; width: 2px; background: #98281f; }
.players { display: grid; grid-template-columns: repeat(auto-fit, minmax(18rem, 1fr)); gap: 1rem; margin-bottom: 1rem; }
audio { width: 100%; }
button { font: inherit; min-height: 2.75rem; padding: 0 1.2rem; border: 1px solid #145069; border-radius: 3px; background: #145069; color: #fff; }
button:focus-visible { outline: 3px solid #145069; outline-offset: 2px; }
`;

/** Plays one after the other, moves the lines. Without it the players still work. */
const SCRIPT = `
const sounds = [...document.querySelectorAll('audio')];
const lines = [...document.querySelectorAll('.position')];
const button = document.querySelector('button');
button.hidden = false;
let isChained = false;
const move = () => {
  let isPlaying = false;
  sounds.forEach((sound, index) => {
    const { from, to, duration } = lines[index].dataset;
    lines[index].hidden = sound.paused;
    lines[index].style.left = 100 * (Number(from) + (Number(to) - Number(from)) * Math.min(1, sound.currentTime / Number(duration))) + '%';
    isPlaying ||= !sound.paused;
  });
  if (isPlaying) requestAnimationFrame(move);
};
sounds.forEach((sound, index) => {
  sound.addEventListener('play', () => {
    sounds.forEach((other) => other !== sound && other.pause());
    requestAnimationFrame(move);
  });
  sound.addEventListener('ended', () => {
    const next = sounds[index + 1];
    if (isChained && next) setTimeout(() => next.play(), 400);
    else isChained = false;
  });
});
button.addEventListener('click', () => {
  isChained = true;
  sounds.forEach((sound) => { sound.pause(); sound.currentTime = 0; });
  sounds[0].play();
});
`;
