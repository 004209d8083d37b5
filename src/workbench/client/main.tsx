/** Lays the desk in the page. */
import { render } from 'preact';
import { App } from './app.tsx';
import { DeskContext } from './desk.ts';
import { makeDesk } from './make-desk.ts';
import { scriptAddress } from './markup.ts';
import { atTheServer } from './folders/server.ts';

const host = document.getElementById('desk');
if (!host) throw new Error('the page has no place for the desk');

const desk = makeDesk();
host.replaceChildren();
render(
  <DeskContext.Provider value={desk}>
    <App />
  </DeskContext.Provider>,
  host,
);

/** A page from a server of files is kept by the browser. One from a desk's server is gone with it, and always the newest. */
const keepPage = (): void => {
  if (!('serviceWorker' in navigator) || !isSecureContext) return;
  void navigator.serviceWorker.register(scriptAddress('offline.js')).catch(desk.failed);
};

const begin = async (): Promise<void> => {
  const query = new URLSearchParams(location.search);
  const found = await atTheServer(query.get('book') ?? undefined);
  if (found.kind === 'files') keepPage();
  await desk.start(found, query);
};
void begin().catch(desk.failed);
