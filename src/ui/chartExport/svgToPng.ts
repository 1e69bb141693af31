import type { StandaloneSvg } from './standaloneSvg.ts';

/** So many dots for each of the screen's: fit for paper. */
const DOTS = 2;

/** @throws {Error} where the browser cannot draw it */
export async function svgToPng({ text, width, height }: StandaloneSvg): Promise<Blob> {
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(DOTS * width);
  canvas.height = Math.round(DOTS * height);
  const brush = canvas.getContext('2d');
  if (!brush) throw new Error('this browser gives no surface to draw on');
  brush.drawImage(image, 0, 0, canvas.width, canvas.height);
  return await new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the picture is too large'))), 'image/png');
  });
}
