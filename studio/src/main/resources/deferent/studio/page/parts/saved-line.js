import { html } from 'lit';
import { sentence } from './phrase-line.js';

/** How far a file has come, or where it is. @param {import('../state/saving.js').Saving} saving */
export function savedLine({ error, file, progress }) {
  if (error) return html`<p class="told" data-tone="warn" role="status">${sentence(error)}</p>`;
  if (!file) return html`<p class="quiet" role="status">${progress}</p>`;
  return html`<p class="quiet way-file" role="status">Saved as <a href=${file.file} download=${file.name}>${file.name}</a>, with your downloads.${file.caution ? ' ' + file.caution : ''}</p>`;
}
