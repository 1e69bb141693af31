/** Makes a chosen picture file into what the records keep: upright, not larger than needed, and without what the camera wrote into it. */
import { exifDate } from '../../files/photograph/exifDate.ts';
import type { Photograph } from '../../piano/photograph.ts';

/** Enough to count the windings of a coil at arm's length, and some 0.5 MB a picture. Chosen. */
const LONGEST_SIDE_PX = 2000;
const JPEG_QUALITY = 0.85;

export type PreparedPhotograph = Pick<Photograph, 'takenAt' | 'widthPx' | 'heightPx' | 'mediaType'> & {
  readonly bytes: Uint8Array<ArrayBuffer>;
};

export type PrepareOutcome =
  | { readonly isPicture: true; readonly photograph: PreparedPhotograph }
  | { readonly isPicture: false };

/** @param keepsFile keeps the file's bytes as they are, where its format is one that the records know */
export async function preparePhotograph(file: File, keepsFile: boolean): Promise<PrepareOutcome> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const takenAt = exifDate(bytes);
  const picture = await uprightPicture(file);
  if (!picture) return { isPicture: false };
  const { width, height } = picture;
  const mediaType = (['image/jpeg', 'image/png', 'image/webp'] as const).find((type) => type === file.type);
  if (keepsFile && mediaType) {
    picture.close();
    return { isPicture: true, photograph: { takenAt, widthPx: width, heightPx: height, mediaType, bytes } };
  }
  const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(width, height));
  const drawn = await drawnAnew(picture, Math.round(width * scale), Math.round(height * scale));
  return { isPicture: true, photograph: { takenAt, ...drawn } };
}

/** Turned as the camera said; undefined where the browser cannot read the file as a picture. */
async function uprightPicture(file: File): Promise<ImageBitmap | undefined> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch (error) {
    console.info(`${file.name} could not be read as a picture:`, error);
    return undefined;
  }
}

/** Only the picture itself goes through a canvas: position, camera and thumbnail stay behind. */
async function drawnAnew(picture: ImageBitmap, widthPx: number, heightPx: number) {
  const canvas = document.createElement('canvas');
  canvas.width = widthPx;
  canvas.height = heightPx;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('The browser gives no canvas to draw pictures on.');
  context.fillStyle = '#fff'; // JPEG has no transparency
  context.fillRect(0, 0, widthPx, heightPx);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, widthPx, heightPx);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
  if (!blob) throw new Error('The browser could not store the picture as JPEG.');
  return { widthPx, heightPx, mediaType: 'image/jpeg' as const, bytes: new Uint8Array(await blob.arrayBuffer()) };
}
