import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Path of a browser to look with; undefined where none is installed, and the looking is skipped. */
export const browserPath = places.find((path) => existsSync(path));

/** Starts the browser, offline. */
export function openBrowser(): Promise<Browser> {
  if (browserPath === undefined) throw new Error('no browser is installed');
  return chromium.launch({ executablePath: browserPath, args: ['--no-sandbox'] });
}

/** A page with a document in it, and all that it said or asked for while it loaded. */
export async function openPage(
  browser: Browser,
  html: string,
  width: number,
): Promise<{ page: Page; asked: string[]; said: string[] }> {
  const page = await browser.newPage({ viewport: { width, height: 800 } });
  const asked: string[] = [];
  const said: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(String(error)));
  page.on('dialog', (dialog) => {
    said.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.setContent(html, { waitUntil: 'load' });
  return { page, asked, said };
}
