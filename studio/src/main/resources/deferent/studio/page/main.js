// Puts the page together: one session, one clock, one shelf, and the parts that show them.

import { FIRST, Session } from './state/session.js';
import { FLASHES } from './state/care.js';
import { Clock } from './state/clock.js';
import { Pulse } from './state/pulse.js';
import { Shelf } from './state/shelf.js';
import { Keeping } from './state/keeping.js';
import { Trail } from './state/trail.js';
import * as memory from './state/memory.js';
import { Crossings } from './state/crossings.js';
import { Seek } from './state/seek.js';
import { ShelfMap } from './state/map.js';
import { TakeAway } from './state/take.js';
import * as address from './state/address.js';
import './stage/stage.js';
import './stage/strip.js';
import './parts/phrase-line.js';
import './parts/shelf-mark.js';
import './parts/verbs.js';
import './parts/transport.js';
import './parts/stage-tools.js';
import { SHOWS } from './parts/cord-tools.js';
import './parts/side-panel.js';
import './parts/page-tools.js';
import './parts/word-list.js';
import './parts/take-away.js';

const KEPT = 'Nothing is lost: the pattern stands in this page’s address, from # on.';
const AWAY = 'The studio does not answer; see that it still runs. The page goes on by itself once it does. ' + KEPT;
const SHUT = `The studio was closed or started anew, and this page’s key died with it. ${KEPT} Open the studio anew: press Enter in its terminal, or start it again; then put that part behind the new address.`;

const NOTE = 30; // pixels that a sentence of one line takes under the phrase

const $ = (name) => document.querySelector(name);

export class Desk {
  constructor() {
    this.session = new Session();
    this.clock = new Clock();
    this.pulse = new Pulse(this.clock);
    this.shelf = new Shelf();
    this.keeping = new Keeping(this.session, this.shelf, {
      say: (text, undo) => this.notices.say(text, undo),
      complain: (problem) => this.complain(problem),
      opened: () => this.stage.frame(),
    });
    this.trail = new Trail(this.session, () => this.#openAddress());
    this.crossings = new Crossings(this.session);
    this.seek = new Seek(this.session);
    this.map = new ShelfMap(this.session, this.shelf);
    this.take = new TakeAway(this);
    this.stage = $('deferent-stage');
    this.strip = $('deferent-strip');
    this.side = $('side-panel');
    this.notices = $('page-notices');
    this.keys = $('key-list');
    this.words = $('word-list');
    this.away = $('take-panel');
    this.phrase = $('phrase-line');
    this.unanswered = false;
    this.theme = localStorage.getItem('deferent.theme') || 'auto';
    this.singleKeys = localStorage.getItem('deferent.keys') !== 'off';
    /** @type {{ side: Protocol.Side, slip: number, seconds: number }} */
    this.slip = { side: 'left', slip: 0.01, seconds: 5 };
    this.cared = localStorage.getItem('deferent.care') === 'known';
    this.#tools(localStorage.getItem('deferent.tools') === 'open');
    this.#colours();
    this.stage.covered = () => this.#covered();
    this.stage.connect(this.session, this.clock);
    this.strip.connect(this.session, this.clock);
    for (const part of [this.phrase, $('shelf-mark'), $('pattern-verbs'), $('transport-bar'), $('stage-tools'), $('cord-tools'), this.side, $('page-tools'), this.notices, this.keys, this.words, this.away]) part.connect(this);
    this.session.addEventListener('state', () => this.#changed());
    this.session.addEventListener('scene', () => this.#scene());
    this.session.addEventListener('back', () => this.#backAgain());
    this.clock.addEventListener('state', () => this.#careful());
    this.crossings.addEventListener('state', () => this.#gates());
    this.session.live.addEventListener('close', () => this.#heard(AWAY));
    this.session.live.addEventListener('shut', () => this.#heard(SHUT));
    this.session.live.addEventListener('open', () => {
      if (this.unanswered) this.shelf.refresh();
      this.#heard(null);
    });
    matchMedia('(prefers-color-scheme: light)').addEventListener('change', () => this.#colours());
    addEventListener('keydown', (event) => this.#key(event));
    addEventListener('pagehide', () => this.#keep());
    addEventListener('beforeunload', (event) => this.session.unsaved && event.preventDefault());
    // The transport's height is known once it is drawn, and changes with the window.
    new ResizeObserver(() => this.stage.frame()).observe($('transport-bar'));
    this.shelf.refresh();
    if (!this.#goOnFromBefore()) this.#openAddress();
  }

  // What is asked for ------------------------------------------------------------------------------------------------------------

  /**
   * @param {Protocol.Do | 'play' | 'fit' | 'arms' | 'keep' | 'let-go' | 'tap' | 'count' | 'save' | 'share' | 'take' | 'words' | 'keys' | 'strip' | 'tools'} what
   * @param {Protocol.Carrier} [carrier]
   */
  act(what, carrier) {
    const { session, clock } = this;
    switch (what) {
      case 'play':
        if (clock.playing) clock.play(false);
        else this.#play();
        break;
      case 'fit':
        this.side.show('reading');
        session.askFit(carrier);
        break;
      case 'arms':
        this.side.show('reading');
        session.askArms();
        break;
      case 'keep':
        session.keep(SHOWS[(SHOWS.indexOf(session.show) + 1) % SHOWS.length]);
        break;
      case 'let-go':
        if (session.aside) session.back();
        else this.#letGo();
        break;
      case 'tap': {
        const tempo = this.pulse.tap();
        if (tempo && session.size('tempo_cycles_per_min')) session.change([{ set: 'tempo_cycles_per_min', to: tempo }], 'tap');
        break;
      }
      case 'count':
        this.pulse.turn();
        $('transport-bar').soon();
        clock.dispatchEvent(new Event('tick'));
        break;
      case 'save':
        this.side.show('shelf');
        this.keeping.save({});
        break;
      case 'share':
        this.#share();
        break;
      case 'take':
        this.away.open();
        break;
      case 'tools':
        this.#tools(!this.tools);
        break;
      case 'strip':
        this.strip.turn();
        $('transport-bar').soon();
        this.stage.frame(true);
        break;
      case 'words':
        this.words.open();
        break;
      case 'keys':
        this.keys.open();
        break;
      default:
        session.change([{ do: what }]);
    }
  }

  async #play() {
    const { clock, session } = this;
    if (!this.cared && this.#fast()) {
      const answer = await this.notices.care();
      if (answer === 'stay') return;
      this.know();
      if (answer === 'slow') while (this.#fast() && clock.slower(1)) session.dispatchEvent(new Event('state'));
    }
    clock.play(true);
  }

  /** Whoever was told of fast lights is not told again. */
  know() {
    this.cared = true;
    localStorage.setItem('deferent.care', 'known');
  }

  // From the moment the stage shows; the moment comes back with the pattern.
  async #letGo() {
    const { clock, session } = this;
    const was = { phase: clock.phase, playing: clock.playing };
    clock.play(false);
    const error = session.error;
    if (!(await session.letGo(this.slip, was.phase))) {
      if (session.error && session.error !== error) this.notices.say(this.#sentence(session.error));
      clock.play(was.playing);
      return;
    }
    this.#once(was);
  }

  // Plays what is on the stage once; the moment of the pattern comes back with it.
  #once(was) {
    const { clock } = this;
    this.was = was;
    clock.once = true;
    clock.seek(0);
    if (!clock.calm.matches) this.#play();
  }

  /** Plays a passage, where it leads out of the pattern that stands. */
  playPassage(answer) {
    const { clock, session } = this;
    const was = session.aside ? this.was : { phase: clock.phase, playing: clock.playing };
    clock.play(false);
    session.pass(answer);
    this.#once(was);
  }

  /** Says what was wrong. */
  complain(error) {
    this.notices.say(this.#sentence(error));
  }

  #backAgain() {
    const { clock, was } = this;
    clock.once = false;
    clock.play(false);
    clock.period = this.session.scene.period;
    clock.seek(was.phase);
    clock.play(was.playing);
  }

  setSlip(slip) {
    this.slip = slip;
    this.session.dispatchEvent(new Event('state'));
  }

  #tools(open) {
    this.tools = open;
    localStorage.setItem('deferent.tools', open ? 'open' : 'shut');
    $('.corner').classList.toggle('shut', !open);
    $('transport-bar').soon();
  }

  // What lies over the stage at its edges: the phrase, the transport, and an open drawer beside it or a sheet below.
  #covered() {
    const stage = this.stage.getBoundingClientRect();
    const phrase = $('.phrase').getBoundingClientRect();
    const foot = $('transport-bar').getBoundingClientRect();
    const side = this.side.getBoundingClientRect();
    const beside = side.left > stage.left + stage.width / 3;
    return {
      above: phrase.height ? Math.max(0, phrase.bottom + NOTE - stage.top) : 0,
      right: beside && this.side.open ? Math.max(0, stage.right - side.left) : 0,
      below: foot.height ? Math.max(0, stage.bottom - foot.top) : 0,
      left: 0,
    };
  }

  #fast(speed = this.clock.speed) {
    return this.session.answer !== null && this.session.scene.turnsPerSecond() * speed > FLASHES;
  }

  // Lights that have become fast while they play stop first and ask.
  #careful() {
    if (!this.cared && this.clock.playing && this.#fast()) {
      this.clock.play(false);
      this.#play();
    }
  }

  /** Puts one hand's motion on the shelf under a name that phrases can then say. */
  async nameMotion(side, name) {
    const { hand, spin, tether_m } = this.session.pattern.pairing[side];
    try {
      await this.shelf.add({ format: 1, kind: 'motion', name, hand, spin, tether_m });
      this.notices.say('Named: ' + name + '; say it in a phrase');
    } catch (problem) {
      this.notices.say(this.#sentence(problem));
    }
  }

  /** Puts what a seek has found on the shelf. */
  async saveFound(answer) {
    const { seek } = this;
    if (!answer || seek.saved.has(answer.key)) return;
    seek.saved.add(answer.key);
    try {
      await this.shelf.add(answer.pattern);
      this.notices.say('Saved: ' + answer.said);
    } catch (problem) {
      seek.saved.delete(answer.key);
      this.notices.say(this.#sentence(problem));
    }
    seek.dispatchEvent(new Event('state'));
  }

  async removeMotion({ id, name, revision }) {
    try {
      const { pattern } = await this.shelf.load(id);
      await this.shelf.remove(id, revision);
      this.notices.say('Removed: ' + name, () => this.shelf.put(id, pattern, null).catch((problem) => this.notices.say(this.#sentence(problem))));
    } catch (problem) {
      this.notices.say(this.#sentence(problem));
      this.shelf.refresh();
    }
  }

  async #share() {
    if (!this.session.answer) return;
    const url = new URL(location.href);
    url.search = '';
    url.hash = await address.written(this.session.answer);
    try {
      await navigator.clipboard.writeText(url.href);
      this.notices.say('Address copied');
    } catch {
      this.notices.say('It stands in the address bar');
    }
  }

  setTheme(theme) {
    this.theme = theme;
    localStorage.setItem('deferent.theme', theme);
    this.#colours();
  }

  setSingleKeys(on) {
    this.singleKeys = on;
    localStorage.setItem('deferent.keys', on ? 'on' : 'off');
  }

  // What follows from a change ----------------------------------------------------------------------------------------------------

  #colours() {
    const light = this.theme === 'light' || (this.theme === 'auto' && matchMedia('(prefers-color-scheme: light)').matches);
    document.documentElement.dataset.theme = light ? 'light' : 'dark';
    this.stage.recolour();
    this.strip.recolour();
    this.session.dispatchEvent(new Event('state'));
  }

  #scene() {
    const { session } = this;
    this.clock.period = session.scene.period;
    const tempo = session.answer.readings.tempo_cycles_per_min;
    this.pulse.counts = tempo ? (session.scene.period * tempo) / 60 : 1;
    if (!session.dragging) {
      this.stage.canvas.setAttribute(
        'aria-label',
        `Stage: ${session.answer.phrase || session.answer.name}. Arrow keys turn the view, plus and minus zoom, H goes to the handles.`,
      );
      this.#careful();
    }
    if (!this.started) {
      this.started = true;
      this.stage.frame();
      if (this.left) this.#seeAgain(this.left.view);
      document.body.classList.add('ready');
      // Lights begin to move by themselves only where nobody asked for calm, nothing is fast, and they did not stand before a reload.
      const calm = this.clock.calm.matches || this.#fast() || this.left?.playing === false;
      if (!calm) this.clock.play(true);
    }
  }

  // Whether the server answers; while it does not, what is shown is what stood before.
  #heard(trouble) {
    this.unanswered = trouble !== null;
    this.notices.stay(trouble);
    this.session.dispatchEvent(new Event('state'));
  }

  #changed() {
    const { session } = this;
    document.body.classList.toggle('stands', !!session.error || this.unanswered);
    clearTimeout(this.writing);
    if (!session.answer || session.dragging) return;
    this.writing = setTimeout(async () => {
      const { pattern } = session;
      const hash = '#' + (await address.written(session.answer));
      if (session.pattern === pattern) this.trail.write(hash);
      document.title = (session.unsaved ? '* ' : '') + (session.answer.phrase || session.answer.name) + ' · Deferent studio';
      this.#speak();
    }, 350);
  }

  // The readings' first sentence, for those who listen, once things rest.
  #speak() {
    const { answer, error } = this.session;
    if (error || answer.detail !== 'settled') return;
    const told = answer.readings.told || [];
    const text = told.length ? told[0].text : '';
    const place = $('#spoken');
    if (place.textContent !== text) place.textContent = text;
  }

  async #openAddress() {
    const { session } = this;
    session.pause();
    try {
      const found = await address.read(location.hash);
      if (found.pattern) {
        session.open(found.pattern, { shelved: null, then: (good) => good || this.#begin() });
        return;
      }
      if (found.phrase) {
        session.say(found.phrase);
        return;
      }
    } catch {
      this.notices.say('The address holds no pattern that can be read; here is another.');
    }
    this.#begin();
  }

  // A page that was reloaded goes on where it was left.
  #goOnFromBefore() {
    const kept = memory.recalled(location.hash);
    if (!kept || !this.session.restore(kept.steps)) return false;
    const { clock, side } = this;
    this.left = kept;
    clock.phase = kept.phase;
    clock.speed = kept.speed;
    if (side.open) side.show(kept.tab);
    else side.tab = kept.tab;
    return true;
  }

  #seeAgain({ view, turn, lift, distance }) {
    const { stage } = this;
    stage.look.see(view, false);
    Object.assign(stage.camera, { turn, lift, distance });
    stage.camera.settle();
    stage.draw();
  }

  #keep() {
    const { clock, side, session } = this;
    const { view, turn, lift, distance } = this.stage.camera;
    const { phase, playing } = session.aside ? this.was : clock;
    memory.keep({ steps: session.steps.kept(), phase, speed: clock.speed, playing, tab: side.tab, view: { view, turn, lift, distance } });
  }

  #begin() {
    if (!this.session.answer) this.session.say(FIRST);
  }

  #sentence(problem) {
    const e = problem.error || problem;
    return [e.where, e.what].filter(Boolean).join(' ') + (e.right ? '; ' + e.right : '') + '.';
  }

  // Where what could come next could begin.
  #gates() {
    const { crossings } = this;
    const list = crossings.shown.map((c, i) => ({ time_s: c.from_s, says: c.told.text, chosen: crossings.chosen === i }));
    this.strip.gates(list, (i) => this.cross(i));
  }

  /** Plays the passage through one of the crossings. */
  async cross(i) {
    const answer = await this.crossings.passage(i);
    if (!answer) return;
    if (answer.error) this.complain(answer.error);
    else this.playPassage(answer);
  }

  /** Opens the pattern a passage ends in. */
  goOn() {
    const { passing } = this.session;
    if (passing) this.session.open(passing.after, { shelved: null, then: () => this.stage.frame() });
  }

  // Keys --------------------------------------------------------------------------------------------------------------------------

  #key(event) {
    const command = event.ctrlKey || event.metaKey;
    const writing = event.target.closest?.('input:not([type=radio]):not([type=checkbox]):not([type=range]), textarea');
    if (command && !event.altKey) {
      const key = event.key.toLowerCase();
      if (key === 'z' || key === 'y') {
        event.preventDefault();
        if (key === 'y' || event.shiftKey) this.session.redo();
        else this.session.undo();
      } else if (key === 's') {
        event.preventDefault();
        this.act('save');
      }
      return;
    }
    if (event.key === 'Escape' && this.session.aside && !document.querySelector('dialog[open]')) {
      event.preventDefault();
      this.session.back();
      return;
    }
    if (writing || event.altKey || document.querySelector('dialog[open]')) return;
    if (event.key === ' ' && event.target.closest?.('button, summary, a, input')) return;
    if (!this.singleKeys && event.key !== '?') return;
    const does = {
      ' ': () => this.act('play'),
      '[': () => this.clock.slower(1),
      ']': () => this.clock.slower(-1),
      ',': () => this.#step(-1),
      '.': () => this.#step(1),
      c: () => this.act('count'),
      b: () => this.act('tap'),
      s: () => this.act('swap'),
      r: () => this.act('reverse'),
      t: () => this.act('step-timing'),
      d: () => this.act('step-direction'),
      f: () => this.act('fit'),
      a: () => this.act('arms'),
      k: () => this.act('keep'),
      g: () => this.act('let-go'),
      v: () => this.stage.nextView(event.shiftKey ? -1 : 1),
      l: () => this.stage.ask(!this.stage.always),
      o: () => this.act('strip'),
      m: () => this.act('tools'),
      x: () => this.#alone(),
      h: () => this.#nextHandle(event.shiftKey ? -1 : 1),
      '/': () => this.phrase.focusField(),
      e: () => this.act('take'),
      w: () => this.act('words'),
      '?': () => this.act('keys'),
      1: () => this.side.turn('reading'),
      2: () => this.side.turn('sizes'),
      3: () => this.side.turn('shelf'),
      4: () => this.side.turn('crossings'),
      5: () => this.side.turn('seek'),
      6: () => this.side.turn('map'),
    }[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (does) {
      event.preventDefault();
      does();
    }
  }

  // Nothing but the figure, in the whole screen where the browser allows it.
  #alone() {
    const alone = document.body.classList.toggle('alone');
    if (alone) document.documentElement.requestFullscreen?.().catch(() => {});
    else if (document.fullscreenElement) document.exitFullscreen();
    this.stage.frame(true);
  }

  #step(by) {
    this.clock.play(false);
    this.clock.seek(this.clock.phase + by / 72);
  }

  #nextHandle(by) {
    const all = [...document.querySelectorAll('.handle')];
    if (!all.length) return;
    const at = all.indexOf(document.activeElement);
    all[at < 0 ? (by > 0 ? 0 : all.length - 1) : (at + by + all.length) % all.length].focus();
  }
}

const desk = new Desk();

// For measuring from outside: the stage with its drawer, the session with its counts, the clock.
window.deferentStage = desk.stage;
window.deferentDesk = desk;
