// What all parts of the page share: they draw into the page itself (so that names and labels reach across parts) and draw anew when
// the session, the clock or another part of the desk says that something changed; while a hand is dragging, five times a second.

import { LitElement } from 'lit';

const CALM = 200; // milliseconds between drawings while dragging

export class Part extends LitElement {
  /** Known from `connect` on; nothing is drawn before. @type {import('../main.js').Desk} */
  desk = /** @type {any} */ (undefined);
  /** @type {ReturnType<typeof setTimeout> | null} */
  due = null;

  createRenderRoot() {
    return this;
  }

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    this.desk = desk;
    desk.session.addEventListener('state', () => this.soon());
    this.soon();
  }

  soon() {
    if (!this.desk || !this.desk.session.dragging) {
      this.requestUpdate();
    } else if (!this.due) {
      this.due = setTimeout(() => {
        this.due = null;
        this.requestUpdate();
      }, CALM);
    }
  }

  shouldUpdate() {
    return !!this.desk;
  }
}
