import { html, nothing } from 'lit';
import { Part } from './part.js';
import { STANDS } from '../stage/camera.js';

/** @type {Record<string, string>} */
const SAID = { audience: 'Audience', eyes: 'Own eyes', mirror: 'Mirror', above: 'Above', side: 'Side' };

/** Over the stage: from where it is seen, and what the shapes mean. */
class StageTools extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.stage.addEventListener('viewed', () => this.soon());
  }

  render() {
    const { stage } = this.desk;
    const camera = stage.camera;
    const turned = Math.abs(camera.turn) > 0.01 || Math.abs(camera.lift) > 0.01;
    return html`
      <fieldset class="choice views">
        <legend class="spoken">Seen by</legend>
        ${STANDS.map(
          (view) => html`<label><input type="radio" name="view" .checked=${camera.view === view} @change=${() => stage.see(view)}><span>${SAID[view]}</span></label>`,
        )}
        <button type="button" class="straight" ?hidden=${!turned} @click=${() => { stage.see(camera.view); stage.frame(); }}>Straight on</button>
      </fieldset>
      <button type="button" class="straight" title="Nothing but the figure (X)" aria-keyshortcuts="X" @click=${() => this.desk.alone(true)}>Full screen</button>
      <fieldset class="choice views looks">
        <legend class="spoken">What is shown</legend>
        ${[false, true].map(
          (hands) => html`<label title=${hands ? 'Hands, cords and sizes, always (L)' : 'The light alone; hands come when you point at the stage (L)'}><input type="radio" name="look" aria-keyshortcuts="L"
            .checked=${stage.always === hands} @change=${() => stage.ask(hands)}><span>${hands ? 'Hands' : 'Light'}</span></label>`,
        )}
      </fieldset>
      <ul class="legend" ?hidden=${!stage.always} aria-label="What the shapes mean">
        <li data-side="left">${LEFT}<span>left</span></li>
        <li data-side="right">${RIGHT}<span>right</span></li>
        <li class="cord">${CORD}<span>thick: pulls; dots: slack</span></li>
        ${this.desk.session.passing || (this.desk.session.show === 'ideal' && !this.desk.session.letting) ? nothing : html`<li class="ghost">${GHOST}<span>the ${this.desk.session.letting ? 'pattern' : 'ideal'}</span></li>`}
        <li class="link-line">${LINK}<span>link, carrier’s head to rider’s hand</span></li>
      </ul>`;
  }
}

const LEFT = html`<svg viewBox="0 0 44 14" aria-hidden="true"><path d="M11 7h20" stroke="currentColor" stroke-width="2.4"/><circle cx="7" cy="7" r="4.6" fill="var(--stage-ground)" stroke="currentColor" stroke-width="2"/><circle cx="36" cy="7" r="5" fill="currentColor"/></svg>`;
const RIGHT = html`<svg viewBox="0 0 44 14" aria-hidden="true"><path d="M11 7h20" stroke="currentColor" stroke-width="2.6" stroke-dasharray="7 2.4"/><rect x="2.6" y="2.6" width="8.8" height="8.8" fill="var(--stage-ground)" stroke="currentColor" stroke-width="2"/><path d="m36 1 6 6-6 6-6-6z" fill="currentColor"/></svg>`;
const CORD = html`<svg viewBox="0 0 44 14" aria-hidden="true"><path d="M2 4.4 20 6v2L2 9.6z" fill="currentColor"/><path d="M25 5q8.5 9 17 0" fill="none" stroke="currentColor" stroke-width="2" stroke-dasharray="2.4 2.2"/></svg>`;
const GHOST = html`<svg viewBox="0 0 34 14" aria-hidden="true"><path d="M5 7h24" stroke="var(--stage-plain)" stroke-width="1.2"/><circle cx="5" cy="7" r="2.6" fill="var(--stage-plain)"/><circle cx="29" cy="7" r="2.6" fill="var(--stage-plain)"/></svg>`;
const LINK = html`<svg viewBox="0 0 34 14" aria-hidden="true"><path d="M2 7h30" stroke="currentColor" stroke-width="3.4" stroke-dasharray="3.4 4"/></svg>`;

customElements.define('stage-tools', StageTools);
