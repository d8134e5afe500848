// The browser's own way back and on: each step of the session is one entry of its history, so that back goes to the pattern before.

/** How long a way back may take to come, milliseconds; one that the browser has forgotten never comes. */
const PATIENCE = 500;

export class Trail {
  /** The place of the entry that stands. */
  #at = 0;
  /** Steps whose entry is of this page; going to one of a page before a reload would load it anew. @type {Set<number>} */
  #entered = new Set();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #going;

  /**
   * @param {import('./session.js').Session} session
   * @param {() => void} elsewhere called where an entry stands that no step is known of: its address says what to show
   */
  constructor(session, elsewhere) {
    this.session = session;
    this.elsewhere = elsewhere;
    session.addEventListener('step', () => this.#follow());
    addEventListener('popstate', (event) => this.#popped(event.state));
    addEventListener('hashchange', () => history.state === null && this.elsewhere());
  }

  /**
   * Writes the address of what stands.
   *
   * @param {string} hash
   */
  write(hash) {
    const { stands } = this.session.steps;
    if (stands) stands.hash = hash;
    if (hash !== location.hash) history.replaceState(history.state, '', location.pathname + location.search + hash);
  }

  #follow() {
    const { stands } = this.session.steps;
    if (!stands || this.#going !== undefined) return;
    // An address that somebody typed, or that the page was opened with, is an entry already.
    if (history.state === null) this.#mark(stands, stands.at ?? this.#at);
    else if (stands.n === history.state.step) return;
    else if (stands.at === undefined) this.#push(stands, this.#at + 1);
    else if (this.#entered.has(stands.n) && stands.at !== this.#at) this.#go(stands.at - this.#at);
    else this.#mark(stands, this.#at);
  }

  /**
   * @param {import('./steps.js').Step} step
   * @param {number} at
   */
  #mark(step, at) {
    this.#enter(step, at);
    history.replaceState({ step: step.n, at }, '');
  }

  /**
   * @param {import('./steps.js').Step} step
   * @param {number} at
   */
  #push(step, at) {
    this.#enter(step, at);
    history.pushState({ step: step.n, at }, '');
  }

  /**
   * @param {import('./steps.js').Step} step
   * @param {number} at
   */
  #enter(step, at) {
    step.at = at;
    this.#at = at;
    this.#entered.add(step.n);
  }

  /** @param {number} by */
  #go(by) {
    this.#going = setTimeout(() => {
      this.#going = undefined;
    }, PATIENCE);
    history.go(by);
  }

  /** @param {{ step: number, at: number } | null} state */
  #popped(state) {
    if (state === null) {
      this.#at++;
      return;
    }
    this.#at = state.at;
    const own = this.#going !== undefined;
    clearTimeout(this.#going);
    this.#going = undefined;
    if (own) {
      this.#follow(); // whoever undoes faster than the browser follows is followed once more
    } else if (!this.session.visit(state.step)) {
      history.replaceState(null, '');
      this.elsewhere();
    }
  }
}
