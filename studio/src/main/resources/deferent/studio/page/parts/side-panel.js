import { html } from 'lit';
import { Part } from './part.js';
import './readings.js';
import './sizes.js';
import './shelf-list.js';
import './crossing-list.js';
import './seek-list.js';
import './map-list.js';

const TABS = [['reading', 'Reading'], ['sizes', 'Sizes'], ['shelf', 'Shelf'], ['crossings', 'Crossings'], ['seek', 'Seek'], ['map', 'Map']];

/** Beside the stage: what it means, its sizes, what is saved, what could come next, what else links, and the routes between what is saved. */
class SidePanel extends Part {
  constructor() {
    super();
    this.tab = 'reading';
    this.open = localStorage.getItem('deferent.drawer') === 'open';
  }

  connect(desk) {
    super.connect(desk);
    this.updateComplete.then(() => {
      for (const part of this.querySelectorAll('.panels > *')) part.connect(desk);
    });
  }

  show(tab) {
    this.tab = tab;
    if (tab === 'map') this.desk.map.open();
    this.draw(true);
  }

  /** Shows that, or pushes the drawer in where it is what is shown. */
  turn(tab) {
    if (this.open && this.tab === tab) this.draw(false);
    else this.show(tab);
  }

  /** Draws the drawer out, or pushes it in. */
  draw(open) {
    this.requestUpdate();
    if (open === this.open) return;
    this.open = open;
    localStorage.setItem('deferent.drawer', open ? 'open' : 'shut');
    this.updateComplete.then(() => this.desk.stage.frame(true));
  }

  updated() {
    this.classList.toggle('open', this.open);
  }

  render() {
    return html`
      <div class="tabs" role="tablist" aria-label="Beside the stage" @keydown=${this.#key}>
        ${TABS.map(
          ([tab, text]) => html`<button type="button" role="tab" id="tab-${tab}" aria-controls="panel-${tab}"
            aria-selected=${this.open && this.tab === tab} tabindex=${this.tab === tab ? 0 : -1} @click=${() => this.show(tab)}>${text}</button>`,
        )}
      </div>
      <button type="button" class="icon drawer-shut" aria-label="Push the drawer in" title="Push the drawer in" ?hidden=${!this.open}
        @click=${() => this.draw(false)}>${CROSS}</button>
      <div class="panels" ?hidden=${!this.open}>
        <reading-list role="tabpanel" id="panel-reading" aria-labelledby="tab-reading" tabindex="0" ?hidden=${this.tab !== 'reading'}></reading-list>
        <size-list role="tabpanel" id="panel-sizes" aria-labelledby="tab-sizes" tabindex="0" ?hidden=${this.tab !== 'sizes'}></size-list>
        <shelf-list role="tabpanel" id="panel-shelf" aria-labelledby="tab-shelf" tabindex="0" ?hidden=${this.tab !== 'shelf'}></shelf-list>
        <crossing-list role="tabpanel" id="panel-crossings" aria-labelledby="tab-crossings" tabindex="0" ?hidden=${this.tab !== 'crossings'}></crossing-list>
        <seek-list role="tabpanel" id="panel-seek" aria-labelledby="tab-seek" tabindex="0" ?hidden=${this.tab !== 'seek'}></seek-list>
        <map-list role="tabpanel" id="panel-map" aria-labelledby="tab-map" tabindex="0" ?hidden=${this.tab !== 'map'}></map-list>
      </div>`;
  }

  #key(event) {
    const i = TABS.findIndex(([each]) => each === this.tab);
    const to = { ArrowRight: i + 1, ArrowLeft: i - 1, Home: 0, End: TABS.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const [tab] = TABS[(to + TABS.length) % TABS.length];
    this.show(tab);
    this.updateComplete.then(() => this.querySelector('#tab-' + tab).focus());
  }
}

const CROSS = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m5 5 10 10M15 5 5 15" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round"/></svg>`;

customElements.define('side-panel', SidePanel);
