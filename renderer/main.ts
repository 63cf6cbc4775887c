/** Finds the host and puts the face on it. */
import { mount } from 'svelte';
import App from './App.svelte';
import { desktopHost } from './host/desktop-host.ts';
import { pair } from './host/pairing.ts';
import { webHost } from './host/web-host.ts';
import './theme/fonts.css';
import './theme/tokens.css';
import './theme/base.css';
import './theme/print.css';

function keeper(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

async function begin(target: HTMLElement): Promise<void> {
  const desktop = desktopHost(window);
  if (desktop === null) {
    const paired = await pair(window.location, (address) => window.history.replaceState(null, '', address), fetch);
    if (!paired.ok) {
      target.textContent = `${paired.words} Start Afterheat again and open the address that it prints.`;
      return;
    }
  }
  const host =
    desktop ?? webHost({ ask: (input, init) => fetch(input, init), listen: (address) => new EventSource(address) });
  target.textContent = '';
  mount(App, { target, props: { host, now: () => Date.now(), keeper: keeper(), firstSession: 'harbour-sunday' } });
}

const target = document.getElementById('app');
if (target === null) throw new Error('the page has no element #app');
void begin(target).catch((error: unknown) => {
  target.textContent = `Afterheat cannot be reached: ${error instanceof Error ? error.message : String(error)}`;
});
