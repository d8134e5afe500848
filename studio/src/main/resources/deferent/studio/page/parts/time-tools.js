import { html, svg } from 'lit';
import { live } from 'lit/directives/live.js';
import { Part } from './part.js';
import { SPEEDS } from '../state/clock.js';
import { SLOW_SHOWS } from '../state/session.js';

/** @type {Record<number, string>} */
const SAID = { 0.1: 'a tenth', 0.25: 'quarter', 0.5: 'half', 1: 'full' };
const SHORTEST = 0.06;
const SLOW = 20; // a minute, at the ends of the scale
const FAST = 180;
const share = (/** @type {number} */ tempo) => Math.log(tempo / SLOW) / Math.log(FAST / SLOW);

/** Speed and steps, the tempo on a scale and taps, the count, the loop, how long the light stays. */
class TimeTools extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.clock.addEventListener('state', () => this.soon());
  }

  render() {
    const { clock, session, pulse, stage } = this.desk;
    const tempo = session.size('tempo_cycles_per_min');
    const slowest = clock.speed === SPEEDS[0];
    const fastest = clock.speed === SPEEDS[SPEEDS.length - 1];
    const period = session.scene.period;
    const stays = stage.persistence;
    return html`
      <div class="speed" role="group" aria-label="Speed">
        <button type="button" aria-label="Slower" aria-keyshortcuts="[" title="Slower ( [ )" ?disabled=${slowest} @click=${() => clock.slower(1)}>−</button>
        <output>${SAID[clock.speed]} speed</output>
        <button type="button" aria-label="Faster" aria-keyshortcuts="]" title="Faster ( ] )" ?disabled=${fastest} @click=${() => clock.slower(-1)}>+</button>
      </div>
      <div class="steps" role="group" aria-label="Moment by moment">
        <button type="button" aria-label="A moment back" aria-keyshortcuts="," title="A moment back ( , )" @click=${() => this.desk.step(-1)}>${BACK}</button>
        <button type="button" aria-label="A moment on" aria-keyshortcuts="." title="A moment on ( . )" @click=${() => this.desk.step(1)}>${ON}</button>
      </div>
      <div class="beats">
        ${this.#scale(tempo)}
        <button type="button" @click=${() => this.desk.act('tap')} ?disabled=${!tempo} aria-keyshortcuts="B" title="Tap the tempo (B)">Tap</button>
        <button type="button" class="count" aria-pressed=${pulse.on} @click=${() => this.desk.act('count')} aria-keyshortcuts="C" title="Count out loud (C)">Count</button>
      </div>
      <div class="stays">
        <label for="stays">Light stays</label>
        <input id="stays" type="range" min="0" max="1" step="0.01" .value=${String(toShare(stays, period))} @input=${this.#stays}
          aria-valuetext=${this.#says(stays, period)}
          title="An eye keeps a light for some 60 to 200 thousandths of a second; further right is a long exposure">
        <output>${this.#says(stays, period)}</output>
      </div>
      <div class="more-time">
        <button type="button" class="strip-opens" aria-expanded=${!this.desk.strip.shut} title="How far apart and how hard they pull, over one cycle (O)"
          aria-keyshortcuts="O" @click=${() => this.desk.act('strip')}>Strip</button>
        <button type="button" class="loop-whole" ?disabled=${!clock.looped} title="The whole cycle again ( \\ )" aria-keyshortcuts="\\"
          @click=${() => clock.loop(0, 1)}>Whole cycle</button>
      </div>`;
  }

  // The tempo on a scale, with the slowest tempos of both cords marked on it: full marks with the figure kept, hollow ones with the
  // hand path kept, the left's above and the right's below.
  /** @param {any} tempo */
  #scale(tempo) {
    const { session } = this.desk;
    const { readings } = session.answer || {};
    if (readings && session.answer.detail === 'settled') {
      this.slowest = readings.slowest || {};
      this.words = (readings.told || []).filter((/** @type {any} */ t) => t.key.startsWith('slowest.')).map((/** @type {any} */ t) => t.text).join(' ');
    }
    const marks = [];
    for (const side of ['left', 'right']) {
      for (const kept of ['figure_kept', 'hand_path_kept']) {
        const at = this.slowest?.[side]?.[kept]?.tempo_cycles_per_min;
        if (at) marks.push(slowestMark(side, kept, share(Math.max(SLOW, Math.min(FAST, at)))));
      }
    }
    const words = this.words || '';
    return html`<span class="tempo-scale" title=${words + (marks.length ? ' Marks: full with the figure kept, hollow with the hand path kept; the left’s above, the right’s below.' : '')}>
      <svg viewBox="0 0 96 24" aria-hidden="true">${marks}</svg>
      <input class="tempo-slide" type="range" min="0" max="1" step="0.002" aria-label="Tempo on a scale" aria-describedby="slowest-words" ?disabled=${!tempo}
        aria-valuetext=${tempo ? Number(tempo.value.toFixed(1)) + ' a minute' : 'its own tempo'}
        .value=${live(String(share(Math.max(SLOW, Math.min(FAST, tempo ? tempo.value : 60)))))} @input=${this.#slide} @change=${() => session.pause()}>
      <span id="slowest-words" class="spoken">${words}</span></span>`;
  }

  /** @param {any} event */
  #slide(event) {
    const { session } = this.desk;
    const value = Math.round(SLOW * (FAST / SLOW) ** Number(event.target.value));
    session.change([{ set: 'tempo_cycles_per_min', to: value }], 'tempo', SLOW_SHOWS.has(session.show) ? 'newest tempo' : 'change');
  }

  /** @param {number} stays @param {number} period seconds */
  #says(stays, period) {
    if (stays >= period * 0.995) return 'whole cycle';
    return stays < 1 ? Math.round(stays * 1000) + '\u202fms' : stays.toFixed(1) + '\u202fs';
  }

  /** @param {any} event */
  #stays(event) {
    this.desk.stage.persistence = fromShare(Number(event.target.value), this.desk.session.scene.period);
    this.desk.stage.draw();
    this.requestUpdate();
  }
}

/** @param {string} side @param {string} kept @param {number} at */
function slowestMark(side, kept, at) {
  const x = 8 + 80 * at; // the slider's knob is sixteen pixels wide
  const d = side === 'left' ? `M${x} 8l-4-7h8z` : `M${x} 16l-4 7h8z`;
  return svg`<path data-side=${side} class=${kept.replaceAll('_', '-')} d=${d}></path>`;
}

const toShare = (/** @type {number} */ stays, /** @type {number} */ period) => Math.min(1, Math.log(stays / SHORTEST) / Math.log(Math.max(2 * SHORTEST, period) / SHORTEST));
const fromShare = (/** @type {number} */ along, /** @type {number} */ period) => along >= 0.995 ? Infinity : SHORTEST * (Math.max(2 * SHORTEST, period) / SHORTEST) ** along;

const BACK = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M13 4v12L5.5 10z" fill="currentColor"/></svg>`;
const ON = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M7 4v12l7.5-6z" fill="currentColor"/></svg>`;

customElements.define('time-tools', TimeTools);
