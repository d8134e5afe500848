// The search on the index: what stands on the page is searched, so that it needs neither a server nor a list of its own.

const PLACE = '#find=';

export class Finder {
  /** @param {HTMLElement} form with its field */
  constructor(form) {
    this.field = /** @type {HTMLInputElement} */ (form.querySelector('input'));
    this.said = /** @type {HTMLElement} */ (form.querySelector('output'));
    this.items = [...document.querySelectorAll('[data-words]')].map((item) => ({
      item: /** @type {HTMLElement} */ (item),
      text: searched(item.textContent + ' ' + item.getAttribute('data-words')),
    }));
    form.hidden = false;
    this.field.addEventListener('input', () => this.find());
    form.addEventListener('submit', (event) => event.preventDefault());
    addEventListener('hashchange', () => this.#place());
    this.#place();
  }

  // A label on another page leads here with what is to be found.
  #place() {
    if (!location.hash.startsWith(PLACE)) return;
    this.field.value = decodeURIComponent(location.hash.slice(PLACE.length));
    this.find();
  }

  /** Shows what has every word of the field, at the beginning of one of its own. */
  find() {
    const words = folded(this.field.value).split(' ').filter(Boolean);
    let found = 0;
    for (const { item, text } of this.items) {
      item.hidden = !words.every((word) => text.includes(' ' + word));
      if (!item.hidden) found++;
    }
    for (const list of document.querySelectorAll('section')) {
      if (list.querySelector('[data-words]')) list.hidden = !list.querySelector('[data-words]:not([hidden])');
    }
    this.said.textContent = !words.length ? '' : found === 0 ? 'Nothing here has all these words.' : found === 1 ? 'One found.' : found + ' found.';
  }
}

/** Also as who leaves hyphens out may write it: cateye. @param {string} text */
function searched(text) {
  return folded(text) + folded(text.replace(/-/g, ''));
}

/** Small letters without marks, a space before each word. @param {string} text */
export function folded(text) {
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  return ' ' + plain.replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
}
