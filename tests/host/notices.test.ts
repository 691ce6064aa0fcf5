import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { notices } from '../../src/host/notices.ts';

it('has the licence of every library that the page is made with, and of those that they bring', async () => {
  const text = await notices('.');
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
    dependencies: Record<string, string>;
  };
  for (const [name, version] of Object.entries(dependencies)) {
    expect(text).toContain(`\n${name} ${version} · `);
  }
  for (const brought of ['midi-file', 'standardized-audio-context', 'tslib']) {
    expect(text).toContain(`\n${brought} `);
  }
  expect(text).toContain('Permission is hereby granted, free of charge');
  expect(text).not.toContain('It brings no text');
});
