// A file for the studio to read: brought in pieces, since a question holds so much and no more. It never leaves this machine.

const PIECE = 180_000; // bytes; in base 64 they fit into one question

export const AWAY = { what: 'does not answer', where: 'the studio', right: 'see that it still runs in its terminal, then choose the file again' };

/**
 * Brings it; resolves to its key, or to null where nobody wants it any more.
 *
 * @param {'film' | 'song'} kind
 * @param {File} file
 * @param {object} told what is said of it first
 * @param {(share: number) => boolean} come told how far it is; whether it is still wanted
 * @returns {Promise<string | null>}
 */
export async function bring(kind, file, told, come) {
  const { [kind]: key } = await sent('api/' + kind, told);
  for (let at = 0; at < file.size; at += PIECE) {
    const bytes = await base64(file.slice(at, at + PIECE));
    if (!come(at / file.size)) return null;
    await sent(`api/${kind}/${key}`, { at, bytes });
  }
  return come(1) ? key : null;
}

/** @param {Blob} blob @returns {Promise<string>} */
function base64(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(/** @type {string} */ (reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/**
 * @param {string} path
 * @param {object} body
 */
export async function sent(path, body) {
  const reply = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
  const answer = await reply.json();
  if (!reply.ok) throw answer;
  return answer;
}
