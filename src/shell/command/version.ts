import { readFileSync } from 'node:fs';

/** The version in the package's own package.json: from here, the same path in the sources and in the built files. */
export function version(): string {
  const manifest: unknown = JSON.parse(
    readFileSync(new URL('../../../package.json', import.meta.url), 'utf8'),
  );
  const hasVersion = typeof manifest === 'object' && manifest !== null && 'version' in manifest;
  return hasVersion ? String(manifest.version) : 'unknown';
}
