import { html, nothing } from 'lit';
import { Part } from './part.js';
import { signed, trimmed } from './units.js';

/** @type {Record<Protocol.Show, [says: string, means: string]>} */
const KEEPS = {
  ideal: ['Ideal', 'The pattern as it is said, the tether a rod'],
  figure: ['Keep the figure', 'The tether a cord: the head keeps its figure, the hand goes where it must'],
  'hand-path': ['Keep the hand path', 'The tether a cord: the hand keeps its path, the head goes where it does'],
  closest: ['Closest', 'The tether a cord: the closest figure that a practised hand draws'],
};
export const SHOWS = /** @type {Protocol.Show[]} */ (Object.keys(KEEPS));
const LATEST = 3; // events that stay on the stage

/** What the cord keeps, and letting a poi go. */
class CordTools extends Part {
  open = false;

  render() {
    const { session, slip } = this.desk;
    const { aside } = session;
    return html`
      <fieldset class="choice keeps" ?disabled=${!session.pattern}>
        <legend class="spoken">What a cord keeps</legend>
        ${SHOWS.map(
          (keep) => html`<label title="${KEEPS[keep][1]} (K)"><input type="radio" name="keep" aria-keyshortcuts="K" .checked=${session.show === keep}
            @change=${() => session.keep(keep)}><span>${KEEPS[keep][0]}</span></label>`,
        )}
      </fieldset>
      <div class="let-go" @keydown=${this.#key}>
        <button type="button" class="let" aria-keyshortcuts="G" aria-pressed=${!!aside} ?disabled=${!session.pattern}
          title=${aside ? 'Back to the pattern (Escape)' : 'From this moment on let the cord decide (G)'}
          @click=${() => this.desk.act('let-go')}>${aside ? 'Back' : 'Let go'}</button>
        <button type="button" class="icon more" aria-label="Slip and time to let go" aria-expanded=${this.open} aria-controls="let-go-sizes"
          @click=${() => this.#toggle()}>${MORE}</button>
        <div class="let-sizes" id="let-go-sizes" ?hidden=${!this.open}>
          <div role="radiogroup" aria-label="Poi to let go">
            ${['left', 'right'].map(
              (side) => html`<label><input type="radio" name="let-side" .checked=${slip.side === side} @change=${() => this.#set('side', side)}> ${side}</label>`,
            )}
          </div>
          <label for="let-slip">slip ahead</label>
          <span><input id="let-slip" type="number" inputmode="decimal" step="0.5" min="-150" max="150" .value=${trimmed(slip.slip * 100, 1)}
            @change=${(/** @type {any} */ e) => this.#number('slip', e.target, 100, -1.5, 1.5)}> cm</span>
          <label for="let-seconds">follow for</label>
          <span><input id="let-seconds" type="number" inputmode="decimal" step="0.5" min="0.5" max="10" .value=${trimmed(slip.seconds, 1)}
            @change=${(/** @type {any} */ e) => this.#number('seconds', e.target, 1, 0.1, 10)}> s</span>
        </div>
      </div>`;
  }

  #toggle(open = !this.open) {
    this.open = open;
    this.requestUpdate();
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    if (event.key !== 'Escape' || !this.open) return;
    event.stopPropagation();
    this.#toggle(false);
    /** @type {HTMLElement} */ (this.querySelector('.more')).focus();
  }

  /** @param {'side' | 'slip' | 'seconds'} key @param {string | number} value */
  #set(key, value) {
    this.desk.setSlip({ ...this.desk.slip, [key]: value });
  }

  /** @param {'slip' | 'seconds'} key @param {HTMLInputElement} field @param {number} scale @param {number} least @param {number} most */
  #number(key, field, scale, least, most) {
    const value = Number(field.value) / scale;
    if (field.value !== '' && value >= least && value <= most) this.#set(key, value);
    field.value = trimmed(this.desk.slip[key] * scale, 1);
  }
}

/** Over the stage: what the cord did, where a passage has come to, and why something cannot be shown. */
class CordTold extends Part {
  count = -1;
  said = '';

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.clock.addEventListener('tick', () => this.#passed());
  }

  render() {
    const { letting, passing, setting } = this.desk.session;
    return letting ? this.#happened(letting) : passing ? this.#passage(passing) : setting ? this.#set() : this.#why();
  }

  // A side that cannot be shown as asked says so where it is looked for.
  #why() {
    const { shown } = this.desk.session.answer || {};
    const why = shown ? Object.values(shown.why) : [];
    if (!why.length || this.desk.session.dragging) return nothing;
    return html`<div class="happened" role="status">${why.map((text) => html`<p>Still the ideal: ${text}.</p>`)}</div>`;
  }

  /** @param {any} letting */
  #happened(letting) {
    const now = this.desk.clock.phase * letting.seconds;
    const { slip } = this.desk;
    const past = said(letting).filter((/** @type {any} */ e) => e.time <= now + 1e-9);
    const ahead = Math.abs(slip.slip) < 5e-4 ? 'without a slip' : signed(trimmed(Math.abs(slip.slip) * 100, 1)) + '\u202fcm ' + (slip.slip > 0 ? 'ahead' : 'behind');
    return html`<div class="happened" role="log" aria-label="What the cord did">
      <p>The ${letting.side} poi let go, ${ahead}.</p>
      ${past.slice(-LATEST).map((/** @type {any} */ e) => html`<p>${time(e.time)} ${e.text}.</p>`)}
    </div>`;
  }

  // Which pattern of the set is on, and what comes next in how many counts.
  #set() {
    const { set, player } = this.desk;
    const { now, next } = set.told(player.now);
    return html`<div class="happened set-on">
      <p><b>${now}</b>${next ? html` <span>\u2192 ${next}</span>` : nothing} <button type="button" class="near" title="Back to the pattern (Escape)" @click=${() => player.leave()}>Back</button></p>
    </div>`;
  }

  // Which pattern it is by now, and what is done to come into the next, as it comes.
  /** @param {any} passing */
  #passage(passing) {
    const { clock } = this.desk;
    const { at, coming } = placeIn(passing, clock.phase);
    const next = passing.passages[Math.min(at, passing.passages.length - 1)];
    const says = next.transition?.told.text;
    return html`<div class="happened passage-on ${passing.led ? 'led' : ''}" role="log" aria-label="The passage">
      <p class="passage-legs">${passing.legs.map((/** @type {string} */ name, /** @type {number} */ i) => html`${i ? ' \u2192 ' : ''}${i === at ? html`<b>${name}</b>` : name}`)}</p>
      <p class=${coming ? 'now' : ''}>${says && !passing.led ? says : nothing}
        <button type="button" class="near" title="Back to the pattern (Escape)" @click=${() => this.desk.session.back()}>Back</button>
        ${passing.led ? html`<button type="button" class="near" @click=${() => this.desk.playPassage(passing.led)}>See it again</button>` : nothing}</p>
    </div>`;
  }

  #passed() {
    const { letting, passing, setting } = this.desk.session;
    if (setting) {
      const told = this.desk.set.told(this.desk.player.now);
      const says = told.now + told.next;
      if (says !== this.said) this.requestUpdate();
      this.said = says;
    }
    if (passing) {
      const { at, coming } = placeIn(passing, this.desk.clock.phase);
      const leg = 2 * at + (coming ? 1 : 0) + (passing.led ? 0.5 : 0);
      if (leg !== this.count) {
        this.count = leg;
        this.requestUpdate();
      }
    }
    if (!letting) return;
    const now = this.desk.clock.phase * letting.seconds;
    const count = said(letting).filter((/** @type {any} */ e) => e.time <= now).length;
    if (count !== this.count) {
      this.count = count;
      this.requestUpdate();
    }
  }
}

/**
 * Which of the patterns is on at a phase, and whether what leads out of it is.
 *
 * @param {any} passing
 * @param {number} phase
 */
function placeIn(passing, phase) {
  const { passages, seconds } = passing;
  if (passing.led) return { at: passages.length, coming: false };
  const now = phase * seconds;
  const at = passages.filter((/** @type {any} */ p) => p.to_s <= now).length;
  return { at, coming: at < passages.length && passages[at].from_s <= now };
}

const kept = new WeakMap();

/** What happened, in words, by time. @param {any} letting */
function said(letting) {
  if (kept.has(letting)) return kept.get(letting);
  const all = letting.events.map((/** @type {any} */ e) => ({
    time: e.time_s,
    text: e.kind === 'slack' ? 'the cord goes slack' : 'it snaps taut and loses ' + trimmed(e.loss_j, e.loss_j < 0.095 ? 3 : 2) + '\u202fJ',
  }));
  if (letting.lost_at_s !== null) all.push({ time: letting.lost_at_s, text: 'half a tether away from where it should be' });
  all.sort((/** @type {any} */ a, /** @type {any} */ b) => a.time - b.time);
  const end = letting.lost_at_s === null ? 'still with the figure, at most ' + trimmed(letting.farthest_m * 100, 1) + '\u202fcm away' : 'that was ' + trimmed(letting.seconds, 1) + '\u202fs';
  all.push({ time: letting.seconds * 0.999, text: end });
  kept.set(letting, all);
  return all;
}

const time = (/** @type {number} */ seconds) => html`<b>${seconds.toFixed(2)}\u202fs</b>`;

const MORE = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m5 8 5 5 5-5" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;

customElements.define('cord-tools', CordTools);
customElements.define('cord-told', CordTold);
