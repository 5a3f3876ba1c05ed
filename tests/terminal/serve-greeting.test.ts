import { describe, expect, it } from 'vitest';
import { greeting } from '../../src/terminal/serve-greeting.ts';

const greets = (devices: readonly string[], itself: string | null) =>
  greeting({ urls: { devices, itself }, fingerprint: 'AB:CD', authority: 'EF:01' });

describe('What the terminal shows of a server', () => {
  it('is the address for the tablet, as text and as a square, and others where that one does not open', () => {
    const [square, first] = greets(['https://192.0.2.7:8443/'], 'https://localhost:8443/');
    expect(square).toMatch(/[▀▄█]/);
    expect(first).toBe('Open https://192.0.2.7:8443/ on the tablet, or scan the square.');
    const [, several] = greets(
      ['https://192.0.2.7:8443/', 'https://[2001:db8::7]:8443/', 'https://bay:8443/'],
      null,
    );
    expect(several).toBe(
      'Open https://192.0.2.7:8443/ on the tablet, or scan the square. Where that does not open: https://[2001:db8::7]:8443/ or https://bay:8443/.',
    );
  });

  it('is no square and no address for a tablet where none could open the page', () => {
    const lines = greets([], 'https://localhost:8443/');
    expect(lines[0]).toBe(
      'No other device can open the page: this machine is in no network, or --host keeps the server from it. On this machine itself: https://localhost:8443/',
    );
    expect(lines.join('\n')).not.toMatch(/[▀▄█]/);
    expect(lines[1]).toContain('https://localhost:8443/trust says how');
  });

  it('are the fingerprints that a browser is compared with', () => {
    const lines = greets(['https://192.0.2.7:8443/'], null);
    expect(lines).toContain('AB:CD');
    expect(lines).toContain('EF:01');
    expect(lines[2]).toContain('https://192.0.2.7:8443/trust says how');
  });
});
