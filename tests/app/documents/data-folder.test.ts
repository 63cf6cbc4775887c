/** source: XDG Base Directory Specification 0.8, "XDG_DATA_HOME", for Linux; common practice for the others. */
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { dataFolder } from '../../../app/documents/data-folder.ts';

const home = '/home/ada';
test.each([
  { name: 'Linux', platform: 'linux', env: {}, expected: '/home/ada/.local/share/afterheat' },
  { name: 'Linux with XDG_DATA_HOME', platform: 'linux', env: { XDG_DATA_HOME: '/data' }, expected: '/data/afterheat' },
  {
    name: 'Linux with a relative XDG_DATA_HOME, which counts as none',
    platform: 'linux',
    env: { XDG_DATA_HOME: 'data' },
    expected: '/home/ada/.local/share/afterheat',
  },
  { name: 'macOS', platform: 'darwin', env: {}, expected: '/home/ada/Library/Application Support/Afterheat' },
  { name: 'a folder named by AFTERHEAT_DATA', platform: 'linux', env: { AFTERHEAT_DATA: '/mine' }, expected: '/mine' },
] as const)('documents are kept in the usual place of $name', ({ platform, env, expected }) => {
  expect(dataFolder(undefined, { platform, env, home })).toBe(expected);
});

test('a folder asked for stands before all others', () => {
  expect(dataFolder('here', { platform: 'linux', env: { AFTERHEAT_DATA: '/mine' }, home })).toBe(resolve('here'));
});
