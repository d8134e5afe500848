import { html } from 'lit';
import { Part } from './part.js';

/** At the foot, first: play and pause. */
class TransportBar extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.clock.addEventListener('state', () => this.soon());
    desk.clock.addEventListener('tick', () => this.#count());
  }

  #count() {
    const place = document.querySelector('.stage-count');
    if (!place) return;
    const text = this.desk.pulse.on ? String(this.desk.pulse.count()) : '';
    if (place.textContent !== text) place.textContent = text;
  }

  render() {
    const { clock } = this.desk;
    return html`<button type="button" class="play" @click=${() => this.desk.act('play')} aria-keyshortcuts="Space" title="Play or pause (space)">
      ${clock.playing ? PAUSE : PLAY}<span class="spoken">${clock.playing ? 'Pause' : 'Play'}</span>
    </button>`;
  }
}

/** At the foot, last: the tempo, and what becomes of the pattern: it is saved, or goes to somebody. */
class TempoBar extends Part {
  render() {
    const { session } = this.desk;
    const { shelved, unsaved } = session;
    const saved = !!shelved && !unsaved;
    const tempo = session.size('tempo_cycles_per_min');
    const own = session.answer && !tempo ? session.answer.readings.tempo_cycles_per_min : null;
    return html`
      <label class="spoken" for="tempo">Tempo</label>
      <input id="tempo" type="number" inputmode="decimal" min="1" max="600" step="1" ?disabled=${!tempo}
        title=${tempo ? 'Tempo: hand cycles a minute, or poi beats of a weave or where both hands are still' : 'A pendulum that nobody drives sets the tempo'}
        .value=${String(Number((tempo ? tempo.value : own ?? 60).toFixed(1)))} @change=${this.#tempo}>
      <button type="button" class=${shelved && unsaved ? 'save-now changed' : 'save-now'} ?disabled=${!session.pattern || saved} aria-keyshortcuts="P Control+S"
        title=${saved ? 'On the shelf as ' + shelved.name : shelved ? shelved.name + ' has changes that are not saved; save them (P)' : 'Save on the shelf (P)'}
        @click=${() => this.desk.act('save')}>${saved ? 'Saved' : 'Save'}${shelved && unsaved ? html`<span class="spoken"> the changes</span>` : ''}</button>
      <button type="button" class="share" @click=${() => this.desk.act('share')} title="The file that fits where it goes, or the phrase (Y)" aria-keyshortcuts="Y">Share</button>`;
  }

  /** @param {any} event */
  #tempo(event) {
    const value = Number(event.target.value);
    if (value > 0) this.desk.session.change([{ set: 'tempo_cycles_per_min', to: value }]);
  }
}

const PLAY = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M5 3.5v13l11-6.5z" fill="currentColor"/></svg>`;
const PAUSE = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M5 3.5h3.6v13H5zM11.4 3.5H15v13h-3.6z" fill="currentColor"/></svg>`;

customElements.define('transport-bar', TransportBar);
customElements.define('tempo-bar', TempoBar);
