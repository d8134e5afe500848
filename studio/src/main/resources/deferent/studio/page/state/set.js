// The set that is being put together: patterns in order, each for so many counts. Every change shows at once and can be taken back; what
// the studio says of it, when each begins, how one passes into the next, follows as soon as it is worked out.

import { post } from './live.js';
import { Saving } from './saving.js';

const KEPT = 'deferent.set';
const REST = 180; // milliseconds of quiet before a changed set is asked about
const DEPTH = 100; // steps kept to go back over
const MOST = 1000; // counts of one pattern
/** Beats of a song that one cycle lasts, at most. */
export const MOST_BEATS = 32;
/** Counts of a phrase of music: what a pattern is stretched by. */
export const EIGHT = 8;
/** Counts that a pattern gets when it is put into the set: a phrase of music, our choice. */
export const FIRST_COUNTS = 8;

/**
 * A pattern in the set: of the shelf by its id, or one that stands in the set alone. `key` is its own as long as the page stands.
 *
 * @typedef {{ key: number, id?: string, pattern?: any, name: string, counts: number, turn?: BodyTurn, beats_a_cycle?: number }} Step `beats_a_cycle`: how many beats of the set's song a cycle lasts; unsaid, the studio chooses
 *
 * A turn of the body: 90 or 180 degrees to the performer's left, below 0 to the right, and on which count of the pattern it begins.
 * @typedef {{ turn_deg: number, count: number }} BodyTurn
 *
 * The song that the set is spun to, and its beat, from 0, on which it begins.
 * @typedef {{ id: string, name: string, from_beat?: number }} Song
 *
 * Where a pattern's counts begin in the song, and what the song's tempo asks of it.
 * @typedef {{ told: Told, asked: Told[], one_s: number, counts: number, beats_a_cycle: number, own_time: boolean }} InSong
 *
 * What the studio says of one; of one that is gone neither when nor how long.
 * @typedef {{ name: string, id?: string, phrase?: string, counts_asked: number, counts?: number, starts_s?: number, seconds?: number,
 *   kept_told?: Told, reached?: boolean, reach_told?: Told, danger?: 'calm' | 'care' | 'danger', danger_told?: Told, missing?: boolean, missing_told?: Told, turn?: { starts_s: number, seconds: number, turn_deg: number, told: Told[] }, in_song?: InSong,
 *   pattern?: any, moves?: import('../stage/thumb.js').Moves }} Answered
 *
 * @typedef {{ text: string, key?: string, why?: string, tone?: string }} Told
 * @typedef {'easy' | 'practised' | 'hard'} Grade
 * @typedef {{ after: number, way?: 'led' | 'same' | 'none' | 'gone', starts_s?: number, seconds?: number, grade?: Grade, kind?: string, told?: Told, none?: Told }} Passed
 * @typedef {{ times_s: number[], left: Work, right: Work }} Working
 * @typedef {{ grip: number[], shoulder: number[] }} Work
 * @typedef {{ name: string, told: Told[], seconds: number, counts: number, steps: Answered[], transitions: Passed[], work?: Working, faults?: Told[] }} Answer
 *
 * Where everything lies in time: as the studio says, or, until it has, as far as can be told from what it said before.
 * @typedef {{ step: Step, said: Answered | undefined, starts: number, seconds: number }} Block
 * @typedef {{ after: number, at: number, starts: number, seconds: number, said: Passed | undefined }} Joint
 * @typedef {{ blocks: Block[], joints: Joint[], seconds: number, counts: number }} Laid
 *
 * @typedef {{ id: string, revision: string, content: string }} Kept
 * @typedef {{ key: string, form?: string, words: string, sung: boolean, filmed: boolean }} Ending a file that a set is taken away as
 * @typedef {{ name: string, steps: Step[], hardest?: Grade, song?: Song, made: number, merge: string | null }} Stands the hardest transition it takes, where not the usual
 */

export class ShelfSet extends EventTarget {
  /**
   * @param {import('./shelf.js').Shelf} shelf
   * @param {import('./live.js').Live} live
   * @param {(problem: any) => void} complain
   */
  constructor(shelf, live, complain) {
    super();
    this.shelf = shelf;
    this.live = live;
    this.complain = complain;
    /** @type {Stands} */
    this.stands = { name: '', steps: [], made: 0, merge: null };
    /** @type {Stands[]} */
    this.past = [];
    /** @type {Stands[]} */
    this.future = [];
    /** What the studio said of what stands, or of what stood before. @type {Answer | null} */
    this.answer = null;
    /** @type {Step[]} */
    this.of = []; // the steps that the answer is about
    /** @type {any} */
    this.error = null;
    this.working = false;
    /** Where it is on the shelf. @type {Kept | null} */
    this.kept = null;
    /** The step that is chosen. @type {number | null} */
    this.chosen = null;
    /** The joint that is chosen, by the key of the step before it. @type {number | null} */
    this.joint = null;
    /** A part that plays over and over, seconds. @type {{ from: number, to: number } | null} */
    this.loop = null;
    this.shown = false; // whether it lies along the foot
    this.moment = 0; // where it would play from, seconds
    /** @type {Map<number, Answered>} */
    this.said = new Map(); // by key, what was last said of a step
    /** @type {Map<string, Passed>} */
    this.passed = new Map(); // by the keys before and after
    this.next = 1;
    this.stood = false; // whether it lay along the foot when this tab was left
    this.listed = ''; // what was on the shelf when it was last looked at
    this.changed = false; // on the shelf, by somebody else
    this.suggesting = ''; // how far it has come
    /** @type {Ending[]} */
    this.endings = []; // none before somebody looks
    this.stopped = false; // by whoever asked
    /** A file of it that is written. @type {Saving | null} */
    this.saving = null;
    /** @type {Laid | null} */
    this.lies = null;
    this.recall();
    shelf.addEventListener('state', () => this.#shelfChanged());
  }

  get steps() {
    return this.stands.steps;
  }

  get name() {
    return this.stands.name;
  }

  /** Whether what the studio said is about what stands. */
  get known() {
    return this.answer !== null && this.of === this.steps;
  }

  /** Whether it is from the shelf, and no longer what is there. */
  get unsaved() {
    return this.steps.length > 0 && (!this.kept || this.kept.content !== content(this.stands));
  }

  /** @param {number | null} key */
  at(key) {
    return this.steps.findIndex((step) => step.key === key);
  }

  // What changes it ---------------------------------------------------------------------------------------------------------------

  /**
   * Puts patterns in after the chosen one, or at the end; the last of them is chosen.
   *
   * @param {{ id?: string, pattern?: any, name: string, counts?: number }[]} patterns
   */
  add(patterns) {
    const at = this.at(this.chosen);
    const place = at < 0 ? this.steps.length : at + 1;
    const added = patterns.map((one) => ({ counts: FIRST_COUNTS, ...one, key: this.next++ }));
    this.chosen = added[added.length - 1]?.key ?? this.chosen;
    this.joint = null;
    this.#change({ steps: this.steps.toSpliced(place, 0, ...added) });
  }

  /**
   * @param {number} key
   * @param {number} to its place from then on
   */
  move(key, to) {
    const from = this.at(key);
    const place = Math.max(0, Math.min(this.steps.length - 1, to));
    if (from < 0 || place === from) return false;
    this.#change({ steps: this.steps.toSpliced(from, 1).toSpliced(place, 0, this.steps[from]) });
    return true;
  }

  /**
   * @param {number} key
   * @param {number} counts
   * @param {string | null} [merge] one step of undo with those before that say the same
   */
  stretch(key, counts, merge = null) {
    const at = this.at(key);
    const to = Math.max(1, Math.min(MOST, Math.round(counts)));
    if (at < 0 || this.steps[at].counts === to) return false;
    const { turn } = this.steps[at];
    // A turn of the body stays within the pattern.
    this.#change({ steps: this.steps.with(at, { ...this.steps[at], counts: to, ...(turn ? { turn: { ...turn, count: Math.min(to, turn.count) } } : {}) }) }, merge);
    return true;
  }

  /**
   * Longer or shorter by counts of eight, or by one.
   *
   * @param {number} key
   * @param {number} by 1 or −1
   * @param {boolean} fine
   */
  stretchBy(key, by, fine) {
    const { counts } = this.steps[this.at(key)];
    const to = fine ? counts + by : by > 0 ? (Math.floor(counts / EIGHT) + 1) * EIGHT : (Math.ceil(counts / EIGHT) - 1) * EIGHT;
    return this.stretch(key, Math.max(fine ? 1 : Math.min(counts, EIGHT), to), 'stretch ' + key);
  }

  /**
   * Another turn of the body in a pattern; after the last of them none.
   *
   * @param {number} key
   */
  turnOn(key) {
    const step = this.steps[this.at(key)];
    const next = TURNS[TURNS.indexOf(step.turn?.turn_deg ?? 0) + 1];
    this.turnBody(key, next ? { turn_deg: next, count: step.turn?.count ?? 1 } : undefined);
  }

  /**
   * @param {number} key
   * @param {BodyTurn | undefined} turn none where there is none
   */
  turnBody(key, turn) {
    const at = this.at(key);
    const { counts } = this.steps[at];
    const within = turn && { ...turn, count: Math.max(1, Math.min(counts, Math.round(turn.count))) };
    this.#change({ steps: this.steps.with(at, { ...this.steps[at], turn: within }) }, 'turn ' + key);
  }

  /**
   * How many beats of the song a cycle of a pattern lasts.
   *
   * @param {number} key
   * @param {number} beats 0 where the studio is to choose
   */
  beat(key, beats) {
    const at = this.at(key);
    const within = beats ? Math.max(1, Math.min(MOST_BEATS, Math.round(beats))) : undefined;
    this.#change({ steps: this.steps.with(at, { ...this.steps[at], beats_a_cycle: within }) }, 'beats ' + key);
  }

  /**
   * Spins it to a song.
   *
   * @param {Song | undefined} song none where it goes by no song
   */
  sing(song) {
    this.#change({ song }, 'song');
  }

  /** @param {number} key */
  remove(key) {
    const at = this.at(key);
    if (at < 0) return;
    const steps = this.steps.toSpliced(at, 1);
    this.chosen = steps[Math.min(at, steps.length - 1)]?.key ?? null;
    this.joint = null;
    this.#change({ steps });
  }

  /**
   * Another pattern in the place of one, for as many counts.
   *
   * @param {number} key
   * @param {{ id?: string, pattern?: any, name: string }} other
   */
  replace(key, other) {
    const at = this.at(key);
    if (at < 0) return;
    const { counts, turn, beats_a_cycle } = this.steps[at];
    const step = { ...other, counts, turn, beats_a_cycle, key: this.next++ };
    this.chosen = step.key;
    this.#change({ steps: this.steps.with(at, step) });
  }

  /** @param {string} name */
  rename(name) {
    if (name !== this.name) this.#change({ name }, 'name');
  }

  /** Begins anew; what stood comes back with undo. */
  clear() {
    this.kept = null;
    this.chosen = this.joint = null;
    this.#change({ steps: [], name: '', hardest: undefined, song: undefined });
  }

  undo() {
    this.#over(this.past, this.future);
  }

  redo() {
    this.#over(this.future, this.past);
  }

  /**
   * @param {Stands[]} from
   * @param {Stands[]} to
   */
  #over(from, to) {
    const step = from.pop();
    if (!step) return;
    to.push(this.stands);
    this.stands = step;
    this.#settle();
  }

  /**
   * @param {Partial<Stands>} change
   * @param {string | null} [merge]
   */
  #change(change, merge = null) {
    const joined = merge !== null && this.stands.merge === merge && !this.future.length;
    if (!joined) {
      this.past.push(this.stands);
      if (this.past.length > DEPTH) this.past.shift();
    }
    this.future = [];
    this.stands = { ...this.stands, ...change, made: Date.now(), merge };
    this.#settle();
  }

  #settle() {
    if (this.at(this.chosen) < 0) this.chosen = null;
    if (this.at(this.joint) < 0) this.joint = null;
    this.lies = null;
    this.error = null;
    this.#keep();
    this.#ask();
    this.tell();
  }

  /** The next change is a step of undo of its own. */
  pause() {
    this.stands.merge = null;
  }

  /** @param {number | null} key */
  choose(key) {
    this.chosen = key;
    this.joint = null;
    this.tell();
  }

  /** @param {number} key of the step before it */
  chooseJoint(key) {
    this.joint = key;
    this.chosen = null;
    this.tell();
  }

  /**
   * A part that plays over and over; null is the whole.
   *
   * @param {{ from: number, to: number } | null} loop
   */
  setLoop(loop) {
    this.loop = loop;
    this.tell();
    this.dispatchEvent(new Event('loop'));
  }

  /** @param {boolean} on */
  show(on) {
    if (on === this.shown) return;
    this.shown = on;
    this.#keep();
    if (on && this.steps.length && !this.known) this.#ask();
    this.tell();
    this.dispatchEvent(new Event('shown'));
  }

  // What the studio says of it ----------------------------------------------------------------------------------------------------

  /** The set as the shelf keeps it. */
  get document() {
    return document(this.stands);
  }

  #ask() {
    clearTimeout(this.resting);
    if (!this.shown) return;
    if (!this.steps.length) {
      this.answer = null;
      this.of = [];
      this.working = false;
      return;
    }
    this.working = true;
    this.resting = setTimeout(() => this.#find(), REST);
  }

  async #find() {
    const { stands } = this;
    const { steps } = stands;
    /** @type {any} */
    let answer;
    try {
      answer = await post({ ask: 'set', ...asked(stands) });
    } catch {
      answer = { error: UNREACHED };
    }
    if (this.steps !== steps) return;
    this.working = false;
    this.error = answer.error ?? null;
    if (!answer.error) this.#take(answer, steps);
    this.tell();
  }

  /**
   * @param {Answer} answer
   * @param {Step[]} steps
   */
  #take(answer, steps) {
    this.answer = answer;
    this.of = steps;
    this.lies = null;
    // A pattern that comes again and again has its picture once.
    const pictures = new Map(answer.steps.filter((said) => said.moves).map((said) => [said.id ?? said.name, said.moves]));
    for (const said of answer.steps) said.moves ??= pictures.get(said.id ?? said.name);
    this.said = new Map(steps.map((step, i) => [step.key, answer.steps[i]]));
    this.passed = new Map();
    for (const passed of answer.transitions) {
      const [before, after] = [steps[passed.after], steps[passed.after + 1]];
      if (before && after) this.passed.set(before.key + ' ' + after.key, passed);
    }
    this.dispatchEvent(new Event('answered'));
  }

  /** Asks anew what was not answered. */
  again() {
    this.error = null;
    this.#ask();
    this.tell();
  }

  /** @returns {Laid} */
  get laid() {
    this.lies ??= this.known ? this.#answered() : this.#guessed();
    return this.lies;
  }

  #answered() {
    const answer = /** @type {Answer} */ (this.answer);
    let at = 0;
    const blocks = this.steps.map((step, i) => {
      const said = answer.steps[i];
      // What is gone takes no time.
      const block = { step, said, starts: said.starts_s ?? at, seconds: said.seconds ?? 0 };
      at = block.starts + block.seconds;
      return block;
    });
    return { blocks, joints: this.#joints(blocks), seconds: answer.seconds, counts: answer.counts };
  }

  // As long a count as it had, one after the other.
  #guessed() {
    const { answer } = this;
    const usual = answer && answer.counts ? answer.seconds / answer.counts : 1;
    let at = 0;
    let counts = 0;
    const blocks = this.steps.map((step) => {
      const said = this.said.get(step.key);
      const seconds = said?.missing ? 0 : step.counts * (said?.counts && said.seconds ? said.seconds / said.counts : usual);
      const block = { step, said, starts: at, seconds };
      at += seconds;
      counts += step.counts;
      return block;
    });
    return { blocks, joints: this.#joints(blocks), seconds: at, counts };
  }

  /** @param {Block[]} blocks */
  #joints(blocks) {
    return blocks.slice(1).map((block, after) => {
      const before = blocks[after];
      const said = this.passed.get(before.step.key + ' ' + block.step.key);
      const ends = before.starts + before.seconds;
      const starts = this.known && said?.starts_s !== undefined ? said.starts_s : ends;
      const seconds = this.known && said?.seconds !== undefined ? said.seconds : Math.max(0, block.starts - ends);
      return { after, at: starts + seconds / 2, starts, seconds, said };
    });
  }

  /**
   * Which step is on at a moment.
   *
   * @param {number} seconds
   */
  stepAt(seconds) {
    const { blocks } = this.laid;
    let [low, high] = [0, blocks.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (blocks[middle].starts <= seconds + 1e-6) low = middle + 1;
      else high = middle;
    }
    return Math.max(0, low - 1);
  }

  /**
   * Which pattern is on at a moment, and which comes next; its last eight counts are counted down.
   *
   * @param {number} seconds
   */
  told(seconds) {
    const { blocks } = this.laid;
    const i = this.stepAt(seconds);
    const name = (/** @type {Block | undefined} */ one) => (one ? (one.said?.name ?? one.step.name) : '');
    const [block, after] = [blocks[i], blocks.slice(i + 1).find((one) => !one.said?.missing)];
    if (!block || !after) return { now: name(block), next: '' };
    const turn = this.known ? block.said?.turn : undefined;
    const each = block.seconds / (block.said?.counts || block.step.counts);
    if (turn && seconds < turn.starts_s + turn.seconds) {
      const till = Math.ceil((turn.starts_s - seconds) / each - 1e-6);
      if (till <= EIGHT) return { now: name(block), next: turnSaid(turn.turn_deg) + (till > 0 ? ' in ' + till : '') };
    }
    const left = Math.ceil((block.starts + block.seconds - seconds) / each - 1e-6);
    return { now: name(block), next: name(after) + (left > 0 && left <= EIGHT ? ' in ' + left : '') };
  }

  /**
   * The counts from one moment to another: when each falls, and what is said.
   *
   * @param {number} from
   * @param {number} to
   */
  counts(from, to) {
    /** @type {{ time: number, text: string }[]} */
    const found = [];
    const { blocks, seconds } = this.laid;
    blocks.forEach(({ said, step, seconds: lasts }, i) => {
      // In a song a pattern is counted from 1 on a beat, which may be after it is entered.
      const begins = (/** @type {Block} */ block) => block.said?.in_song?.one_s ?? block.starts;
      const after = blocks[i + 1];
      const ends = after ? begins(after) : seconds;
      const first = begins(blocks[i]);
      if (ends <= from || first >= to || !lasts) return;
      const one = lasts / (said?.counts || step.counts);
      for (let k = 0; first + k * one < ends - one / 2; k++) {
        const time = first + k * one;
        if (time >= from - 1e-9 && time < to) found.push({ time, text: String((k % EIGHT) + 1) });
      }
    });
    return found;
  }

  /**
   * A set of the shelf's patterns in the place of what stands; resolves to whether there is one.
   *
   * @param {number} count how many patterns
   * @returns {Promise<boolean>}
   */
  suggest(count) {
    this.suggesting = 'Looking';
    this.error = null;
    this.tell();
    return new Promise((resolve) => {
      this.live.stream({ ask: 'set-suggest', count }, (part) => {
        if (part.progress) this.suggesting = part.progress.text;
        if (part.set) {
          this.chosen = this.joint = null;
          this.#change({ steps: this.#read(part.set), hardest: part.set.hardest });
        }
        if (part.error && !this.stopped) this.error = part.error;
        if (part.done || part.dropped || part.error) {
          this.suggesting = '';
          this.stopped = false;
          resolve(!!part.set);
        }
        this.tell();
      });
    });
  }

  /** Looks for no set any more. */
  stopSuggesting() {
    this.stopped = true;
    this.live.stop('set-suggest');
  }

  /**
   * Writes it as a file, which then goes to the downloads.
   *
   * @param {Pick<Ending, 'key' | 'form' | 'filmed'>} as
   */
  take({ key, form, filmed }) {
    if (this.saving?.progress) return;
    const dark = filmed && globalThis.document.documentElement.dataset.theme === 'dark';
    const wishes = { ...(form ? { form } : {}), ...(dark ? { dark } : {}) };
    this.saving = new Saving(this.live, { ask: 'set-take', ...asked(this.stands), as: key, wishes }, () => this.tell());
    this.tell();
  }

  /** Which files it can be taken away as; where the studio does not answer they are asked for again. */
  async lookEndings() {
    if (this.endings.length) return;
    try {
      this.endings = (await (await fetch('api/endings')).json()).set_endings;
    } catch {
      this.endings = [];
    }
    this.tell();
  }

  // Keeping -----------------------------------------------------------------------------------------------------------------------

  /**
   * Puts it on the shelf, under its name; resolves to whether it is there now.
   *
   * @param {boolean} [copy]
   * @returns {Promise<boolean>}
   */
  async save(copy = false) {
    const { shelf } = this;
    const over = copy ? null : this.kept;
    await shelf.known();
    if (!this.name) this.stands = { ...this.stands, name: this.#freeName() };
    const { stands } = this;
    const twin = shelf.sets.find((other) => other.id !== over?.id && other.name.toLowerCase() === stands.name.toLowerCase());
    if (twin) {
      this.complain({ where: `a set called “${twin.name}”`, what: 'is there already', right: 'give this one another name' });
      this.tell();
      return false;
    }
    const id = over?.id ?? shelf.freeId(stands.name);
    try {
      const revision = await shelf.put(id, document(stands), over?.revision ?? null);
      this.kept = { id, revision, content: content(stands) };
    } catch (/** @type {any} */ problem) {
      if (problem.status === 412) {
        await shelf.refresh();
        if (!over) return this.save(true);
        this.changed = true; // elsewhere
      } else {
        this.complain(problem);
      }
      this.tell();
      return false;
    }
    this.changed = false;
    this.#keep();
    this.tell();
    return true;
  }

  #freeName() {
    const taken = new Set(this.shelf.sets.map((other) => other.name));
    let free = UNNAMED;
    for (let i = 2; taken.has(free); i++) free = UNNAMED + ' ' + i;
    return free;
  }

  /**
   * Takes one from the shelf; resolves to what puts it back, or to null.
   *
   * @param {{ id: string, name: string, revision: string }} other
   * @returns {Promise<(() => void) | null>}
   */
  async removeSaved({ id, name, revision }) {
    const { shelf } = this;
    try {
      const { pattern } = await shelf.load(id);
      await shelf.remove(id, revision);
      return () => shelf.putBack(id, name, pattern).catch((problem) => this.complain(problem));
    } catch (problem) {
      this.complain(problem);
      return null;
    }
  }

  /**
   * Opens one of the shelf; what stood comes back with undo.
   *
   * @param {string} id
   */
  async open(id) {
    try {
      const { pattern, revision } = await this.shelf.load(id);
      this.chosen = this.joint = null;
      this.loop = null;
      this.moment = 0;
      this.changed = false;
      this.#change({ name: pattern.name, steps: this.#read(pattern), hardest: pattern.hardest, song: pattern.song });
      this.kept = { id, revision, content: content(this.stands) };
      this.#keep();
      this.tell();
      return true;
    } catch (problem) {
      this.complain(problem);
      return false;
    }
  }

  /**
   * @param {any} sent
   * @returns {Step[]}
   */
  #read(sent) {
    return sent.steps.map((/** @type {any} */ step) => read(step, this.next++));
  }

  #keep() {
    try {
      sessionStorage.setItem(KEPT, JSON.stringify({ name: this.name, steps: this.steps, hardest: this.stands.hardest, song: this.stands.song, kept: this.kept, shown: this.shown }));
    } catch {
      sessionStorage.removeItem(KEPT);
    }
  }

  /** Goes on where this tab was left. */
  recall() {
    try {
      const found = JSON.parse(sessionStorage.getItem(KEPT) || 'null');
      if (!found) return;
      this.stands = { name: found.name, steps: found.steps, hardest: found.hardest, song: found.song, made: 0, merge: null };
      this.kept = found.kept;
      this.stood = !!found.shown;
      this.next = 1 + Math.max(0, ...this.steps.map((step) => step.key));
    } catch {
      sessionStorage.removeItem(KEPT);
    }
  }

  // A pattern or a song that was saved anew, renamed or removed is so in the set too.
  #shelfChanged() {
    const listed = [...this.shelf.patterns, ...this.shelf.songs].map((one) => one.id + one.revision).sort().join();
    if (listed === this.listed) return;
    this.listed = listed;
    if (this.stands.song || this.steps.some((step) => step.id)) this.#ask();
  }

  tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/** Turns of the body in the order in which they are gone through, degrees to the performer's left. */
const TURNS = [0, 90, 180, -90, -180];

/** A turn of the body in words. @param {number | undefined} degrees */
export const turnSaid = (degrees) => (degrees ? `${Math.abs(degrees) === 90 ? 'quarter' : 'half'} turn to the ${degrees > 0 ? 'left' : 'right'}` : 'no turn');

/** What a set is called that nobody has named. */
export const UNNAMED = 'Set';

/** @param {Stands} stands */
function document({ name, steps, hardest, song }) {
  return { format: 1, kind: 'set', name: name || UNNAMED, steps: steps.map(written), ...(hardest ? { hardest } : {}), ...(song ? { song } : {}) };
}

/** A step as it is kept. @param {Step} step */
function written({ id, name, pattern, counts, turn, beats_a_cycle }) {
  return { ...(id ? { id, name } : { pattern }), counts, ...(turn ? { turn } : {}), ...(beats_a_cycle ? { beats_a_cycle } : {}) };
}

/**
 * @param {any} step
 * @param {number} key
 * @returns {Step}
 */
function read({ id, name, pattern, counts, turn, beats_a_cycle }, key) {
  return { key, ...(id ? { id, name } : { pattern, name: pattern.name }), counts, ...(turn ? { turn: { count: 1, ...turn } } : {}), ...(beats_a_cycle ? { beats_a_cycle } : {}) };
}

/** A set as it is asked about. @param {Stands} stands */
export const asked = ({ name, steps, hardest, song }) => ({ name: name || UNNAMED, steps: steps.map(written), ...(hardest ? { hardest } : {}), ...(song ? { song } : {}) });

/** What a save would change. @param {Stands} stands */
const content = (stands) => JSON.stringify(document(stands));

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
