/** Bytes inside an address (RFC 2397), so that a page needs no second file. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** @example dataUri('text/plain', new Uint8Array([104, 105])) // 'data:text/plain;base64,aGk=' */
export function dataUri(mediaType: string, bytes: Uint8Array): string {
  return `data:${mediaType};base64,${base64(bytes)}`;
}

/** So many bytes at a time: a whole number of threes, so that the pieces join without padding. */
const PIECE = 3 * 8192;

function base64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let start = 0; start < bytes.length; start += PIECE)
    pieces.push(pieceToText(bytes.subarray(start, start + PIECE)));
  return pieces.join('');
}

function pieceToText(bytes: Uint8Array): string {
  let text = '';
  for (let index = 0; index < bytes.length; index += 3) {
    const [first = 0, second, third] = bytes.subarray(index, index + 3);
    const group = (first << 16) | ((second ?? 0) << 8) | (third ?? 0);
    text += LETTERS.charAt(group >> 18) + LETTERS.charAt((group >> 12) & 63);
    text +=
      second === undefined
        ? '=='
        : LETTERS.charAt((group >> 6) & 63) + (third === undefined ? '=' : LETTERS.charAt(group & 63));
  }
  return text;
}
