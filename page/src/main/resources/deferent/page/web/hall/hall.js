// The hall file: patterns that practise with whoever holds the phone. A list of small moving figures; one of them large, played,
// counted, looped; and a log of it that leaves as a file. It asks nothing of any network.

import { MovingThumb, drawings, rest } from '../stage/thumb.js';
import { asked } from '../state/care.js';
import { Notebook, ownStorage } from './notebook.js';
import { Show, stepped } from './show.js';
import { SongPlayer } from './song.js';

const EDGE = 18; // pixels left free beside the figure
const NEAR = '300px'; // so far outside the window small figures are made ready
const LEAST = 5; // seconds of play that are worth an entry

/**
 * @typedef {{ name: string, phrase: string, log: string, note: string, tempo: number, period_s: number, stand: string, listed: boolean,
 *   counts: import('./pulse.js').Beat[], parts: import('./pulse.js').Beat[], dangers: string[], does: Record<string, string>,
 *   links: Line[], watch: Line[], next: { name: string, text: string, to: number | null }[] }} Pattern
 * @typedef {{ text: string, warns: boolean }} Line
 * @typedef {{ name: string, pattern: number | null, tempo: number, period_s: number, dangers: string[], counts: number, starts_s: number, one_s: number, count_s: number, said: string, enters: number, lines: Line[], onward: string, wait_s: number, passage: any }} Step
 * @typedef {{ name: string, told: Line[], song: import('./song.js').Song | null, steps: Step[] }} PatternSet
 */

/** @type {(selector: string) => any} */
const $ = (selector) => document.querySelector(selector);

/** @param {string} tag @param {string} text @param {string} kind */
function made(tag, text = '', kind = '') {
  const element = document.createElement(tag);
  if (text) element.textContent = text;
  if (kind) element.className = kind;
  return element;
}

class Hall {
  /** @type {any} */
  #lock = null;
  #wanted = false; // whether the screen is to be kept awake
  /** @type {IntersectionObserver} */
  #near;
  /** @type {PatternSet | null} */
  #within = null;
  #went = '';
  /** @type {Map<PatternSet, SongPlayer>} */
  #songs = new Map();
  #down = 0; // how far down the list was left
  /** @type {number[]} */
  #looped = []; // the first and the last part that are looped

  constructor() {
    const given = JSON.parse($('#hall').textContent);
    /** @type {Pattern[]} */
    this.patterns = given.patterns;
    /** @type {PatternSet[]} */
    this.sets = given.sets;
    this.notebook = new Notebook(ownStorage());
    this.show = new Show($('#stage canvas'));
    this.figure = this.show.figure;
    this.drawings = drawings;
    this.open = -1; // the pattern that is large; none
    this.#near = new IntersectionObserver((entries) => this.#ready(entries), { rootMargin: NEAR });
    this.#list();
    this.#listen();
    document.body.classList.add('ready');
  }

  get player() {
    return this.show.player;
  }

  /** A pattern's moving points, unpacked when they are first asked for. @param {number} i */
  #scene(i) {
    return JSON.parse($('#scene-' + i).textContent);
  }

  // The list.

  #list() {
    const list = $('#patterns');
    list.textContent = '';
    this.patterns.forEach((pattern, i) => {
      if (!pattern.listed) return;
      const item = made('li');
      const button = made('button', '', 'pattern');
      button.setAttribute('type', 'button');
      const thumb = new MovingThumb();
      thumb.dataset.scene = String(i);
      this.#near.observe(thumb);
      const words = made('span', '', 'said');
      words.append(made('b', pattern.name));
      if (pattern.phrase && pattern.phrase !== pattern.name) words.append(made('small', pattern.phrase));
      const done = made('small', '', 'done');
      done.dataset.log = pattern.log;
      words.append(done);
      button.append(thumb, words);
      button.addEventListener('click', () => this.#show(i));
      item.append(button);
      list.append(item);
    });
    $('#sets').hidden = $('#sets-head').hidden = !this.sets.length;
    this.sets.forEach((set, i) => {
      const item = made('li');
      const button = made('button', '', 'set');
      button.setAttribute('type', 'button');
      button.append(made('b', set.name), made('small', set.told[0].text));
      button.addEventListener('click', () => this.#showSet(i));
      item.append(button);
      $('#sets').append(item);
    });
    this.#ticks();
  }

  /** @param {IntersectionObserverEntry[]} entries */
  #ready(entries) {
    for (const { target, isIntersecting } of entries) {
      if (!isIntersecting) continue;
      const thumb = /** @type {MovingThumb} */ (target);
      this.#near.unobserve(thumb);
      thumb.moves = this.#scene(Number(thumb.dataset.scene));
      if (document.body.classList.contains('pictured')) continue;
      performance.mark('pictured');
      document.body.classList.add('pictured');
    }
  }

  #ticks() {
    for (const done of document.querySelectorAll('.done')) {
      const minutes = this.notebook.minutes(done.dataset.log);
      done.textContent = minutes ? minutes + ' min' + (this.notebook.ticked(done.dataset.log) ? ', today too' : '') : '';
      done.classList.toggle('ticked', minutes > 0);
    }
    const { entries } = this.notebook;
    $('#log-open').hidden = !entries.length;
  }

  // A set.

  /** @param {number} i */
  #showSet(i) {
    const set = this.sets[i];
    $('#set-name').textContent = set.name;
    const told = $('#set-told');
    told.textContent = '';
    for (const line of set.told) told.append(lined(line));
    const steps = $('#steps');
    steps.textContent = '';
    set.steps.forEach((step, at) => {
      const item = made('li');
      const button = /** @type {HTMLButtonElement} */ (made('button', '', 'step'));
      button.type = 'button';
      button.disabled = step.pattern === null;
      button.append(made('b', step.name), made('small', step.said));
      button.addEventListener('click', () => this.#step(set, at));
      item.append(button);
      if (step.lines.length) {
        const lines = made('ul');
        for (const line of step.lines) lines.append(lined(line));
        item.append(lines);
      }
      if (step.onward) item.append(made('p', step.onward, 'onward'));
      steps.append(item);
    });
    this.#screen('set');
  }

  /** @param {PatternSet} set @param {number} at */
  #step(set, at) {
    this.#within = set;
    this.#screen('stage');
    const spun = (/** @type {Step} */ step) => (step.pattern === null ? null : { pattern: stepped(this.patterns[step.pattern], step), scene: this.#scene(step.pattern) });
    const player = this.#song(set);
    if (player) this.show.sing(set.steps, at, spun, player);
    else this.show.follow(set.steps, at, spun);
    this.#shown();
  }

  // What plays a set by its song, made when it is first asked for.
  /** @param {PatternSet} set */
  #song(set) {
    if (!set.song) return null;
    let player = this.#songs.get(set);
    if (!player) {
      player = new SongPlayer(set.song, $('#song-' + this.sets.indexOf(set)));
      this.#songs.set(set, player);
    }
    return player;
  }

  // The big figure.

  /** @param {number} i */
  #show(i) {
    this.#within = null;
    this.#screen('stage');
    this.show.alone(this.patterns[i], this.#scene(i));
    this.#shown();
  }

  #shown() {
    this.#resize();
    this.#buttons();
    $('#play').focus({ preventScroll: true });
  }

  // Another pattern, or the passage to it.
  #load() {
    const { show } = this;
    const pattern = /** @type {Pattern} */ (show.pattern);
    const { steps } = this.#within ?? { steps: [] };
    const step = steps[show.step];
    this.open = step ? (step.pattern ?? -1) : this.patterns.indexOf(pattern);
    $('#name').textContent = (show.passing ? 'Into ' : '') + pattern.name;
    const dangers = $('#dangers');
    dangers.textContent = '';
    for (const danger of new Set([...pattern.dangers, ...(step ? step.dangers : [])])) dangers.append(made('li', danger));
    $('#cue').textContent = !step ? '' : show.passing ? steps[show.step - 1].onward : show.step + 1 + ' of ' + steps.length + ': ' + step.said + '. ' + step.onward;
    this.#looped = [];
    this.#chips(pattern);
    this.#resize();
  }

  /** @param {Pattern} pattern */
  #chips(pattern) {
    const loop = $('#loop');
    // A song goes on; a part of a cycle does not come round in it.
    loop.hidden = this.player instanceof SongPlayer;
    for (const chip of loop.querySelectorAll('button')) chip.remove();
    pattern.parts.forEach(({ said }, i) => {
      const chip = made('button', said);
      chip.setAttribute('type', 'button');
      chip.setAttribute('aria-pressed', 'false');
      chip.addEventListener('click', () => this.#loop(i));
      loop.append(chip);
    });
  }

  // One part, or with another all from the one to the other; a press on the only one is the whole cycle again.
  /** @param {number} i */
  #loop(i) {
    const { player } = this;
    if (player instanceof SongPlayer) return;
    const { parts } = this.patterns[this.open];
    const [first, last] = this.#looped;
    if (first === undefined) this.#looped = [i, i];
    else if (first === last) this.#looped = first === i ? [] : [Math.min(first, i), Math.max(first, i)];
    else this.#looped = [i, i];
    const [from, to] = this.#looped;
    if (from === undefined) player.loop(0, 1);
    else player.loop(parts[from].share, to + 1 < parts.length ? parts[to + 1].share : 1);
    document.querySelectorAll('#loop button').forEach((/** @type {Element} */ chip, /** @type {number} */ k) => chip.setAttribute('aria-pressed', String(from !== undefined && k >= from && k <= to)));
  }

  /** @param {string} name list, set or stage */
  #screen(name) {
    if (name !== 'stage') {
      this.player.pause();
      this.open = -1;
    }
    if (document.body.dataset.screen !== 'set' && document.body.dataset.screen !== 'stage') this.#down = scrollY;
    for (const id of ['list', 'set', 'stage']) $('#' + id).hidden = id !== name;
    scrollTo(0, name === 'list' ? this.#down : 0);
    document.body.dataset.screen = name;
    if (name === 'list') this.#ticks();
  }

  #resize() {
    if ($('#stage').hidden) return;
    const above = $('#head').offsetHeight;
    // Seen from afar the number stands below the light, not before it.
    const below = $('#panel').offsetHeight + (this.figure.far ? $('#count').offsetHeight : 0);
    this.figure.resize({ above: above + EDGE, right: EDGE, below: below + EDGE, left: EDGE });
    this.show.draw();
  }

  #buttons() {
    const { player } = this;
    $('#stage').classList.toggle('playing', player.playing);
    $('#hint').hidden = player.playing || player.gone > 0;
  }

  #awake() {
    const wanted = this.player.playing;
    if (wanted === this.#wanted) return;
    this.#wanted = wanted;
    if (!wanted) {
      if (this.#lock) this.#lock.release();
      this.#lock = null;
      return;
    }
    const { wakeLock } = /** @type {any} */ (navigator);
    if (!wakeLock) return;
    wakeLock.request('screen').then(
      (/** @type {any} */ lock) => {
        if (this.#wanted) this.#lock = lock;
        else lock.release();
      },
      () => {}, // a battery that is low may refuse
    );
  }

  // Words, log.

  #tell() {
    const pattern = this.patterns[this.open];
    const told = $('#told');
    told.textContent = '';
    const section = (/** @type {string} */ heading, /** @type {HTMLElement[]} */ lines, kind = '') => {
      if (!lines.length) return;
      const list = made('ul', '', kind);
      list.append(...lines);
      told.append(made('h3', heading), list);
    };
    section('Danger', pattern.dangers.map((text) => made('li', text)), 'dangers');
    section('What each hand does', [made('li', 'Left: ' + pattern.does.left), made('li', 'Right: ' + pattern.does.right), made('li', pattern.does.together)]);
    section('How they link', pattern.links.map(lined));
    section('What to watch for', pattern.watch.map(lined));
    const next = pattern.next.map(({ name, text, to }) => {
      const item = made('li');
      if (to === null || !this.patterns[to].listed) item.append(made('b', name + (name ? ': ' : '')));
      else {
        const button = made('button', name);
        button.setAttribute('type', 'button');
        button.addEventListener('click', () => {
          $('#words').close();
          this.#show(to);
        });
        item.append(button, ' ');
      }
      item.append(text);
      return item;
    });
    section('Leads to', next);
    if (pattern.note) told.append(made('h3', 'Note'), made('p', pattern.note, 'note'));
    $('#words h2').textContent = pattern.name;
    this.player.pause();
    $('#words').showModal();
    $('#words .sheet').scrollTop = 0;
  }

  async #done() {
    const { player } = this;
    player.pause();
    const pattern = this.patterns[this.open];
    if (player.practised < LEAST) {
      this.#leave();
      return;
    }
    const minutes = $('#minutes');
    minutes.value = String(Math.max(0.1, Math.round(player.practised / 6) / 10));
    $('#note').value = '';
    this.#choose('');
    $('#done h2').textContent = pattern.name;
    const answer = await asked($('#done'));
    if (answer === 'keep') {
      const said = Number(minutes.value);
      const note = $('#note').value.trim();
      this.notebook.add({
        pattern: pattern.log,
        ...this.#part(),
        minutes: said > 0 ? said : player.practised / 60,
        tempo_cycles_per_min: Math.round(10 * pattern.tempo * player.speed) / 10,
        ...(this.#went ? { went: this.#went } : {}),
        ...(note ? { note } : {}),
      });
      this.#leave();
      this.#offer();
    } else if (answer === 'drop') {
      this.#leave();
    }
  }

  // What of the pattern was practised, where it was not all of it: one hand, some counts.
  #part() {
    const { hand } = this.figure;
    const [first, last] = this.#looped;
    const said = hand === 'both' ? [] : [hand + ' hand'];
    if (first !== undefined) {
      const { parts } = this.patterns[this.open];
      const named = (/** @type {number} */ i) => (/^\d/.test(parts[i].said) || !i ? '' : parts.slice(0, i).findLast(({ said: before }) => /^\d/.test(before))?.said ?? '') + parts[i].said;
      said.push(first === last ? 'count ' + named(first) : 'counts ' + named(first) + ' to ' + named(last));
    }
    return said.length ? { part: said.join(', ') } : {};
  }

  #leave() {
    this.#screen(this.#within ? 'set' : 'list');
  }

  /** @param {string} went */
  #choose(went) {
    this.#went = went;
    for (const button of document.querySelectorAll('#went button')) button.setAttribute('aria-pressed', String(button.dataset.went === went));
  }

  // The log as a file, at the end of every practice: what a phone keeps for a page that was opened from a file, it may also forget.
  #offer() {
    const { entries } = this.notebook;
    const sum = Math.round(10 * entries.reduce((all, entry) => all + entry.minutes, 0)) / 10;
    $('#log p').textContent =
      (entries.length === 1 ? 'One practice' : entries.length + ' practices') +
      ', ' +
      sum +
      ' min in all. ' +
      (this.notebook.kept ? 'This phone may forget them: save them as a file.' : 'This browser keeps nothing of a page like this: save them as a file before you close it.');
    const link = $('#log a');
    if (link.href) URL.revokeObjectURL(link.href);
    link.href = URL.createObjectURL(new Blob([this.notebook.text()], { type: 'application/json' }));
    link.download = this.notebook.file();
    $('#log').showModal();
  }

  #listen() {
    const { figure } = this;
    const press = (/** @type {string} */ selector, /** @type {() => void} */ act) => $(selector).addEventListener('click', act);
    const flip = (/** @type {string} */ selector, /** @type {(on: boolean) => void} */ act) =>
      press(selector, () => {
        const on = $(selector).getAttribute('aria-pressed') !== 'true';
        $(selector).setAttribute('aria-pressed', String(on));
        act(on);
      });
    this.show.addEventListener('step', () => this.#load());
    this.show.addEventListener('state', () => {
      this.#awake();
      this.#buttons();
    });
    press('#tell', () => this.#tell());
    press('#end', () => this.#done());
    press('#set-back', () => this.#screen('list'));
    press('#log-open', () => this.#offer());
    flip('#numbers', (on) => {
      $('#stage').classList.toggle('numbered', on);
      this.#resize();
    });
    flip('#still', (on) => rest(on));
    flip('#more', (on) => {
      $('#setup').hidden = !on;
      this.#resize();
    });
    flip('#far', (on) => {
      figure.far = on;
      $('#stage').classList.toggle('far', on);
      this.#resize();
    });
    for (const sun of document.querySelectorAll('.sun')) {
      sun.addEventListener('click', () => {
        const light = document.documentElement.dataset.theme === 'dark';
        document.documentElement.dataset.theme = light ? 'light' : 'dark';
        for (const each of document.querySelectorAll('.sun')) each.setAttribute('aria-pressed', String(light));
        for (const thumb of document.querySelectorAll('moving-thumb')) thumb.theme = document.documentElement.dataset.theme;
        this.#resize();
      });
    }
    for (const button of document.querySelectorAll('#went button')) button.addEventListener('click', () => this.#choose(button.dataset.went));
    new ResizeObserver(() => this.#resize()).observe($('#stage'));
    addEventListener('keydown', (event) => {
      const { target } = event;
      if (event.key !== ' ' || this.open < 0 || !(target instanceof Element) || target.closest('button, input, textarea, dialog')) return;
      event.preventDefault();
      this.show.play();
    });
  }
}

/** @param {Line} line */
function lined({ text, warns }) {
  return made('li', text, warns ? 'warns' : '');
}

window.deferentHall = new Hall();
