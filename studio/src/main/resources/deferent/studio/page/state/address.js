// The pattern in the address, after #: a phrase in plain sight where there is one, else the whole document, packed.

const PHRASE = 'phrase=';
const PATTERN = 'pattern=';

/** @param {{ phrase: string | null, pattern: any }} answer */
export async function written(answer) {
  // A phrase says nothing of what is spun.
  if (answer.phrase && !answer.pattern.kit) return PHRASE + encodeURIComponent(answer.phrase).replaceAll('%20', '+').replaceAll('%2C', ',');
  return PATTERN + (await packed(JSON.stringify(answer.pattern)));
}

/**
 * `{phrase}`, `{pattern}` or `{}`; throws where what stands there cannot be read.
 *
 * @param {string} hash
 */
export async function read(hash) {
  const text = hash.replace(/^#/, '');
  if (text.startsWith(PHRASE)) return { phrase: decodeURIComponent(text.slice(PHRASE.length).replaceAll('+', ' ')) };
  if (text.startsWith(PATTERN)) return { pattern: JSON.parse(await unpacked(text.slice(PATTERN.length))) };
  return {};
}

/** @param {string} text */
async function packed(text) {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  let plain = '';
  for (const b of bytes) plain += String.fromCharCode(b);
  return btoa(plain).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** @param {string} text */
async function unpacked(text) {
  const plain = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = Uint8Array.from(plain, (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(stream).text();
}
