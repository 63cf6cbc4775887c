/** The web host, opened in the system's browser where there is one. */
import type { Host } from '../api.ts';
import { listen } from '../web/listen.ts';
import { createPairing } from '../web/pairing.ts';
import { openStaticFiles } from '../web/static-files.ts';

export interface WebStart {
  readonly host: Host;
  /** Folder of the built renderer. */
  readonly pages: string;
  readonly port: number;
  /** Opens an address in a browser; absent: there is none. */
  readonly open?: (address: string) => Promise<unknown>;
  readonly say: (line: string) => void;
}

/** Serves, opens the browser or prints the address, and keeps serving until it is closed. @returns how to close */
export async function startWeb({ host, pages, port, open, say }: WebStart): Promise<() => Promise<void>> {
  const { address, close } = await listen(
    { host, pairing: createPairing(), files: await openStaticFiles(pages) },
    port,
  );
  const opened =
    open !== undefined &&
    (await open(address).then(
      () => true,
      () => false,
    ));
  say(
    opened
      ? 'Afterheat is open in your browser. If it is not, open this address (it works once):'
      : 'Open this address in a browser (it works once):',
  );
  say(`  ${address}`);
  say('Ctrl-C ends it.');
  return close;
}
