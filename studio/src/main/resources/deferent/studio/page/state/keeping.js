// Keeping patterns: saving, opening and removing, and what is asked before anything could be lost.

/**
 * What has to be answered first: the shelf has a changed one (`changed`), another of that name (`twin`), or what stands has changes that
 * opening another would leave behind (`leaving`).
 *
 * @typedef {{ kind: 'changed', id: string, name: string, saving: Saving }
 *   | { kind: 'twin', twin: Listed, saving: Saving }
 *   | { kind: 'leaving', name: string, to: Listed }} Asked
 *
 * @typedef {{ name: string, labels: string[], copy: boolean, proposed?: boolean }} Saving  proposed: nobody said the name
 * @typedef {import('./shelf.js').Listed} Listed
 */

export class Keeping extends EventTarget {
  /**
   * @param {import('./session.js').Session} session
   * @param {import('./shelf.js').Shelf} shelf
   * @param {import('./seek.js').Seek} seek
   * @param {{ say: (text: string, undo?: () => void) => void, complain: (problem: any) => void, opened: () => void, proposed: (name: string) => void }} page
   */
  constructor(session, shelf, seek, page) {
    super();
    this.session = session;
    this.shelf = shelf;
    this.seek = seek;
    this.page = page;
    /** @type {Asked | null} */
    this.asked = null;
  }

  /**
   * Saves over the pattern it was opened from, or as a new one; resolves to whether it is on the shelf now.
   *
   * @param {{ name?: string, labels?: string[], copy?: boolean }} how
   * @returns {Promise<boolean>}
   */
  async save({ name = '', labels = undefined, copy = false }) {
    const { session, shelf } = this;
    if (!session.pattern) return false;
    const over = copy ? null : session.shelved;
    const called = name || (over ? over.name : session.answer.phrase || session.answer.name);
    const saving = { name: called, labels: labels ?? session.shelved?.labels ?? session.pattern.tags ?? [], copy, proposed: !name && !over };
    await shelf.known();
    const twin = shelf.called(called, over?.id);
    if (twin) {
      this.#ask({ kind: 'twin', twin, saving });
      return false;
    }
    return this.#put(saving);
  }

  /**
   * @param {Saving} saving
   * @returns {Promise<boolean>}
   */
  async #put(saving) {
    const { session, shelf } = this;
    const { name, labels, copy } = saving;
    const over = copy ? null : session.shelved;
    const id = over ? over.id : shelf.freeId(name);
    const pattern = document(session.pattern, name, labels);
    try {
      const revision = await shelf.put(id, pattern, over ? over.revision : null);
      session.saved({ id, revision, name, labels });
      if (saving.proposed) this.page.proposed(name);
      else this.page.say('Saved: ' + name);
    } catch (/** @type {any} */ problem) {
      if (problem.status !== 412) {
        this.page.complain(problem);
        return false;
      }
      await shelf.refresh();
      if (!over) return this.save(saving); // another tab was faster: now its name is known
      this.#ask({ kind: 'changed', id, name: over.name, saving });
      return false;
    }
    this.#ask(null);
    return true;
  }

  /** @param {'copy' | 'theirs' | 'mine' | 'another'} how */
  async settleChanged(how) {
    const { asked, session, shelf } = this;
    if (asked?.kind !== 'changed') return;
    this.#ask(null);
    const { id, saving } = asked;
    const standing = shelf.patterns.find((p) => p.id === id);
    if (how === 'copy') await this.#put({ ...saving, name: shelf.freeName(saving.name), copy: true });
    else if (!standing) await this.#put({ ...saving, copy: true });
    else if (how === 'theirs') await this.#open(standing);
    else {
      session.reshelved(id, { revision: standing.revision, name: standing.name, labels: standing.tags });
      await this.#put(saving);
    }
  }

  /** @param {'both' | 'place' | 'another'} how */
  async settleTwin(how) {
    const { asked, shelf } = this;
    if (asked?.kind !== 'twin') return;
    this.#ask(null);
    const { twin, saving } = asked;
    if (how === 'both') await this.#put({ ...saving, name: shelf.freeName(saving.name) });
    if (how === 'place') await this.#putInPlace(twin, saving);
  }

  /**
   * What stood there before comes back with Undo.
   *
   * @param {Listed} twin
   * @param {Saving} saving
   */
  async #putInPlace({ id, name }, { labels }) {
    const { session, shelf } = this;
    try {
      const before = await shelf.load(id);
      const revision = await shelf.put(id, document(session.pattern, name, labels), before.revision);
      session.saved({ id, revision, name, labels });
      this.page.say('Saved in its place: ' + name, async () => {
        try {
          await shelf.put(id, before.pattern, revision);
          session.reshelved(id, null);
        } catch (problem) {
          this.page.complain(problem);
        }
      });
    } catch (problem) {
      this.page.complain(problem);
    }
    this.#ask(null);
  }

  /**
   * Opens a pattern of the shelf; asks first where that would leave changes behind.
   *
   * @param {Listed} listed
   */
  async open(listed) {
    const { session } = this;
    if (session.unsaved && session.shelved && session.shelved.id !== listed.id) {
      this.#ask({ kind: 'leaving', name: session.shelved.name, to: listed });
      return;
    }
    await this.#open(listed);
  }

  /** @param {'save' | 'leave' | 'stay'} how */
  async settleLeaving(how) {
    const { asked } = this;
    if (asked?.kind !== 'leaving') return;
    this.#ask(null);
    if (how === 'stay' || (how === 'save' && !(await this.save({})))) return;
    await this.#open(asked.to);
  }

  /** @param {Listed} listed */
  async #open({ id, name, tags }) {
    try {
      const { pattern, revision } = await this.shelf.load(id);
      this.session.open(pattern, { shelved: { id, revision, name, labels: tags }, then: () => this.page.opened() });
    } catch (problem) {
      this.page.complain(problem);
    }
  }

  /**
   * Gives a pattern of the shelf another name and other labels; resolves to whether it has them.
   *
   * @param {Listed} listed
   * @param {string} name
   * @param {string[]} labels
   */
  async rename({ id }, name, labels) {
    const { session, shelf } = this;
    const twin = shelf.called(name, id);
    if (twin) {
      this.page.say('There is one called ' + twin.name + ' already; give this one another name.');
      return false;
    }
    try {
      const { pattern, revision } = await shelf.load(id);
      const next = await shelf.put(id, document(pattern, name, labels), revision);
      session.reshelved(id, { revision: next, name, labels });
      return true;
    } catch (/** @type {any} */ problem) {
      if (problem.status === 412) this.page.say('It was changed elsewhere just now; try once more.');
      else this.page.complain(problem);
      shelf.refresh();
      return false;
    }
  }

  /** @param {Listed} listed */
  async remove({ id, name, revision }) {
    const { session, shelf } = this;
    try {
      const { pattern } = await shelf.load(id);
      await shelf.remove(id, revision);
      session.reshelved(id, null);
      this.page.say('Removed: ' + name, async () => {
        try {
          await shelf.putBack(id, name, pattern);
        } catch (problem) {
          this.page.complain(problem);
        }
      });
    } catch (problem) {
      this.page.complain(problem);
      shelf.refresh();
    }
  }

  /**
   * Puts one hand's motion on the shelf under a name that phrases can then say.
   *
   * @param {Protocol.Side} side
   * @param {string} name
   */
  async nameMotion(side, name) {
    const { hand, spin, tether_m } = this.session.pattern.pairing[side];
    try {
      await this.shelf.add({ format: 1, kind: 'motion', name, hand, spin, tether_m });
      this.page.say('Named: ' + name + '; say it in a phrase');
    } catch (problem) {
      this.page.complain(problem);
    }
  }

  /** @param {import('./shelf.js').ListedMotion} motion */
  async removeMotion({ id, name, revision }) {
    const { shelf } = this;
    try {
      const { pattern } = await shelf.load(id);
      await shelf.remove(id, revision);
      this.page.say('Removed: ' + name, () => {
        shelf.put(id, pattern, null).catch((problem) => this.page.complain(problem));
      });
    } catch (problem) {
      this.page.complain(problem);
      shelf.refresh();
    }
  }

  /**
   * Puts what a seek has found on the shelf.
   *
   * @param {{ key: string, said: string, pattern: object } | undefined} answer
   */
  async saveFound(answer) {
    const { seek } = this;
    if (!answer || seek.saved.has(answer.key)) return;
    seek.saved.add(answer.key);
    try {
      await this.shelf.add(answer.pattern);
      this.page.say('Saved: ' + answer.said);
    } catch (problem) {
      seek.saved.delete(answer.key);
      this.page.complain(problem);
    }
    seek.dispatchEvent(new Event('state'));
  }

  /** @param {Asked | null} asked */
  #ask(asked) {
    this.asked = asked;
    this.dispatchEvent(new Event('state'));
    this.session.dispatchEvent(new Event('state'));
  }
}

/**
 * @param {any} pattern
 * @param {string} name
 * @param {string[]} labels
 */
function document(pattern, name, labels) {
  const { tags, ...rest } = pattern;
  return labels.length ? { ...rest, name, tags: labels } : { ...rest, name };
}
