// The steps that can be taken back and gone on to again. Changes that belong together are one step: what is typed in one go, a whole
// drag. A step knows where the pattern stood on the shelf, so that going back never takes one pattern for another.

const DEPTH = 200; // steps kept

/**
 * Where a pattern stands on the shelf.
 *
 * @typedef {{ id: string, revision: string, name: string, labels: string[], content: string }} Shelved
 *
 * One step. `n` is its own for good, across reloads too; `at` is its place in the browser's history and `hash` its address, `made` when it
 * was made.
 * @typedef {{ n: number, pattern: object, said: string, merge: string | null, shelved: Shelved | null, at?: number, hash?: string, made?: number }} Step
 */

export class Steps {
  /** @type {Step[]} */
  past = [];
  /** @type {Step[]} */
  future = [];
  /** The step that stands, which going back would come back to. @type {Step | null} */
  stands = null;
  #next = Date.now();

  /**
   * Takes what now stands as a step; as part of the last one where both have the same `merge`, or where nothing has changed.
   *
   * @param {{ pattern: object, said: string, merge: string | null, shelved: Shelved | null }} now
   */
  take(now) {
    const before = this.stands;
    const same = before !== null && JSON.stringify(before.pattern) === JSON.stringify(now.pattern);
    const joined = before !== null && (same || (now.merge !== null && before.merge === now.merge));
    if (before && !joined) {
      this.past.push(before);
      if (this.past.length > DEPTH) this.past.shift();
    }
    if (!same) this.future = [];
    const made = same ? before.made : Date.now();
    this.stands = before && joined ? { ...now, made, n: before.n, at: before.at } : { ...now, made, n: this.#next++ };
  }

  /** Goes one step back; the step that then stands, if there was one. */
  back() {
    return this.#over(this.past, this.future);
  }

  /** Goes one step on again. */
  on() {
    return this.#over(this.future, this.past);
  }

  /**
   * Goes to a step by its number, over all between; null where it is not known.
   *
   * @param {number} n
   */
  go(n) {
    const is = (/** @type {Step} */ step) => step.n === n;
    const way = this.past.some(is) ? () => this.back() : this.future.some(is) ? () => this.on() : null;
    if (!way) return null;
    while (this.stands?.n !== n) way();
    return this.stands;
  }

  /**
   * What stands on the shelf at that place from now on, null for nothing.
   *
   * @param {string} id
   * @param {Shelved | null} shelved
   */
  shelve(id, shelved) {
    for (const step of [...this.past, ...this.future, ...(this.stands ? [this.stands] : [])]) {
      if (step.shelved?.id === id) step.shelved = shelved;
    }
  }

  /** All of it, to be kept over a reload. */
  kept() {
    return { past: this.past, stands: this.stands, future: this.future };
  }

  /** @param {{ past: Step[], stands: Step | null, future: Step[] }} kept */
  restore({ past, stands, future }) {
    Object.assign(this, { past, stands, future });
    const all = [...past, ...future, ...(stands ? [stands] : [])].map((step) => step.n);
    this.#next = Math.max(this.#next, ...all.map((n) => n + 1));
  }

  /**
   * @param {Step[]} from
   * @param {Step[]} to
   */
  #over(from, to) {
    const step = from.pop();
    if (!step) return null;
    if (this.stands) to.push(this.stands);
    this.stands = step;
    return step;
  }
}
