import { html } from 'lit';
import { Part } from './part.js';
import './readings.js';
import './sizes.js';
import './shelf-list.js';
import './next-list.js';
import './seek-list.js';
import './map-list.js';
import './set-list.js';
import './learn-list.js';
import './desk-menu.js';

const TABS = [['reading', 'Can I spin it'], ['sizes', 'Sizes'], ['shelf', 'Shelf'], ['next', 'Next'], ['learn', 'Learn'], ['seek', 'Seek'], ['map', 'Map'], ['set', 'Set']];
const PULLED = 6; // pixels a thumb moves before it pulls rather than presses
const UP = 0.46; // of the page's height, so that the stage keeps more than half of it
const FLICK = 0.4; // pixels a millisecond, from which on the way of the thumb decides rather than where it let go

/**
 * Beside the stage: what it means, its sizes, what is saved, what could come next, an order to learn in, what else links, the routes between what is saved,
 * and the menu. Its doors are quiet words at the edge. On a narrow page it is a sheet that a thumb pulls up and pushes down.
 */
class SidePanel extends Part {
  constructor() {
    super();
    this.tab = 'reading';
    this.shown = '';
    this.open = localStorage.getItem('deferent.drawer') === 'open';
  }

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    this.updateComplete.then(() => {
      for (const part of this.querySelectorAll('.panels > *')) /** @type {Part} */ (part).connect(desk);
    });
  }

  /** @param {string} tab */
  show(tab) {
    this.tab = tab;
    if (tab === 'map') this.desk.map.open();
    if (tab === 'set') this.desk.set.show(true);
    this.draw(true);
    this.#looks();
  }

  /** To the name of what stands, to be said anew. */
  async name() {
    this.show('shelf');
    await this.updateComplete;
    const field = /** @type {HTMLInputElement | null} */ (this.querySelector('#save-name'));
    field?.focus();
    field?.select();
  }

  /** Shows that, or pushes the drawer in where it is what is shown. @param {string} tab */
  turn(tab) {
    if (this.open && this.tab === tab) this.draw(false);
    else this.show(tab);
  }

  // What could come next is looked for only while somebody looks at it, and so is an order to learn in.
  #looks() {
    const { transitions, path } = this.desk;
    if (this.open && this.tab === 'next') transitions.look();
    else transitions.away();
    if (this.open && this.tab === 'learn') path.look();
    else path.away();
  }

  /** Draws the drawer out, or pushes it in. @param {boolean} open */
  draw(open) {
    this.requestUpdate();
    if (open === this.open) return;
    this.open = open;
    this.#looks();
    if (this.tab !== 'tools') localStorage.setItem('deferent.drawer', open ? 'open' : 'shut');
    this.updateComplete.then(() => this.desk.stage.frame(true));
  }

  updated() {
    this.classList.toggle('open', this.open);
    if (this.shown !== this.tab) /** @type {HTMLElement} */ (this.querySelector('.panels')).scrollTop = 0;
    this.shown = this.tab;
    this.dispatchEvent(new Event('turned'));
  }

  // The sheet goes with the thumb; let go, it goes where the thumb was going, or else to the nearer of up and down.
  /** @param {PointerEvent} event */
  #pull(event) {
    if (event.button > 0) return;
    const { head } = this;
    const sheet = this.getBoundingClientRect();
    const least = head.getBoundingClientRect().bottom - sheet.top;
    const most = innerHeight * UP;
    const from = event.clientY;
    let last = { y: from, at: event.timeStamp, speed: 0, height: sheet.height };
    let pulled = false;
    const move = (/** @type {PointerEvent} */ e) => {
      if (!pulled && Math.abs(e.clientY - from) < PULLED) return;
      pulled = true;
      const height = Math.max(least, Math.min(most, sheet.height + from - e.clientY));
      document.documentElement.style.setProperty('--sheet', height + 'px');
      const took = Math.max(1, e.timeStamp - last.at);
      last = { y: e.clientY, at: e.timeStamp, speed: (last.y - e.clientY) / took, height };
    };
    const end = () => {
      removeEventListener('pointermove', move);
      document.documentElement.style.removeProperty('--sheet');
      if (!pulled) return;
      // What a pull ends on is not pressed.
      const still = (/** @type {Event} */ e) => (e.stopPropagation(), e.preventDefault());
      addEventListener('click', still, { capture: true, once: true });
      setTimeout(() => removeEventListener('click', still, { capture: true }));
      setTimeout(() => this.draw(Math.abs(last.speed) > FLICK ? last.speed > 0 : last.height > (least + most) / 2));
    };
    addEventListener('pointermove', move);
    addEventListener('pointerup', end, { once: true });
    addEventListener('pointercancel', end, { once: true });
  }

  get head() {
    return /** @type {HTMLElement} */ (this.querySelector('.sheet-head'));
  }

  render() {
    return html`
      <div class="sheet-head" @pointerdown=${this.#pull}>
        <button type="button" class="sheet-grip" aria-label=${this.open ? 'Close the sheet' : 'Open the sheet'} aria-expanded=${this.open}
          @click=${() => this.draw(!this.open)}></button>
        <div class="tabs" role="tablist" aria-label="Beside the stage" @keydown=${this.#key}>
          ${TABS.map(
            ([tab, text]) => html`<button type="button" role="tab" id="tab-${tab}" aria-controls="panel-${tab}"
              aria-selected=${this.open && this.tab === tab} tabindex=${this.tab === tab || (this.tab === 'tools' && tab === TABS[0][0]) ? 0 : -1}
              @click=${() => this.show(tab)}><span>${text}</span></button>`,
          )}
        </div>
        <button type="button" class="icon drawer-shut" aria-label="Close" title="Close" ?hidden=${!this.open}
          @click=${() => this.draw(false)}>${CROSS}</button>
      </div>
      <div class="panels" ?hidden=${!this.open}>
        <reading-list role="tabpanel" id="panel-reading" aria-labelledby="tab-reading" tabindex="0" ?hidden=${this.tab !== 'reading'}></reading-list>
        <size-list role="tabpanel" id="panel-sizes" aria-labelledby="tab-sizes" tabindex="0" ?hidden=${this.tab !== 'sizes'}></size-list>
        <shelf-list role="tabpanel" id="panel-shelf" aria-labelledby="tab-shelf" tabindex="0" ?hidden=${this.tab !== 'shelf'}></shelf-list>
        <next-list role="tabpanel" id="panel-next" aria-labelledby="tab-next" tabindex="0" ?hidden=${this.tab !== 'next'}></next-list>
        <learn-list role="tabpanel" id="panel-learn" aria-labelledby="tab-learn" tabindex="0" ?hidden=${this.tab !== 'learn'}></learn-list>
        <seek-list role="tabpanel" id="panel-seek" aria-labelledby="tab-seek" tabindex="0" ?hidden=${this.tab !== 'seek'}></seek-list>
        <map-list role="tabpanel" id="panel-map" aria-labelledby="tab-map" tabindex="0" ?hidden=${this.tab !== 'map'}></map-list>
        <set-list role="tabpanel" id="panel-set" aria-labelledby="tab-set" tabindex="0" ?hidden=${this.tab !== 'set'}></set-list>
        <desk-menu id="panel-tools" role="region" aria-label="Menu" tabindex="0" ?hidden=${this.tab !== 'tools'}></desk-menu>
      </div>`;
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const i = TABS.findIndex(([each]) => each === this.tab);
    const to = /** @type {Record<string, number>} */ ({ ArrowRight: i + 1, ArrowLeft: i - 1, Home: 0, End: TABS.length - 1 })[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const [tab] = TABS[(to + TABS.length) % TABS.length];
    this.show(tab);
    this.updateComplete.then(() => /** @type {HTMLElement} */ (this.querySelector('#tab-' + tab)).focus());
  }
}

const CROSS = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m5 5 10 10M15 5 5 15" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round"/></svg>`;

customElements.define('side-panel', SidePanel);
