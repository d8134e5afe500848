// What the page has from its libraries and from the document, told loosely: what is checked is what it asks of the server.

declare module 'lit' {
  export const html: any;
  export const svg: any;
  export const nothing: any;
  export class LitElement extends HTMLElement {
    requestUpdate(): void;
    updateComplete: Promise<boolean>;
  }
}
declare module 'lit/*';
declare module 'three';
declare module 'three/*';
declare module 'uplot';

interface ParentNode {
  querySelector(selectors: string): any;
  querySelectorAll(selectors: string): any;
}
interface Event {
  readonly detail: any;
}
interface Window {
  [own: string]: any;
}
