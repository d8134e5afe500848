// The saved patterns, through the server. A change names the revision it was made from, so that nobody's work is lost.

/**
 * A pattern as the shelf lists it.
 *
 * @typedef {{ id: string, name: string, note: string, revision: string, changed?: string, tags: string[], phrase: string,
 *   tempo_cycles_per_min: number, disagrees?: string }} Listed
 *
 * @typedef {{ id: string, name: string, note: string, revision: string, tags: string[] }} ListedMotion
 * @typedef {{ period_s: number, count: number, samples: Record<string, Record<string, string>> }} Moves
 */

/** The orders the shelf can be shown in. */
export const ORDERS = /** @type {const} */ ({ name: 'by name', changed: 'last changed', slow: 'slowest first', fast: 'fastest first' });

/** @typedef {keyof typeof ORDERS} Order */

/** What stands in no label's group. */
export const UNLABELLED = 'no label';

export class Shelf extends EventTarget {
  constructor() {
    super();
    /** @type {Listed[]} */
    this.patterns = [];
    /** @type {ListedMotion[]} */
    this.motions = [];
    /** Sets of patterns. @type {{ id: string, name: string, revision: string }[]} */
    this.sets = [];
    /** @type {{ id: string, name: string, revision: string, seconds: number, beats_per_min: number }[]} */
    this.songs = [];
    /** Files in its folder that are not on it, each with the reason. @type {{ file: string, why: string }[]} */
    this.notListed = [];
    /** @type {any} */
    this.problem = null;
    /** @type {Map<string, { revision: string, moves: Promise<Moves> }>} */
    this.moving = new Map();
  }

  refresh() {
    this.refreshing = this.#refresh();
    return this.refreshing;
  }

  /** Resolves once it is known what is on it. */
  known() {
    return this.refreshing ?? this.refresh();
  }

  async #refresh() {
    try {
      const listed = await ask('api/shelf');
      this.patterns = listed.body.patterns;
      this.motions = listed.body.motions || [];
      this.sets = listed.body.sets || [];
      this.songs = listed.body.songs || [];
      this.notListed = listed.body.not_listed || [];
      this.problem = null;
    } catch (/** @type {any} */ problem) {
      this.problem = problem.error || UNREACHED;
    }
    this.dispatchEvent(new Event('state'));
  }

  /**
   * @param {string} id
   * @returns {Promise<{ pattern: any, revision: string }>}
   */
  async load(id) {
    const got = await ask('api/shelf/' + encodeURIComponent(id));
    return { pattern: got.body, revision: got.revision ?? '' };
  }

  /**
   * What a thumbnail of it moves through, asked for once a revision.
   *
   * @param {string} id
   * @param {string} revision
   */
  moves(id, revision) {
    const known = this.moving.get(id);
    if (known?.revision === revision) return known.moves;
    const moves = ask('api/shelf/' + encodeURIComponent(id) + '/moves').then((got) => got.body);
    this.moving.set(id, { revision, moves });
    moves.catch(() => this.moving.delete(id));
    return moves;
  }

  /**
   * Puts a document where `revision` stands, or anew where there is none. Throws {status, error, revision}.
   *
   * @param {string} id
   * @param {object} pattern
   * @param {string | null} revision
   */
  async put(id, pattern, revision) {
    /** @type {Record<string, string>} */
    const headers = { 'Content-Type': 'application/json' };
    if (revision) headers['If-Match'] = quoted(revision);
    else headers['If-None-Match'] = '*';
    const got = await ask('api/shelf/' + encodeURIComponent(id), { method: 'PUT', headers, body: JSON.stringify(pattern) });
    await this.refresh();
    return got.revision ?? '';
  }

  /**
   * Puts back what was removed, at its place or at a free one.
   *
   * @param {string} id
   * @param {string} name
   * @param {object} pattern
   */
  async putBack(id, name, pattern) {
    try {
      await this.put(id, pattern, null);
    } catch (/** @type {any} */ problem) {
      if (problem.status !== 412) throw problem;
      await this.put(this.freeId(name), pattern, null);
    }
  }

  /**
   * Adds a document under an id of the server's choosing.
   *
   * @param {object} document
   */
  async add(document) {
    await ask('api/shelf', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(document) });
    await this.refresh();
  }

  /**
   * @param {string} id
   * @param {string} revision
   */
  async remove(id, revision) {
    await ask('api/shelf/' + encodeURIComponent(id), { method: 'DELETE', headers: { 'If-Match': quoted(revision) } });
    await this.refresh();
  }

  /**
   * Another pattern of that name, whatever the case of its letters.
   *
   * @param {string} name
   * @param {string} [but] id of the one that may have it
   */
  called(name, but) {
    const wanted = folded(name.trim());
    return this.patterns.find((p) => p.id !== but && folded(p.name.trim()) === wanted) ?? null;
  }

  /**
   * A name that no other pattern has: that one, or with a number.
   *
   * @param {string} name
   */
  freeName(name) {
    let free = name;
    for (let i = 2; this.called(free); i++) free = name + ' ' + i;
    return free;
  }

  /**
   * An id from a name that no other pattern has.
   *
   * @param {string} name
   */
  freeId(name) {
    const spelt =
      name
        .normalize('NFKD')
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '')
        .slice(0, 60) || 'pattern';
    const taken = new Set([...this.patterns.map((p) => p.id), ...this.motions.map((m) => m.id), ...this.sets.map((s) => s.id), ...this.songs.map((s) => s.id), ...this.notListed.map((n) => n.file.replace(/\.json$/, ''))]);
    if (!taken.has(spelt)) return spelt;
    for (let i = 2; ; i++) if (!taken.has(spelt + '-' + i)) return spelt + '-' + i;
  }
}

/**
 * The patterns to show: those that have every word that is looked for in their name, phrase, labels or note, in an order, in one group or
 * in one for each label. A pattern of two labels stands in both groups.
 *
 * @param {Listed[]} patterns
 * @param {{ find?: string, order?: Order, grouped?: boolean }} how
 * @returns {{ label: string, patterns: Listed[] }[]}
 */
export function shown(patterns, { find = '', order = 'name', grouped = false }) {
  const words = folded(find).split(/\s+/).filter(Boolean);
  const has = (/** @type {Listed} */ p) => {
    const text = folded([p.name, p.phrase, ...p.tags, p.note].join('\n'));
    return words.every((word) => text.includes(word));
  };
  const found = (words.length ? patterns.filter(has) : [...patterns]).sort(COMPARED[order]);
  if (!grouped) return [{ label: '', patterns: found }];
  const labels = [...new Set(found.flatMap((p) => p.tags))].sort(NAMES.compare);
  const groups = labels.map((label) => ({ label, patterns: found.filter((p) => p.tags.includes(label)) }));
  const rest = found.filter((p) => !p.tags.length);
  return rest.length ? [...groups, { label: UNLABELLED, patterns: rest }] : groups;
}

/**
 * Labels as they are typed, with commas between them.
 *
 * @param {string} text
 */
export function labels(text) {
  return [...new Set(text.split(',').map((label) => label.trim()).filter(Boolean))];
}

const NAMES = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** @type {Record<Order, (a: Listed, b: Listed) => number>} */
const COMPARED = {
  name: (a, b) => NAMES.compare(a.name, b.name),
  changed: (a, b) => (b.changed ?? '').localeCompare(a.changed ?? '') || NAMES.compare(a.name, b.name),
  slow: (a, b) => a.tempo_cycles_per_min - b.tempo_cycles_per_min || NAMES.compare(a.name, b.name),
  fast: (a, b) => b.tempo_cycles_per_min - a.tempo_cycles_per_min || NAMES.compare(a.name, b.name),
};

/** @param {string} text */
const folded = (text) => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

const UNREACHED = { what: 'does not answer', where: 'the shelf', right: 'see that the studio still runs, then try again' };

/**
 * @param {string} path
 * @param {RequestInit} [options]
 */
async function ask(path, options) {
  let reply;
  try {
    reply = await fetch(path, options);
  } catch {
    throw { status: 0, error: UNREACHED };
  }
  const text = await reply.text();
  /** @type {any} */
  let body = null;
  try {
    body = text ? JSON.parse(text) : null;
  } catch {
    body = null;
  }
  if (!reply.ok) throw { status: reply.status, error: (body && body.error) || UNREACHED, revision: plain(reply.headers.get('ETag')) };
  return { body, revision: plain(reply.headers.get('ETag')) };
}

/** @param {string | null} tag */
const plain = (tag) => (tag ? tag.replace(/^W\//, '').replace(/^"|"$/g, '') : null);
/** @param {string} revision */
const quoted = (revision) => '"' + revision + '"';
