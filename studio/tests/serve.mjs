// A page of studio/ served on a free port of the loopback address, and Chromium to look at it.
import { chromium } from 'playwright-core';
import { createServer } from 'vite';

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function withBrowser(work) {
  const server = await createServer({
    root: new URL('..', import.meta.url).pathname,
    server: { port: 0, hmr: false },
    logLevel: 'error',
  });
  await server.listen();
  const address = server.httpServer.address();
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags });
  try {
    await work(browser, `http://127.0.0.1:${address.port}`);
  } finally {
    await browser.close();
    await server.close();
  }
}
