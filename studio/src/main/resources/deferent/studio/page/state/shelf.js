// The saved patterns, through the server. A change names the revision it was made from, so that nobody's work is lost.

export class Shelf extends EventTarget {
  constructor() {
    super();
    this.patterns = [];
    this.motions = [];
    this.notListed = []; // files in its folder that are not on it, each with the reason
    this.problem = null;
  }

  async refresh() {
    try {
      const listed = await ask('api/shelf');
      this.patterns = listed.body.patterns;
      this.motions = listed.body.motions || [];
      this.notListed = listed.body.not_listed || [];
      this.problem = null;
    } catch (problem) {
      this.problem = problem.error || UNREACHED;
    }
    this.dispatchEvent(new Event('state'));
  }

  async load(id) {
    const got = await ask('api/shelf/' + encodeURIComponent(id));
    return { pattern: got.body, revision: got.revision };
  }

  /** Puts a document where `revision` stands, or anew where there is none. Throws {status, error, revision}. */
  async put(id, pattern, revision) {
    const headers = { 'Content-Type': 'application/json' };
    if (revision) headers['If-Match'] = quoted(revision);
    else headers['If-None-Match'] = '*';
    const got = await ask('api/shelf/' + encodeURIComponent(id), { method: 'PUT', headers, body: JSON.stringify(pattern) });
    await this.refresh();
    return got.revision;
  }

  /** Adds a document under an id of the server's choosing. */
  async add(document) {
    await ask('api/shelf', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(document) });
    await this.refresh();
  }

  async remove(id, revision) {
    await ask('api/shelf/' + encodeURIComponent(id), { method: 'DELETE', headers: { 'If-Match': quoted(revision) } });
    await this.refresh();
  }

  /** An id from a name that no other pattern has. */
  freeId(name) {
    const plain =
      name
        .normalize('NFKD')
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'pattern';
    const taken = new Set([...this.patterns.map((p) => p.id), ...this.motions.map((m) => m.id), ...this.notListed.map((n) => n.file.replace(/\.json$/, ''))]);
    if (!taken.has(plain)) return plain;
    for (let i = 2; ; i++) if (!taken.has(plain + '-' + i)) return plain + '-' + i;
  }
}

const UNREACHED = { what: 'does not answer', where: 'the shelf', right: 'see that the studio still runs, then try again' };

async function ask(path, options) {
  let reply;
  try {
    reply = await fetch(path, options);
  } catch {
    throw { status: 0, error: UNREACHED };
  }
  const text = await reply.text();
  let body = null;
  try {
    body = text ? JSON.parse(text) : null;
  } catch {
    body = null;
  }
  if (!reply.ok) throw { status: reply.status, error: (body && body.error) || UNREACHED, revision: plain(reply.headers.get('ETag')) };
  return { body, revision: plain(reply.headers.get('ETag')) };
}

const plain = (tag) => (tag ? tag.replace(/^W\//, '').replace(/^"|"$/g, '') : null);
const quoted = (revision) => '"' + revision + '"';
