// Puts the page together: one session, one clock, one shelf, and the parts that show them.

import { FIRST, Session } from './state/session.js';
import { Clock } from './state/clock.js';
import { Pulse } from './state/pulse.js';
import { Shelf } from './state/shelf.js';
import { Keeping } from './state/keeping.js';
import { Trail } from './state/trail.js';
import * as memory from './state/memory.js';
import { Transitions } from './state/transitions.js';
import { Seek } from './state/seek.js';
import { ShelfMap } from './state/map.js';
import { ShelfSet } from './state/set.js';
import { TakeAway } from './state/take.js';
import { Log, mayBeLog } from './state/log.js';
import { mayBeSong } from './state/song.js';
import { LearningPath } from './state/path.js';
import * as address from './state/address.js';
import { press } from './keys.js';
import { FastLights } from './fast-lights.js';
import { LessonLook } from './lesson-look.js';
import { SetPlayer } from './set-player.js';
import './parts/lesson-bar.js';
import './stage/stage.js';
import './stage/strip.js';
import './parts/shelf-mark.js';
import { sentence } from './parts/phrase-line.js';
import './parts/transport.js';
import { SHOWS } from './parts/cord-tools.js';
import './parts/side-panel.js';
import './parts/guide-book.js';
import './parts/page-tools.js';
import './parts/word-list.js';
import './parts/gallery.js';
import './parts/share.js';
import './parts/set-line.js';
import './parts/take-away.js';
import './parts/film-desk.js';
import './parts/song-desk.js';
import './parts/practice.js';

const KEPT = 'Nothing is lost: the pattern stands in this page’s address, from # on.';
const AWAY = 'The studio does not answer; see that it still runs. The page goes on by itself once it does. ' + KEPT;
const SHUT = `The studio was closed or started anew, and this page’s key died with it. ${KEPT} Open the studio anew: press Enter in its terminal, or start it again; then put that part behind the new address.`;

const OVER = 0.9998; // of what plays once: it has come to its end
const NARROW = 860; // pixels; up to there the drawer is a sheet below the stage, as in css/layout.css
const NOTE = 30; // pixels that a sentence of one line takes under the phrase

const $ = (name) => document.querySelector(name);

export class Desk {
  constructor() {
    this.session = new Session();
    this.clock = new Clock();
    this.pulse = new Pulse(this.clock);
    this.shelf = new Shelf();
    this.trail = new Trail(this.session, () => this.#openAddress());
    this.transitions = new Transitions(this.session);
    this.seek = new Seek(this.session);
    this.saving = new Keeping(this.session, this.shelf, this.seek, {
      say: (text, undo) => this.notices.say(text, undo),
      complain: (problem) => this.complain(problem),
      opened: () => this.stage.frame(),
      proposed: (name) => this.notices.say('Saved on the shelf as ' + name, () => this.side.name(), 'Name it'),
    });
    this.map = new ShelfMap(this.session, this.shelf);
    this.set = new ShelfSet(this.shelf, this.session.live, (problem) => this.complain(problem));
    this.player = new SetPlayer(this);
    this.take = new TakeAway(this);
    this.log = new Log();
    this.path = new LearningPath(this.session, this.log);
    this.stage = $('deferent-stage');
    this.strip = $('deferent-strip');
    this.side = $('side-panel');
    this.notices = $('page-notices');
    this.guide = $('guide-book');
    this.words = $('word-list');
    this.away = $('take-panel');
    this.sharing = $('share-panel');
    this.filmed = $('film-desk');
    this.sung = $('song-desk');
    this.practice = $('practice-log');
    this.phrase = $('phrase-line');
    this.gallery = $('figure-gallery');
    this.setLine = $('set-line');
    this.unanswered = false;
    this.theme = localStorage.getItem('deferent.theme') || 'auto';
    this.singleKeys = localStorage.getItem('deferent.keys') !== 'off';
    /** @type {{ side: Protocol.Side, slip: number, seconds: number }} */
    this.slip = { side: 'left', slip: 0.01, seconds: 5 };
    /** How much the readings tell. @type {'plain' | 'numbers'} */
    this.depth = localStorage.getItem('deferent.depth') === 'numbers' ? 'numbers' : 'plain';
    this.minding = sessionStorage.getItem('deferent.cautions') !== 'known';
    this.lights = new FastLights(this);
    this.lesson = new LessonLook(this);
    this.#colours();
    this.stage.covered = () => this.#covered();
    this.stage.connect(this.session, this.clock);
    this.strip.connect(this.session, this.clock);
    for (const part of [this.phrase, $('shelf-mark'), $('transport-bar'), $('tempo-bar'), $('cord-told'), $('lesson-bar'), $('set-line'), this.side, $('page-tools'), this.notices, this.guide, this.words, this.away, this.sharing, this.filmed, this.sung, this.practice, this.gallery]) part.connect(this);
    $('.mark-home').addEventListener('click', () => this.act('gallery'));
    this.session.addEventListener('state', () => this.#changed());
    this.session.addEventListener('scene', () => this.#scene());
    this.session.addEventListener('back', () => this.#backAgain());
    this.set.addEventListener('shown', () => this.#setShown());
    this.strip.addEventListener('turned', () => this.strip.shut || innerWidth <= NARROW || this.set.show(false));
    this.transitions.addEventListener('state', () => this.#gates());
    this.clock.addEventListener('state', () => this.#passed());
    this.session.live.addEventListener('close', () => this.#heard(AWAY));
    this.session.live.addEventListener('shut', () => this.#heard(SHUT));
    this.session.live.addEventListener('open', () => {
      if (this.unanswered) this.shelf.refresh();
      this.#heard(null);
    });
    matchMedia('(prefers-color-scheme: light)').addEventListener('change', () => this.#colours());
    addEventListener('keydown', (event) => press(this, event));
    addEventListener('dragover', (event) => event.dataTransfer?.types.includes('Files') && event.preventDefault());
    addEventListener('drop', (event) => this.#dropped(event));
    $('.alone-leave').addEventListener('click', () => this.alone(false));
    // Whoever leaves the whole screen by the browser's own key has the page again.
    document.addEventListener('fullscreenchange', () => document.fullscreenElement || this.alone(false));
    addEventListener('pagehide', () => this.#keep());
    addEventListener('beforeunload', (event) => this.session.unsaved && event.preventDefault());
    // The foot's height is known once it is drawn, and changes with the window.
    new ResizeObserver(() => this.stage.frame(!!this.started)).observe($('.foot'));
    this.shelf.refresh();
    if (!this.#goOnFromBefore()) this.#openAddress();
    if (this.set.stood) this.set.show(true);
  }

  // What is asked for ------------------------------------------------------------------------------------------------------------

  /**
   * @param {Protocol.Do | 'play' | 'fit' | 'arms' | 'keep' | 'let-go' | 'tap' | 'count' | 'save' | 'share' | 'take' | 'film' | 'song' | 'practice' | 'learn' | 'words' | 'gallery' | 'guide' | 'strip' | 'tools' | 'lesson' | 'set' | 'set-add' | 'set-play'} what
   * @param {Protocol.Carrier} [carrier]
   */
  act(what, carrier) {
    const { session, clock } = this;
    switch (what) {
      case 'play':
        if (this.player.on) this.player.turn();
        else if (clock.playing) clock.play(false);
        else this.lights.play();
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
        session.dispatchEvent(new Event('state'));
        clock.dispatchEvent(new Event('tick'));
        break;
      case 'save':
        this.#save();
        break;
      case 'share':
        this.sharing.open();
        break;
      case 'take':
        this.away.open();
        break;
      case 'film':
        this.filmed.open();
        break;
      case 'song':
        this.sung.open();
        break;
      case 'practice':
        this.practice.open();
        break;
      case 'learn':
        this.side.turn('learn');
        break;
      case 'tools':
        this.side.turn('tools');
        break;
      case 'strip':
        this.strip.turn();
        break;
      case 'set':
        this.side.turn('set');
        break;
      case 'set-add':
        this.addToSet();
        break;
      case 'set-play':
        this.set.show(true);
        this.player.turn();
        break;
      case 'lesson':
        this.lesson.turn();
        break;
      case 'words':
        this.words.open();
        break;
      case 'gallery':
        this.gallery.turn();
        break;
      case 'guide':
        this.guide.open();
        break;
      default:
        session.change([{ do: what }]);
    }
  }

  // The shelf is shown only where it has something to ask.
  async #save() {
    if (!(await this.saving.save({})) && this.saving.asked) this.side.show('shelf');
  }

  // From the moment the stage shows; the moment comes back with the pattern.
  async #letGo() {
    const { clock, session } = this;
    const was = { phase: clock.phase, playing: clock.playing };
    clock.play(false);
    const error = session.error;
    if (!(await session.letGo(this.slip, was.phase))) {
      if (session.error && session.error !== error) this.complain(session.error);
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
    if (!clock.calm.matches) this.lights.play();
  }

  /** Plays what leads out of the pattern that stands; after it the stage goes on with what it led into. */
  playPassage(answer) {
    const { clock, session } = this;
    const was = session.aside ? this.was : { phase: clock.phase, playing: clock.playing };
    clock.play(false);
    session.pass(answer);
    this.#once(was);
  }

  // Once a passage is over, the pattern that it led into goes on from there, as it is spun on cords.
  #passed() {
    const { clock, session } = this;
    const { passing } = session;
    if (!passing?.onward || clock.playing || clock.phase < OVER) return;
    const { onward, passages, legs, after } = passing;
    session.pass({ ...onward, onward: null, passages, legs, after, led: passing });
    clock.once = false;
    clock.seek(onward.phase);
    this.lights.play();
  }

  /**
   * Puts a stretch of the set on the stage. It plays in time, whatever the pattern was slowed to.
   *
   * @param {any} answer
   * @param {{ phase: number, moving: boolean, once: boolean }} how
   */
  putSet(answer, { phase, moving, once }) {
    const { clock, session } = this;
    const { speed, from, to } = clock;
    const was = session.aside ? this.was : { phase: clock.phase, playing: clock.playing, speed, from, to };
    const first = !session.setting;
    clock.play(false);
    session.pass(answer);
    this.was = was;
    clock.once = once;
    if (first) clock.speed = 1;
    clock.loop(0, 1);
    clock.seek(phase);
    if (moving) this.lights.play();
  }

  /** Puts what stands on the stage into the set. */
  addToSet() {
    const { session } = this;
    if (!session.pattern) return;
    this.set.show(true);
    this.set.add([this.standing()]);
    this.setLine.say(`${this.set.steps[this.set.at(this.set.chosen)].name} is in the set.`);
  }

  /** What stands, as the set takes it: of the shelf where it is there as it stands. */
  standing() {
    const { shelved, unsaved, pattern, answer } = this.session;
    if (shelved && !unsaved) return { id: shelved.id, name: shelved.name };
    const name = answer.phrase || answer.name;
    return { name, pattern: { ...pattern, name } };
  }

  /**
   * Moves a pattern of the set to another place; what happened, in words.
   *
   * @param {number} key
   * @param {number} to
   */
  moveInSet(key, to) {
    const { set } = this;
    if (!set.move(key, to)) return '';
    const at = set.at(key);
    const says = `${set.steps[at].name} is now ${at + 1} of ${set.steps.length}.`;
    this.setLine.say(says);
    return says;
  }

  /** Takes back what was changed last: of the set, while it is seen, or of the pattern. */
  undo() {
    const { set, session } = this;
    if (set.shown && set.past.length && (!session.past.length || set.stands.made > (session.steps.stands?.made ?? 0))) set.undo();
    else session.undo();
  }

  redo() {
    const { set, session } = this;
    const [ours, theirs] = [set.future.at(-1), session.future.at(-1)];
    if (set.shown && ours && (!theirs || ours.made < (theirs.made ?? 0))) set.redo();
    else session.redo();
  }

  // One thing at a time lies along the foot.
  #setShown() {
    if (!this.set.shown) this.player.leave();
    else if (innerWidth > NARROW) this.strip.turn(true);
    this.setLine.updateComplete.then(() => this.stage.frame(true));
  }

  // Words that are dragged about are no file.
  /** @param {DragEvent} event */
  #dropped(event) {
    const file = event.dataTransfer?.files[0];
    if (!file || event.defaultPrevented) return;
    event.preventDefault();
    this.drop(file);
  }

  /** Takes in the log of a hall file, finds the beats of a song, or watches a film. @param {File} file */
  async drop(file) {
    if (mayBeSong(file)) {
      if (this.filmed.dialog.open) this.filmed.dialog.close();
      this.sung.listen(file);
      return;
    }
    if (!mayBeLog(file)) {
      this.filmed.watch(file);
      return;
    }
    this.practice.open();
    await this.log.takeIn(file);
  }

  /** Says what was wrong. */
  complain(error) {
    this.notices.say(sentence(error.error || error));
  }

  #backAgain() {
    const { clock, was } = this;
    clock.once = false;
    clock.play(false);
    clock.period = this.session.scene.period;
    if (was.speed) {
      clock.speed = was.speed;
      clock.loop(was.from, was.to);
    }
    clock.seek(was.phase);
    clock.play(was.playing);
  }

  /**
   * Three sentences, or everything there is.
   *
   * @param {'plain' | 'numbers'} depth
   */
  tell(depth) {
    this.depth = depth;
    localStorage.setItem('deferent.depth', depth);
    this.session.dispatchEvent(new Event('state'));
  }

  /** The other of the two. */
  turnDepth() {
    this.side.show('reading');
    this.tell(this.depth === 'plain' ? 'numbers' : 'plain');
  }

  /** Shows what to mind whatever is spun, or no more in this session. */
  mindCautions(on) {
    this.minding = on;
    if (on) sessionStorage.removeItem('deferent.cautions');
    else sessionStorage.setItem('deferent.cautions', 'known');
    this.session.dispatchEvent(new Event('state'));
    if (!on) return;
    this.side.show('reading');
    setTimeout(() => this.side.querySelector('#care-list-head')?.focus());
  }

  setSlip(slip) {
    this.slip = slip;
    this.session.dispatchEvent(new Event('state'));
  }

  // What lies over the stage at its edges: the phrase, the line at the foot or the strip over it, and an open drawer beside it.
  #covered() {
    const stage = this.stage.getBoundingClientRect();
    const phrase = $(this.lesson?.on ? 'lesson-bar' : '.phrase').getBoundingClientRect();
    const note = $('.phrase-note').getBoundingClientRect();
    const foot = (this.setLine.lies ? this.setLine : this.strip.shut ? $('transport-bar') : this.strip.full).getBoundingClientRect();
    const side = this.side.getBoundingClientRect();
    const beside = innerWidth > NARROW;
    return {
      // On a narrow page a sentence takes several lines, and has nowhere to go but over the figure.
      above: phrase.height ? Math.max(0, (beside ? phrase.bottom + NOTE : Math.max(phrase.bottom, note.bottom)) - stage.top) : 0,
      right: beside && this.side.open ? Math.max(0, stage.right - side.left) : 0,
      below: foot.height ? Math.max(0, stage.bottom - foot.top) : 0,
      left: 0,
    };
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
    // What is picked from stands in the dark, whatever the page's colours.
    const light = !this.gallery.isOpen && (this.theme === 'light' || (this.theme === 'auto' && matchMedia('(prefers-color-scheme: light)').matches));
    document.documentElement.dataset.theme = light ? 'light' : 'dark';
    this.stage.recolour();
    this.strip.recolour();
    this.session.dispatchEvent(new Event('state'));
  }

  #scene() {
    const { session } = this;
    this.clock.period = session.scene.period;
    this.#counts();
    if (!session.dragging) {
      this.stage.canvas.setAttribute(
        'aria-label',
        `Stage: ${session.answer.phrase || session.answer.name}. Arrow keys turn the view, plus and minus zoom, H goes to the handles.`,
      );
      this.lights.mind();
    }
    if (!this.started) {
      this.started = true;
      localStorage.setItem('deferent.opened', 'yes');
      this.stage.frame();
      if (this.left) this.#seeAgain(this.left.view);
      document.body.classList.add('ready');
      // Lights begin to move by themselves only where nobody asked for calm, nothing is fast, and they did not stand before a reload.
      const calm = this.clock.calm.matches || this.lights.fast() || this.left?.playing === false;
      if (!calm) this.clock.play(true);
    }
  }

  // What is counted: of a set and of a passage their own counts, from pattern to pattern.
  #counts() {
    const { session, pulse, set } = this;
    const { setting, passing } = session;
    if (passing?.strip.counts) {
      this.counted = true; // by the passage, until the pattern is back
      pulse.follow(passing.strip.counts.map(({ time_s, text }) => ({ share: time_s / session.scene.period, text })));
      return;
    }
    if (setting) {
      const { from, to } = setting.set;
      this.counted = true; // by the set, until the pattern is back
      pulse.follow(set.counts(from, to).map(({ time, text }) => ({ share: (time - from) / (to - from), text })));
      return;
    }
    const counts = session.answer.strip.counts.filter((count) => /\d/.test(count.text)).map(({ time_s, text }) => ({ share: time_s / session.scene.period, text }));
    if (this.counted) pulse.follow(counts);
    else pulse.counts = counts;
    this.counted = false;
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
    document.body.classList.toggle('setting', !!session.setting);
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
    // What was changed just now has no address of its own yet.
    if (session.steps.stands) session.steps.stands.hash = location.hash;
    const { phase, playing } = session.aside ? this.was : clock;
    memory.keep({ steps: session.steps.kept(), phase, speed: clock.speed, playing, tab: side.tab === 'tools' ? 'reading' : side.tab, view: { view, turn, lift, distance } });
  }

  // Whoever was never here picks something first.
  #begin() {
    if (this.session.answer) return;
    if (localStorage.getItem('deferent.opened')) {
      this.session.say(FIRST);
      return;
    }
    this.gallery.open();
    document.body.classList.add('ready');
  }

  /** The gallery is all that is seen while something is picked, and nothing moves behind it. */
  choosing(on) {
    document.body.classList.toggle('choosing', on);
    if (on) {
      this.played = this.clock.playing;
      this.clock.play(false);
    } else if (this.played) {
      this.clock.play(true);
    }
    this.#colours();
  }

  // Where what could come next could begin.
  #gates() {
    const { transitions, session } = this;
    const cycle = session.scene.period;
    const list = transitions.shown.map((way, i) => ({ time_s: ((way.leaves_s % cycle) + cycle) % cycle, says: way.told.text, chosen: transitions.chosen === i }));
    this.strip.gates(list, (i) => this.goOver(i));
  }

  /** Plays one of the ways into what could come next. */
  async goOver(i) {
    const answer = await this.transitions.played(i);
    if (!answer) return;
    if (answer.error) this.complain(answer.error);
    else this.playPassage(answer);
  }

  /** Opens the pattern a passage ends in. */
  goOn() {
    const { passing } = this.session;
    if (passing) this.session.open(passing.after, { shelved: null, then: () => this.stage.frame() });
  }

  /** Nothing but the figure, in the whole screen where the browser allows it; and back. */
  alone(on = !document.body.classList.contains('alone')) {
    const alone = document.body.classList.toggle('alone', on);
    if (alone) document.documentElement.requestFullscreen?.().catch(() => {});
    else if (document.fullscreenElement) document.exitFullscreen();
    this.stage.frame(true);
  }

  /** A moment on or back, of which there are 72 in a cycle. */
  step(by) {
    this.clock.play(false);
    this.clock.seek(this.clock.phase + by / 72);
  }

  nextHandle(by) {
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
