import { titleOf } from '../gallery/html/page-asked.js';
import { headerOf } from '../gallery/html/page-header.js';
import type { Manifest } from '../gallery/manifest/manifest.js';
import { askBox } from './ask/ask-box.js';
import { type AskedOf, addressOfAsked, askedOfAddress } from './ask/asked.js';
import { el, one } from './paint/dom.js';
import { openRoom, type Room } from './room.js';
import type { Address } from './store/store.js';
import { serve } from './workers/search-worker.js';

/**
 * Makes the page interactive. Without this script it shows all cloths, readable and printable.
 *
 * @param script the text of this script, which workers run too
 */
async function begin(script: string): Promise<void> {
  const data = one(document, '#gallery').textContent!;
  const address = browserAddress();
  let room: Room | undefined;
  const ask = askBox(script, ({ question, outcome, manifest }, asked) => {
    room?.leave();
    one(document, 'header').innerHTML = headerOf(question, outcome, []).markup;
    document.title = `${titleOf(question)} · shedlight gallery`;
    one(document, '.under .links').append(' · ', ask.saver);
    address.ask(asked);
    room = openRoom(manifest, address, ask.opener, room?.kept());
    scrollTo(0, 0);
  });
  document.body.append(ask.dialog);
  if (data !== '') {
    const manifest = await unpacked(data);
    ask.show({ asked: manifest.question });
    room = openRoom(manifest, address, ask.opener);
  } else one(document, 'main').replaceChildren(one(document, 'main h2'), welcome(ask.opener));
  document.documentElement.classList.add('is-alive');
  addEventListener('popstate', () => {
    // Another question, or the gallery of the file: the page begins again with it.
    const said = (asked: AskedOf | undefined): string => (asked === undefined ? '' : addressOfAsked(asked));
    if (said(askedOfAddress(address.read())) !== said(address.asked())) location.reload();
  });
  const asked = address.asked();
  if (asked !== undefined) {
    ask.show(asked);
    ask.open();
    await ask.start();
  } else if (data === '') ask.open();
}

/** What a page without a gallery says. */
function welcome(opener: HTMLElement): HTMLElement {
  const words =
    'Say what is on your loom, or in your mind, and which colours you have. This page tries the colour orders and shows the cloths that are worth a sample. It works without a network, and what you ask stays on this computer.';
  return el('div', { id: 'cloths', tabindex: -1, class: 'welcome' }, el('p', {}, words), opener);
}

/** Reads the gallery out of the page: JSON, as zlib data in base 64. */
async function unpacked(text: string): Promise<Manifest> {
  const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
  const json = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'));
  return (await new Response(json).json()) as Manifest;
}

/** Milliseconds from the last change of the view to the change of the address. */
const ADDRESS_AFTER = 200;

/** An address that holds a question, too, once one was asked in the page. */
interface AskedAddress extends Address {
  asked(): AskedOf | undefined;
  ask(asked: AskedOf): void;
}

/** The address bar. It is changed after a delay: browsers refuse a change with every movement of a slider. */
function browserAddress(): AskedAddress {
  let writing: ReturnType<typeof setTimeout> | undefined;
  const read = (): string => location.hash.replace(/^#/, '');
  let asked = askedOfAddress(read());
  const whole = (view: string): string =>
    `#${[asked && addressOfAsked(asked), view].filter((part) => part !== undefined && part !== '').join('&')}`;
  return {
    read,
    write(view, step) {
      clearTimeout(writing);
      if (step) history.pushState(null, '', whole(view));
      else writing = setTimeout(() => history.replaceState(null, '', whole(view)), ADDRESS_AFTER);
    },
    asked: () => asked,
    ask(question) {
      clearTimeout(writing);
      // A question that is asked again from its own address keeps the view that the address holds.
      const again = asked !== undefined && addressOfAsked(asked) === addressOfAsked(question);
      asked = question;
      if (!again) history.pushState(null, '', whole(''));
    },
  };
}

if (typeof document === 'undefined') serve(globalThis as unknown as Parameters<typeof serve>[0]);
else void begin(document.currentScript!.textContent!);
