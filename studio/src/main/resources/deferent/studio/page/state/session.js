// The pattern being worked on: what the server last answered, what is asked of it next, and every change that can be undone.

import { Live, post } from './live.js';
import { Scene } from '../stage/scene.js';
import { Steps } from './steps.js';

// What takes longer to find than a hand to move.
export const SLOW_SHOWS = new Set(['hand-path', 'closest']);

/** What stands on the stage when nothing else is asked for. */
export const FIRST = 'isolation vs four-petal antispin';

const REST = 220; // milliseconds of quiet before the dear readings are asked for
const WORDS = 100; // milliseconds between two tellings of the readings while a hand drags
const [FEWEST, MOST] = [120, 360]; // samples of a cycle while a hand drags
const RATE = 240; // points a second of a poi that is let go: enough that a fast head's trail is round
const NEWEST = 'newest move'; // of this kind only the newest waits

export class Session extends EventTarget {
  constructor() {
    super();
    this.live = new Live();
    this.live.addEventListener('open', () => this.#tell('link'));
    this.live.addEventListener('close', () => this.#tell('link'));
    this.scene = new Scene();
    this.answer = null; // the last good answer
    this.error = null; // what was wrong with the last question
    this.said = ''; // the phrase as it stands in the line
    /** Whoever spins here, as last said: kept for the next phrase and the next visit. @type {{ performer?: Protocol.Performer, owned_m?: number[] }} */
    this.you = JSON.parse(localStorage.getItem('deferent.you') || '{}');
    this.wished = 0; // how often something else was said or changed
    this.steps = new Steps();
    this.rests = 0; // how often whoever types has rested: what is asked before and answered after still belongs to what came before
    /** Where the pattern is on the shelf. @type {import('./steps.js').Shelved | null} */
    this.shelved = null;
    this.dragging = null;
    this.fit = null;
    this.locked = new Set(); // sizes the fit must leave alone
    /** @type {Protocol.Show} */
    this.show = 'ideal'; // what a cord is asked to keep
    this.aside = null; // what is on the stage instead of the pattern, once through: a poi that was let go, or a passage and what it leads into
  }

  /** What is on the stage: the pattern, or what plays once instead. */
  get now() {
    return this.aside || this.answer;
  }

  /** The answer about a poi that was let go, while it is on the stage. */
  get letting() {
    return this.aside && this.aside.events ? this.aside : null;
  }

  /** The answer about a passage from one pattern to others, while it is on the stage. */
  get passing() {
    return this.aside && this.aside.passages ? this.aside : null;
  }

  /** What is played of a set, while it is on the stage. */
  get setting() {
    return this.aside && this.aside.set ? this.aside : null;
  }

  /**
   * The ideal, what a cord asks of the hand that keeps the figure, or what the head does when the hand keeps its path.
   *
   * @param {Protocol.Show} show
   */
  keep(show) {
    if (show === this.show) return;
    this.show = show;
    if (this.pattern) this.open(this.pattern, { step: false });
    this.#tell('state');
  }

  /**
   * Lets one poi go from a moment of what is shown; resolves to whether it is on the stage now.
   *
   * @param {import('../main.js').Desk['slip']} how
   */
  async letGo({ side, slip, seconds }, phase) {
    if (!this.pattern) return false;
    const asked = this.answer;
    let answer;
    try {
      const time = phase * this.scene.period;
      answer = await post({ ask: 'letgo', pattern: this.pattern, show: this.show, side, slip_m: slip, seconds, rate: RATE, time_s: time });
    } catch {
      answer = { error: { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then let go again' } };
    }
    if (this.answer.pattern !== asked.pattern) return false;
    if (answer.error) {
      this.error = answer.error;
      this.#tell('state');
      return false;
    }
    this.#putAside(answer, (scene, from) => scene.readLetGo(answer, from));
    return true;
  }

  /** Puts a passage on the stage, to be played once, or what follows it. */
  pass(answer) {
    if ((this.setting && answer.set) || (this.passing && answer.led === this.passing)) {
      // One after the other: nothing comes back between.
      this.#onStage(answer, (scene) => scene.read(answer));
      return;
    }
    this.#backInside();
    this.#putAside(answer, (scene) => scene.read(answer));
  }

  #putAside(answer, read) {
    this.standing = this.scene;
    this.#onStage(answer, read);
  }

  #onStage(answer, read) {
    this.aside = answer;
    this.scene = new Scene();
    read(this.scene, this.standing);
    this.dispatchEvent(new CustomEvent('scene', { detail: { answer } }));
    this.#tell('state');
  }

  /** Back from what plays once to the pattern. */
  back() {
    if (!this.#backInside()) return;
    this.dispatchEvent(new CustomEvent('scene', { detail: { answer: this.answer } }));
    this.#tell('state');
  }

  #backInside() {
    if (!this.aside) return false;
    this.aside = null;
    this.scene = this.standing;
    this.standing = null;
    this.#tell('back');
    return true;
  }

  /**
   * What each question about the pattern says besides its own.
   *
   * @param {Protocol.Said<Protocol.Pairing>} body
   * @returns {Protocol.Pairing}
   */
  #ask(body) {
    return { ask: 'pairing', detail: 'live', show: this.show, ...body };
  }

  get pattern() {
    return this.answer && this.answer.pattern;
  }

  /** Steps to go back over. */
  get past() {
    return this.steps.past;
  }

  /** Steps that were gone back over. */
  get future() {
    return this.steps.future;
  }

  /** Whether the pattern is from the shelf and no longer what stands there. */
  get unsaved() {
    return !!this.shelved && !!this.pattern && content(this.pattern) !== this.shelved.content;
  }

  /**
   * The pattern that stands is what the shelf has there.
   *
   * @param {{ id: string, revision: string, name: string, labels: string[] }} where
   */
  saved(where) {
    this.#shelve({ ...where, content: content(this.pattern) });
  }

  /**
   * Another name, other labels or another revision of what is on the shelf, or null where it is there no longer.
   *
   * @param {string} id
   * @param {{ revision: string, name: string, labels: string[] } | null} now
   */
  reshelved(id, now) {
    const { shelved } = this;
    if (shelved?.id === id) this.#shelve(now && { ...shelved, ...now }, id);
    else this.steps.shelve(id, null);
    this.#tell('state');
  }

  /** @param {import('./steps.js').Shelved | null} shelved */
  #shelve(shelved, id = shelved && shelved.id) {
    this.shelved = shelved;
    if (this.steps.stands) this.steps.stands.shelved = shelved;
    if (id) this.steps.shelve(id, shelved);
  }

  /** Whether the link on the stage is told as linked. */
  get linked() {
    const { readings, strip } = this.answer;
    return (readings.told || []).some((t) => t.key === 'link.' + strip.carrier && t.tone === 'good');
  }

  size(key) {
    return this.answer && this.answer.sizes.find((s) => s.key === key);
  }

  /** Asks for a phrase as it is being typed; errors are told, what stands stays. */
  say(text) {
    this.said = text;
    const wished = ++this.wished;
    this.fit = null;
    const merge = this.#joined('say');
    this.live.ask(
      () => {
        // Whoever types another phrase still is who they are and spins what they spin.
        const { performer = this.you.performer, kit } = this.pattern || {};
        return this.#ask({ phrase: text, performer, kit });
      },
      (answer, times) => {
        if (answer.error) this.#refused(answer.error, text);
        else this.#take(answer, times, { said: text, merge, newest: wished === this.wished });
      },
      'say',
    );
  }

  /**
   * One change or several at once, as one step of undo. Changes with the same `merge` in a row are one step. A function gives the
   * changes when it is their turn, from what then stands.
   *
   * @param {Protocol.Change[] | (() => Protocol.Change[])} changes
   * @param {string | null} [merge]
   */
  change(changes, merge = null, kind = 'change') {
    this.wished++;
    if (!this.pattern) return;
    this.fit = null;
    const joined = merge && this.#joined(merge);
    this.live.ask(
      () => this.#ask({ pattern: this.pattern, change: typeof changes === 'function' ? changes() : changes }),
      (answer, times) => {
        if (answer.error) this.#refused(answer.error);
        else this.#take(answer, times, { merge: joined });
      },
      kind,
    );
  }

  /**
   * Another whole pattern: from the shelf, a link or a fit.
   *
   * @param {object} pattern
   * @param {{ shelved?: any, fit?: any, step?: boolean, then?: (good: boolean) => void }} [how]
   */
  open(pattern, { shelved = this.shelved, fit = this.fit && pattern === this.pattern ? this.fit : null, step = true, then = undefined } = {}) {
    this.live.ask(
      () => this.#ask({ pattern }),
      (answer, times) => {
        if (answer.error) {
          this.#refused(answer.error);
        } else {
          this.shelved = shelved && { labels: [], content: content(answer.pattern), ...shelved };
          this.fit = fit;
          this.#take(answer, times, { step });
        }
        if (then) then(!answer.error);
      },
      'open',
    );
  }

  grab(key, from, phase) {
    const samples = this.scene.enough(FEWEST, MOST);
    this.dragging = { key, from, phase, base: this.pattern, moved: false, samples, carrier: this.answer.strip.carrier };
    this.fit = null;
  }

  /**
   * Each move is answered by the server and drawn, from as few samples as its curves need; none stands for another, unless the hand
   * is kept or the closest figure shown: that takes longer to find than a hand to move, and only the newest move waits. Else only
   * what is drawn is asked for; what is told of it follows now and then.
   *
   * @param {Protocol.Change[]} [change] in the place of the grab itself
   */
  drag(to, seen, change) {
    const { key, from, phase, base, samples, carrier } = this.dragging;
    this.dragging.moved = true;
    const time = phase * this.scene.period;
    const slow = SLOW_SHOWS.has(this.show);
    this.live.ask(
      this.#ask({ pattern: base, change: change || [{ grab: key, to, from, time_s: time }], samples, ...(slow ? {} : { told: false, carrier }) }),
      (answer, times) => {
        if (answer.error) this.#refused(answer.error);
        else if (slow) this.#take(answer, times, { step: false });
        else this.#moved(answer, times);
      },
      slow ? NEWEST : 'move',
      seen,
    );
  }

  /** Lets go; the whole drag is one step of undo. */
  release() {
    const moved = this.dragging && this.dragging.moved;
    this.dragging = null;
    if (!moved) return;
    const finish = () => {
      const moving = (q) => q && (q.kind === 'move' || q.kind === NEWEST);
      if (this.live.busy && (moving(this.live.asked) || this.live.waiting.some(moving))) {
        setTimeout(finish, 10);
        return;
      }
      if (this.answer.untold) this.#words();
      this.#step(null);
      this.#tell('state');
    };
    finish();
  }

  undo() {
    this.#goTo(this.steps.back());
  }

  redo() {
    this.#goTo(this.steps.on());
  }

  /** Goes to a step by its number; false where it is not known. */
  visit(n) {
    if (this.steps.stands?.n === n) return true;
    return this.#goTo(this.steps.go(n));
  }

  /**
   * Goes on where a page was left.
   *
   * @param {ReturnType<Steps['kept']>} kept
   */
  restore(kept) {
    this.steps.restore(kept);
    return this.#goTo(this.steps.stands);
  }

  /**
   * Finds sizes that close the link, and takes the smallest change; the others stay on offer.
   *
   * @param {Protocol.Carrier} [carrier]
   */
  async askFit(carrier) {
    return this.#fitted({ carrier, free: this.locked.size ? this.#free() : null });
  }

  /** Makes the pattern the largest that the performer's arms reach, its link closed where that can be had. */
  async askArms() {
    return this.#fitted({ arms: true, owned_m: this.you.owned_m });
  }

  /**
   * Says who spins, and with which tethers there are.
   *
   * @param {{ performer?: Protocol.Performer, owned_m?: number[] }} you
   */
  spin(you) {
    this.you = { ...this.you, ...you };
    localStorage.setItem('deferent.you', JSON.stringify(this.you));
    if (you.performer) this.open({ ...this.pattern, performer: you.performer });
    else this.#tell('state');
  }

  #free() {
    return this.answer.sizes.map((s) => s.key).filter((k) => k !== 'tempo_cycles_per_min' && !this.locked.has(k));
  }

  async #fitted(how) {
    const before = this.pattern;
    if (!before) return null;
    const { wished } = this;
    this.fitting = true;
    this.#tell('state');
    let fit;
    try {
      fit = await post({ ask: 'fit', pattern: before, ...how });
    } catch {
      fit = { error: { what: 'did not come', where: 'the fit', right: 'see that the studio still runs, then ask again' } };
    }
    this.fitting = false;
    // Whoever went on meanwhile keeps what they went on to.
    if (this.wished !== wished) {
      this.#tell('state');
      return null;
    }
    if (fit.error) {
      this.fit = { failed: fit.error, answers: [] };
      this.#tell('state');
      return this.fit;
    }
    fit.before = before;
    fit.chosen = -1;
    this.fit = fit;
    if (fit.answers.length && fit.answers[0].changes.length) this.chooseFit(0);
    else this.#tell('state');
    return fit;
  }

  chooseFit(i) {
    const fit = this.fit;
    fit.chosen = i;
    this.#tell('fitted');
    this.open(fit.answers[i].pattern, { fit });
  }

  /** Forgets what was wrong: the phrase that stands is the phrase again. */
  clearError() {
    this.error = null;
    if (this.steps.stands) this.said = this.steps.stands.said;
    this.#tell('state');
  }

  #goTo(step) {
    if (!step) return false;
    this.error = null;
    this.fit = null;
    this.#tell('step');
    this.live.ask(
      () => this.#ask({ pattern: step.pattern }),
      (answer, times) => {
        if (answer.error) {
          this.#refused(answer.error);
          return;
        }
        this.shelved = step.shelved;
        this.#take(answer, times, { step: false, said: step.said });
      },
      'undo',
    );
    return true;
  }

  #take(answer, times, { step = true, said = undefined, merge = null, newest = true }) {
    const stands = said ?? answer.phrase ?? this.said;
    // Whoever types faster than is answered keeps what was typed since.
    this.#show(answer, times, {
      said: newest ? stands : this.said,
      unsaid: said === undefined && answer.phrase === null,
      then: () => step && this.#step(merge, stands),
    });
    this.#tell('state');
  }

  // The stage draws at once, before anything else that wants to know.
  #show(answer, times, { said = answer.phrase ?? this.said, unsaid = answer.phrase === null, then = () => {} } = {}) {
    this.#backInside();
    this.answer = answer;
    this.error = null;
    this.scene.read(answer);
    this.said = said;
    this.unsaid = unsaid;
    then();
    this.dispatchEvent(new CustomEvent('scene', { detail: { answer, times } }));
    clearTimeout(this.resting);
    if (answer.detail !== 'settled') this.resting = setTimeout(() => this.#settle(), REST);
  }

  // A move: all that is told of it is still that of the move before.
  #moved(answer, times) {
    const { readings, numbers, begin } = this.answer;
    const wrong = this.error;
    this.#show({ ...answer, readings, numbers, begin, untold: true }, times);
    if (wrong) this.#tell('state');
    clearTimeout(this.telling);
    this.telling = setTimeout(() => this.#words(), Math.max(0, WORDS - (performance.now() - (this.toldAt || 0))));
  }

  // What is told of the move that stands.
  #words() {
    clearTimeout(this.telling);
    const asked = this.answer;
    if (!asked.untold) return;
    this.toldAt = performance.now();
    this.live.ask(
      () => this.#ask({ pattern: this.answer.pattern, body: false, samples: 24 }),
      (answer) => {
        if (answer.error || !this.answer.untold) return;
        const { readings, numbers, begin, strip } = answer;
        this.answer = { ...this.answer, readings, numbers, begin, untold: false };
        if (this.dragging) this.dragging.carrier = strip.carrier;
        this.#tell('state');
      },
      'words',
    );
  }

  #settle() {
    const asked = this.answer;
    this.live.ask(
      this.#ask({ pattern: asked.pattern, detail: 'settled' }),
      (answer) => {
        if (answer.error || this.pattern !== asked.pattern) return;
        this.answer = { ...this.answer, detail: 'settled', untold: false, readings: answer.readings, numbers: answer.numbers, begin: answer.begin };
        if (!this.aside && answer.scene.count !== this.scene.count) {
          this.answer.strip = answer.strip;
          this.scene.read(answer);
          this.dispatchEvent(new CustomEvent('scene', { detail: { answer: this.answer } }));
        }
        this.#tell('state');
      },
      'settled',
    );
  }

  #step(merge, said = this.said) {
    this.steps.take({ pattern: this.answer.pattern, said, merge, shelved: this.shelved });
    this.#tell('step');
  }

  /** @param {string} merge */
  #joined(merge) {
    return merge + ' ' + this.rests;
  }

  /** The next change starts a step of its own. */
  pause() {
    this.rests++;
  }

  #refused(error, text) {
    this.error = { ...error, text };
    this.#tell('state');
    if (!this.answer) this.#fill();
  }

  // A stage is never empty: where the very first question is refused, something else stands there while its error is told.
  #fill() {
    const { error, said } = this;
    this.live.ask(
      { ask: 'pairing', phrase: FIRST, detail: 'live' },
      (answer, times) => {
        if (answer.error || this.answer) return;
        this.#take(answer, times, { said });
        this.error = error;
        this.#tell('state');
      },
      'fill',
    );
  }

  #tell(what) {
    this.dispatchEvent(new Event(what));
  }
}

/** What a save would change of a pattern; its name and labels are the shelf's. */
const content = (pattern) => JSON.stringify([pattern.pairing, pattern.performer ?? null, pattern.kit ?? null]);
