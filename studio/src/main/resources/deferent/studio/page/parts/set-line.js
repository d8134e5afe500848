import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { cautions, cautionSigns, counted, gone, gradeOf, gradeSign, gradeWord, turnSign } from './set-signs.js';
import { lasting, minutes } from '../set-player.js';
import { EIGHT, turnSaid } from '../state/set.js';
import { sentence } from './phrase-line.js';
import { trimmed } from './units.js';
import '../stage/thumb.js';

const NARROW = matchMedia('(max-width: 860px)'); // as in css/layout.css: there the set lies in the sheet
const DRAGGED = 5; // pixels a pointer moves before it drags rather than presses
const AHEAD = 160; // pixels out of sight within which blocks are there
const LEAST = 20; // pixels of a block on average, at the widest view
const CLOSEST = 60; // pixels a second, at most
const EDGE = 40; // pixels at either end where a dragged block pulls the rest along
const GONE = 26; // pixels of a pattern that is gone
const NEAR = 0.6; // seconds that a loop lasts at least
const TICKS = [1, 2, 5, 10, 15, 30, 60, 120, 300];
const TICK = 54; // pixels between two marks of time, at least

/** @typedef {import('../state/set.js').Block} Block */
/** @typedef {import('../state/set.js').Joint} Joint */
/** @typedef {{ block: Block, i: number }} Seen */

/** The set along the foot of the stage: its patterns as long as they last, what leads from one to the next, what to mind, what tires. */
class SetLine extends Part {
  zoom = 1;
  scale = 1; // pixels a second
  wide = 0; // pixels that are seen
  from = 0; // pixels scrolled
  /** @type {{ key: number, by: number, to: number } | null} */
  drag = null;
  spoken = '';
  worked = '';
  laid = '';

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.set.addEventListener('state', () => this.requestUpdate());
    desk.clock.addEventListener('tick', () => this.#moment());
    NARROW.addEventListener('change', () => this.requestUpdate());
    this.sizes = new ResizeObserver(() => this.#sized());
  }

  /** Whether it lies along the foot. */
  get lies() {
    return !!this.desk?.set.shown && !NARROW.matches;
  }

  /** Says what happened, for those who listen. @param {string} text */
  say(text) {
    this.spoken = text;
    this.requestUpdate();
  }

  render() {
    const { set, player } = this.desk;
    this.hidden = !this.lies;
    if (!this.lies) return nothing;
    const { laid } = set;
    return html`<section class="set-desk" aria-label="The set">
      <div class="set-head">
        <button type="button" class="set-turn" aria-keyshortcuts="9" title="Play the set, or pause it (9)" ?disabled=${!set.known || !laid.seconds} @click=${() => player.turn()}>${player.playing ? 'Pause' : 'Play the set'}</button>
        <output class="set-time" aria-hidden="true"></output>
        ${this.#told()}
        <span class="set-verbs">
          ${set.loop ? html`<button type="button" class="link set-whole" @click=${() => set.setLoop(null)}>Play all of it</button>` : nothing}
          <button type="button" class="icon" aria-label="Wider" title="Wider" ?disabled=${this.zoom <= 1} @click=${() => this.#zoom(0.5)}>−</button>
          <button type="button" class="icon" aria-label="Closer" title="Closer" ?disabled=${this.scale >= CLOSEST} @click=${() => this.#zoom(2)}>+</button>
          <button type="button" class="icon set-away" aria-label="Put the set away" title="Put it away; nothing is lost" @click=${() => set.show(false)}>${DOWN}</button>
        </span>
      </div>
      ${laid.blocks.length ? this.#lies(laid) : html`<p class="set-empty">Press a pattern in the drawer, or 8 for the one on the stage, and the set begins here.</p>`}
      <p class="spoken" role="status">${this.spoken}</p>
    </section>`;
  }

  // One sentence: of what is chosen, or of the whole.
  #told() {
    const { set, player } = this.desk;
    if (set.error) return html`<p class="set-told" data-tone="warn" role="status">${sentence(set.error)} <button type="button" class="link" @click=${() => set.again()}>Ask again</button></p>`;
    if (player.loading) return html`<p class="set-told quiet" role="status">Getting ready to play …</p>`;
    const [told, tone] = tellOf(set);
    return html`<p class="set-told" data-tone=${tone} role="status" title=${told}>${told}</p>`;
  }

  /** @param {import('../state/set.js').Laid} laid */
  #lies({ blocks, joints, seconds }) {
    const { set } = this.desk;
    this.scale = this.#fit(seconds, blocks.length) * this.zoom;
    const { scale } = this;
    const [least, most] = [(this.from - AHEAD) / scale, (this.from + this.wide + AHEAD) / scale];
    const chosen = set.chosen ?? blocks[0].step.key;
    const seen = blocks.map((block, i) => ({ block, i })).filter(({ block }) => (block.starts + block.seconds > least && block.starts < most) || block.step.key === chosen);
    const passed = joints.filter((joint) => joint.at > least && joint.at < most);
    const every = TICKS.find((each) => each * scale >= TICK) ?? 600;
    const ticks = [];
    for (let at = Math.max(0, Math.ceil(least / every) * every); at <= Math.min(seconds - 26 / scale, most); at += every) ticks.push(at);
    return html`<div class="set-rows">
      <div class="set-names" aria-hidden="true"><span>into</span><span></span><span>mind</span><span>grip</span><span>shoulder</span><span></span></div>
      <div class="set-scroll" @scroll=${this.#scrolled} @wheel=${this.#wheel}>
        <div class="set-track" style="width: ${(seconds * scale).toFixed(1)}px" @pointerdown=${this.#press}>
          <div class="set-joints" role="group" aria-label="Transitions">
            ${repeat(passed, (/** @type {Joint} */ joint) => blocks[joint.after].step.key, (/** @type {Joint} */ joint) => this.#joint(joint, blocks))}
          </div>
          <ol class="set-blocks" aria-label="Patterns in order" @keydown=${this.#key}>
            ${repeat(seen, (/** @type {Seen} */ { block }) => block.step.key, (/** @type {Seen} */ { block, i }) => this.#block(block, i, blocks.length, chosen))}
          </ol>
          ${this.drag ? html`<i class="set-drop" style="left: ${(this.#dropAt(blocks) * scale).toFixed(1)}px"></i>` : nothing}
          <div class="set-lane" aria-hidden="true">
            ${seen.map(({ block }) => html`<span class="set-mind" style=${this.#place(block)}>${cautionSigns(cautions(block))}</span>`)}
          </div>
          <canvas class="set-work" role="img" aria-label=${workOf(set.known ? set.answer : null)}></canvas>
          <div class="set-ruler">
            ${ticks.map((at) => html`<span style="left: ${(at * scale).toFixed(1)}px">${minutes(at)}</span>`)}
            ${['from', 'to'].map((end) => this.#loopEnd(/** @type {'from' | 'to'} */ (end), seconds))}
            ${set.loop ? html`<i class="set-loop" style="left: ${(set.loop.from * scale).toFixed(1)}px; width: ${((set.loop.to - set.loop.from) * scale).toFixed(1)}px"></i>` : nothing}
          </div>
          <i class="set-now" aria-hidden="true"></i>
        </div>
      </div>
    </div>`;
  }

  /** @param {Block} block */
  #place({ starts, seconds, said }) {
    const gone = said?.missing; // takes no time, and still has to be seen
    const left = gone ? Math.max(0, Math.min(this.desk.set.laid.seconds * this.scale - GONE, starts * this.scale - GONE / 2)) : starts * this.scale;
    return `left: ${left.toFixed(1)}px; width: ${gone ? GONE : Math.max(3, seconds * this.scale).toFixed(1)}px`;
  }

  /** @param {Block} block @param {number} i @param {number} all @param {number} first */
  #block(block, i, all, first) {
    const { set } = this.desk;
    const { step, said } = block;
    const name = said?.name ?? step.name;
    const chosen = set.chosen === step.key;
    const held = this.drag?.key === step.key;
    const counts = countsOf(block, set.known);
    const mind = cautions(block).map((c) => c.word).join(', ');
    return html`<li class="set-place ${chosen ? 'chosen' : ''} ${held ? 'held' : ''}" data-key=${step.key} @dblclick=${() => this.desk.player.play(block.starts)} style="${this.#place(block)}${held && this.drag ? `; translate: ${this.drag.by}px` : ''}">
      <button type="button" class="set-block ${said?.missing ? 'missing' : ''}" tabindex=${step.key === first ? 0 : -1} aria-current=${chosen ? 'true' : 'false'}
        aria-label="${name}, ${i + 1} of ${all}, ${counts}${step.turn ? `, ${turnSaid(step.turn.turn_deg)} on ${step.turn.count}` : ''}${mind ? ', ' + mind : ''}" title="${name}, ${counts}"
        @click=${(/** @type {MouseEvent} */ e) => e.detail === 0 && this.#take(block)}>
        ${said?.moves ? html`<moving-thumb .moves=${said.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>` : html`<span class="set-blank"></span>`}
        <span class="set-said"><b>${name}</b><small>${step.counts}${step.turn ? turnSign(step.turn.turn_deg) : nothing}</small></span>
      </button>
      <span class="set-end" role="slider" tabindex=${chosen ? 0 : -1} aria-label="How long ${name} is spun" aria-valuemin="1" aria-valuemax="1000" aria-valuenow=${step.counts}
        aria-valuetext=${counts} title="Drag to make it longer or shorter by eights; with Shift by one" @keydown=${(/** @type {KeyboardEvent} */ e) => this.#endKey(e, block)}></span>
    </li>`;
  }

  /** @param {Joint} joint @param {Block[]} blocks */
  #joint(joint, blocks) {
    const { set } = this.desk;
    const [before, after] = [blocks[joint.after], blocks[joint.after + 1]];
    const grade = gradeOf(joint.said);
    const says = `${nameOf(before)} into ${nameOf(after)}: ${gradeWord(grade)}`;
    const told = (joint.said?.told ?? joint.said?.none)?.text;
    const room = Math.min(30, Math.max(8, this.scale * Math.min(before.seconds, after.seconds)));
    return html`<button type="button" class="set-joint ${set.joint === before.step.key ? 'chosen' : ''}" data-grade=${grade} style="left: ${(joint.at * this.scale).toFixed(1)}px; --room: ${room.toFixed(0)}px"
      aria-label=${says} title=${told ? says + '. ' + told : says} @click=${() => this.#pass(joint, before)}>${gradeSign(grade)}</button>`;
  }

  /** @param {Joint} joint @param {Block} before */
  #pass(joint, before) {
    const { set, player } = this.desk;
    set.chooseJoint(before.step.key);
    if (joint.said && !joint.said.none) player.passage(joint);
  }

  /** @param {'from' | 'to'} end @param {number} seconds */
  #loopEnd(end, seconds) {
    const { loop } = this.desk.set;
    const at = loop ? loop[end] : end === 'from' ? 0 : seconds;
    return html`<span class="set-loop-end ${loop ? 'looped' : ''}" data-end=${end} role="slider" tabindex="0" aria-label=${end === 'from' ? 'Loop from' : 'Loop to'} aria-valuemin="0"
      aria-valuemax=${Math.round(seconds)} aria-valuenow=${Math.round(at)} aria-valuetext=${minutes(at)} style="left: ${(at * this.scale).toFixed(1)}px"
      @keydown=${(/** @type {KeyboardEvent} */ e) => this.#loopKey(e, end)}></span>`;
  }

  updated() {
    const scroll = this.querySelector('.set-scroll');
    if (scroll !== this.watched) {
      if (this.watched) this.sizes?.unobserve(this.watched);
      if (scroll) this.sizes?.observe(scroll);
      this.watched = scroll;
    }
    const now = this.lies + ' ' + this.offsetHeight;
    if (this.laid !== now) {
      this.laid = now;
      if (this.desk.session.answer) this.desk.stage.frame(true);
    }
    this.#moment();
    this.#work();
  }

  #sized() {
    const scroll = this.querySelector('.set-scroll');
    const wide = scroll?.clientWidth ?? 0;
    if (wide === this.wide) return;
    this.wide = wide;
    this.requestUpdate();
  }

  // All of it at once, unless its blocks would be too small to be told apart.
  /** @param {number} seconds @param {number} blocks */
  #fit(seconds, blocks) {
    const wide = this.wide || this.clientWidth || 800;
    return Math.min(CLOSEST, Math.max(wide / Math.max(1, seconds), (LEAST * blocks) / Math.max(1, seconds)));
  }

  /** @param {number} by */
  #zoom(by) {
    const { now } = this.desk.player;
    const before = this.scale;
    const place = now * before - this.from;
    this.zoom = Math.max(1, this.zoom * by);
    this.requestUpdate();
    this.updateComplete.then(() => this.#scrollTo(now * this.scale - (place >= 0 && place <= this.wide ? place : this.wide / 2)));
  }

  /** @param {number} left */
  #scrollTo(left) {
    const scroll = this.querySelector('.set-scroll');
    if (scroll) scroll.scrollLeft = Math.max(0, left);
  }

  #scrolled = () => {
    this.from = this.querySelector('.set-scroll')?.scrollLeft ?? 0;
    this.requestUpdate();
  };

  /** @param {WheelEvent} event */
  #wheel = (event) => {
    if (event.deltaX || !event.deltaY) return;
    event.preventDefault();
    if (event.ctrlKey) this.#zoom(event.deltaY < 0 ? 1.25 : 0.8);
    else this.#scrollTo(this.from + event.deltaY);
  };

  // Where the moment stands; a set that plays keeps it in sight.
  #moment() {
    if (!this.lies) return;
    const { player, set } = this.desk;
    const { now } = player;
    const hand = /** @type {HTMLElement | null} */ (this.querySelector('.set-now'));
    const time = this.querySelector('.set-time');
    if (time) {
      const text = `${minutes(now)} of ${lasting(set.laid.seconds)}`;
      if (time.textContent !== text) time.textContent = text;
    }
    if (!hand) return;
    const x = now * this.scale;
    hand.style.translate = x.toFixed(1) + 'px';
    if (player.playing && !this.drag && (x < this.from || x > this.from + this.wide - 20)) this.#scrollTo(x - this.wide * 0.1);
  }

  // Pointers ----------------------------------------------------------------------------------------------------------------------

  /** @param {PointerEvent} event */
  #press = (event) => {
    if (event.button > 0) return;
    const at = /** @type {HTMLElement} */ (event.target);
    const place = /** @type {HTMLElement | null} */ (at.closest('.set-place'));
    const block = place && this.desk.set.laid.blocks.find(({ step }) => step.key === Number(place.dataset.key));
    if (at.closest('.set-joint')) return;
    if (at.closest('.set-end') && block) this.#stretch(event, at, block);
    else if (at.closest('.set-loop-end')) this.#loops(event, at);
    else if (block && place) this.#carry(event, place, block);
    else this.#go(event);
  };

  /** @param {PointerEvent} event */
  #seconds(event) {
    const track = /** @type {HTMLElement} */ (this.querySelector('.set-track')).getBoundingClientRect();
    return Math.max(0, Math.min(this.desk.set.laid.seconds, (event.clientX - track.left) / this.scale));
  }

  /** To a moment, and along with the pointer. @param {PointerEvent} event */
  #go(event) {
    event.preventDefault();
    const { player, clock } = this.desk;
    if (player.on) clock.play(false);
    player.seek(this.#seconds(event));
    follow(event, /** @type {HTMLElement} */ (event.currentTarget), (e) => player.seek(this.#seconds(e)));
  }

  /** Chosen, and the moment goes to where it begins. @param {Block} block */
  #take(block) {
    const { set, player } = this.desk;
    set.choose(block.step.key);
    player.seek(block.starts);
  }

  /** @param {PointerEvent} event @param {HTMLElement} place @param {Block} block */
  #carry(event, place, block) {
    const { set } = this.desk;
    const { key } = block.step;
    const from = event.clientX;
    const scrolled = this.from;
    let x = from;
    const carried = () => {
      const by = x - from + this.from - scrolled;
      const middle = block.starts + block.seconds / 2 + by / this.scale;
      const others = set.laid.blocks.filter(({ step }) => step.key !== key);
      const to = others.filter(({ starts, seconds }) => starts + seconds / 2 < middle).length;
      this.drag = { key, by, to };
      this.requestUpdate();
    };
    const edge = setInterval(() => {
      if (!this.drag) return;
      const box = /** @type {HTMLElement} */ (this.querySelector('.set-scroll')).getBoundingClientRect();
      const pull = x < box.left + EDGE ? -12 : x > box.right - EDGE ? 12 : 0;
      if (pull) this.#scrollTo(this.from + pull);
      if (pull) carried();
    }, 16);
    follow(event, place, (e) => {
      x = e.clientX;
      if (this.drag || Math.abs(x - from) >= DRAGGED) carried();
    }, (lifted) => {
      clearInterval(edge);
      const { drag } = this;
      this.drag = null;
      if (drag && lifted) {
        set.choose(key);
        this.#moveTo(key, drag.to);
      } else if (lifted) this.#take(block);
      this.requestUpdate();
    });
  }

  /** @param {Block[]} blocks */
  #dropAt(blocks) {
    const drag = /** @type {{ key: number, to: number }} */ (this.drag);
    const others = blocks.filter(({ step }) => step.key !== drag.key);
    const next = others[drag.to];
    const last = others[others.length - 1];
    return next ? next.starts : last ? last.starts + last.seconds : 0;
  }

  /** @param {PointerEvent} event @param {HTMLElement} end @param {Block} block */
  #stretch(event, end, block) {
    event.preventDefault();
    const { set } = this.desk;
    const { key, counts } = block.step;
    const one = block.seconds / counts;
    const from = event.clientX;
    const { scale } = this; // the whole is drawn anew to fit meanwhile; the pointer keeps its measure
    const merge = 'drag ' + key + ' ' + Date.now();
    set.choose(key);
    follow(event, end, (e) => {
      const wished = counts + (e.clientX - from) / scale / one;
      set.stretch(key, e.shiftKey ? Math.max(1, wished) : Math.max(EIGHT, Math.round(wished / EIGHT) * EIGHT), merge);
    }, () => {
      set.pause();
      this.say(lengthSaid(set, key));
    });
  }

  /** @param {PointerEvent} event @param {HTMLElement} end */
  #loops(event, end) {
    event.preventDefault();
    follow(event, end, (e) => this.#loop(/** @type {'from' | 'to'} */ (end.dataset.end), this.#seconds(e), false), () => this.desk.set.dispatchEvent(new Event('loop')));
  }

  /** @param {'from' | 'to'} end @param {number} at @param {boolean} told */
  #loop(end, at, told) {
    const { set } = this.desk;
    const { seconds } = set.laid;
    const loop = { ...(set.loop ?? { from: 0, to: seconds }) };
    loop[end] = end === 'from' ? Math.max(0, Math.min(loop.to - NEAR, at)) : Math.min(seconds, Math.max(loop.from + NEAR, at));
    set.loop = loop.from <= 0.01 && loop.to >= seconds - 0.01 ? null : loop;
    set.tell();
    if (told) set.dispatchEvent(new Event('loop'));
  }

  // Keys --------------------------------------------------------------------------------------------------------------------------

  /** @param {KeyboardEvent} event */
  #key = (event) => {
    const at = /** @type {HTMLElement} */ (event.target);
    if (!at.matches('.set-block') || event.ctrlKey || event.metaKey || event.altKey) return;
    const key = Number(/** @type {HTMLElement} */ (at.closest('.set-place')).dataset.key);
    if (!this.press(event, key)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  /**
   * Does what a key asks for of a pattern in the set; false where it asks for nothing.
   *
   * @param {KeyboardEvent} event
   * @param {number} key
   */
  press(event, key) {
    const { set, player } = this.desk;
    const i = set.at(key);
    const go = { ArrowLeft: i - 1, ArrowRight: i + 1, Home: 0, End: set.steps.length - 1 }[event.key];
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (go !== undefined) {
      if (event.shiftKey) this.#moveTo(key, go);
      this.focusOn(event.shiftKey ? key : set.steps[Math.max(0, Math.min(set.steps.length - 1, go))].key);
    } else if (by) {
      set.choose(key);
      set.stretchBy(key, by, event.shiftKey);
      this.say(lengthSaid(set, key));
      this.focusOn(key);
    } else if (event.key.toLowerCase() === 'z') {
      set.choose(key);
      set.turnOn(key);
      this.say(turnOf(set, key));
      this.focusOn(key);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      this.takeOut(key);
    } else if (event.key === 'Enter') {
      player.play(set.laid.blocks[i].starts);
    } else {
      return false;
    }
    return true;
  }

  /** Takes one out; the next has the focus where it had it. @param {number} key */
  takeOut(key) {
    const { set, notices } = this.desk;
    const { name } = set.steps[set.at(key)];
    const inside = this.contains(document.activeElement);
    set.remove(key);
    notices.say(`${name} is out of the set`, () => this.desk.undo());
    this.say(`${name} is out of the set.`);
    if (inside && set.chosen !== null) this.focusOn(set.chosen);
  }

  /** @param {number} key @param {number} to */
  #moveTo(key, to) {
    this.desk.moveInSet(key, to);
  }

  /** Chosen, in sight and in focus. @param {number} key */
  async focusOn(key) {
    const { set } = this.desk;
    set.choose(key);
    if (!this.lies) return;
    const { starts, seconds } = set.laid.blocks[set.at(key)];
    const [left, right] = [starts * this.scale, (starts + seconds) * this.scale];
    if (left < this.from || right > this.from + this.wide) this.#scrollTo(left - (this.wide - (right - left)) / 2);
    await this.updateComplete;
    /** @type {HTMLElement | null} */ (this.querySelector(`.set-place[data-key="${key}"] .set-block`))?.focus({ preventScroll: true });
  }

  /** @param {KeyboardEvent} event @param {Block} block */
  #endKey(event, block) {
    const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (!by) return;
    event.preventDefault();
    event.stopPropagation();
    this.desk.set.stretchBy(block.step.key, by, event.shiftKey);
  }

  /** @param {KeyboardEvent} event @param {'from' | 'to'} end */
  #loopKey(event, end) {
    const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[event.key];
    if (!by) return;
    event.preventDefault();
    event.stopPropagation();
    const { set } = this.desk;
    this.#loop(end, (set.loop ? set.loop[end] : end === 'from' ? 0 : set.laid.seconds) + by, true);
  }

  // What each has held by then, grip above, shoulder below; the left's line is whole, the right's dashed. Only what is seen is drawn.
  #work() {
    const canvas = /** @type {HTMLCanvasElement | null} */ (this.querySelector('.set-work'));
    const { set } = this.desk;
    const work = set.known ? set.answer?.work : undefined;
    if (!canvas) return;
    const ratio = Math.min(2, devicePixelRatio || 1);
    const [width, height] = [Math.round(this.wide * ratio), Math.round(canvas.clientHeight * ratio)];
    const drawn = [width, height, this.from, this.scale, document.documentElement.dataset.theme].join();
    if (this.worked === drawn && this.workOf === work) return;
    this.worked = drawn;
    this.workOf = work;
    if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
    const p = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
    p.clearRect(0, 0, width, height);
    if (!work?.times_s.length) return;
    const style = getComputedStyle(this);
    const half = height / 2;
    for (const side of /** @type {const} */ (['left', 'right'])) {
      p.strokeStyle = p.fillStyle = style.getPropertyValue('--' + side);
      p.lineWidth = 1.5 * ratio;
      p.setLineDash(side === 'right' ? [6 * ratio, 3 * ratio] : []);
      for (const [lane, of] of /** @type {const} */ ([[0, 'grip'], [1, 'shoulder']])) {
        p.beginPath();
        const floor = half * (lane + 1) - 1.5 * ratio;
        const most = Math.max(1, ...work.left[of], ...work.right[of]);
        work.times_s.forEach((time, i) => {
          const x = (time * this.scale - this.from) * ratio;
          if (x > -width && x < 2 * width) p.lineTo(x, floor - (work[side][of][i] / most) * (half - 4 * ratio));
        });
        p.stroke();
        p.save();
        p.globalAlpha = 0.12;
        p.lineTo(Math.min(width, (work.times_s[work.times_s.length - 1] * this.scale - this.from) * ratio), floor);
        p.lineTo((work.times_s[0] * this.scale - this.from) * ratio, floor);
        p.fill();
        p.restore();
      }
    }
  }
}

/**
 * Follows a pointer that went down until it is lifted, or taken away.
 *
 * @param {PointerEvent} event
 * @param {HTMLElement} on
 * @param {(event: PointerEvent) => void} moved
 * @param {(lifted: boolean) => void} [done]
 */
export function follow(event, on, moved, done = () => {}) {
  on.setPointerCapture(event.pointerId);
  const move = (/** @type {PointerEvent} */ e) => moved(e);
  const end = (/** @type {PointerEvent} */ e) => {
    on.removeEventListener('pointermove', move);
    on.removeEventListener('pointerup', end);
    on.removeEventListener('pointercancel', end);
    done(e.type === 'pointerup');
  };
  on.addEventListener('pointermove', move);
  on.addEventListener('pointerup', end);
  on.addEventListener('pointercancel', end);
}

/** @param {Block} block */
export const nameOf = ({ said, step }) => said?.name ?? step.name;

/** @param {import('../state/set.js').ShelfSet} set @param {number} key */
export function lengthSaid(set, key) {
  const { name, counts } = set.steps[set.at(key)];
  return `${name}: ${counted(counts)}.`;
}

/** @param {import('../state/set.js').ShelfSet} set @param {number} key */
export function turnOf(set, key) {
  const { name, turn } = set.steps[set.at(key)];
  return `${name}: ${turnSaid(turn?.turn_deg)}${turn ? ' on ' + turn.count : ''}.`;
}

/**
 * One sentence of what is chosen, or of the whole set, and its tone.
 *
 * @param {import('../state/set.js').ShelfSet} set
 * @returns {[text: string, tone: string]}
 */
export function tellOf(set) {
  const { blocks, joints } = set.laid;
  const joint = set.joint === null ? undefined : joints[set.at(set.joint)];
  if (joint?.said) {
    const of = joint.said.none ?? joint.said.told;
    return [of?.text ?? '', joint.said.none ? 'warn' : (of?.tone ?? '')];
  }
  const block = set.chosen === null ? undefined : blocks[set.at(set.chosen)];
  if (block) {
    if (block.said?.missing) return [gone(block.said), 'warn'];
    const mind = cautions(block).find((one) => one.told);
    if (mind) return [mind.told, mind.kind === 'danger' ? 'danger' : 'warn'];
    return [`${nameOf(block)}: ${countsOf(block, set.known)}, ${trimmed(block.seconds, 1)}\u202fs.`, ''];
  }
  if (!set.known) return [set.working ? 'Working out how each passes into the next …' : '', ''];
  const [told] = set.answer?.told ?? [];
  return [told?.text ?? '', told?.tone ?? ''];
}

/**
 * For how many counts it is spun, and how many were asked for where a transition leaves it sooner or later.
 *
 * @param {Block} block
 * @param {boolean} known
 */
export function countsOf({ step, said }, known) {
  const kept = said?.in_song?.counts ?? said?.counts;
  const spun = known && kept ? Number(trimmed(kept, 1)) : step.counts;
  return spun === step.counts ? counted(spun) : `${counted(spun)} instead of ${step.counts}`;
}

/** What it asks of grips and shoulders, in words. @param {import('../state/set.js').Answer | null} answer */
function workOf(answer) {
  const told = answer?.told.filter(({ key }) => key?.startsWith('set.work')) ?? [];
  return told.length ? told.map(({ text }) => text).join(' ') : 'Work of grip and shoulder: not worked out';
}

const DOWN = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m5 8 5 5 5-5" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;

customElements.define('set-line', SetLine);
