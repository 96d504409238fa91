import { describe, expect, it } from 'vitest';
import { foreignHost } from './foreignHost';

describe('the host an address would ask', () => {
  it.each([
    '/tiles/{z}/{x}/{y}.png',
    '/tiles/{z}/{x}/{-y}{r}.png',
    './picture.png',
    '../up//picture.png',
    'picture.png',
    'sample:corner-lot',
    'data:image/png;base64,AAAA',
    'blob:https://own.example/1-2',
  ])('is the page’s own for %j', (address) => {
    expect(foreignHost(address)).toBeNull();
  });

  // How browsers read these: WHATWG URL Standard, section 4.4 (relative slash state, and the stripping of tab and newline)
  it.each([
    ['https://tiles.example/{z}/{x}/{y}.png', 'tiles.example'],
    ['HTTP://tiles.example:8080/', 'tiles.example:8080'],
    ['https://{s}.tiles.example/{z}/{x}/{y}{r}.png', 'a.tiles.example'],
    ['//tiles.example/p.png', 'tiles.example'],
    ['/\\tiles.example/{z}/{x}/{y}.png', 'tiles.example'],
    ['\\\\tiles.example/p.png', 'tiles.example'],
    ['/\t/tiles.example/{z}/{x}/{y}.png', 'tiles.example'],
    ['/\n\\tiles.example/p.png', 'tiles.example'],
    ['\u0000//tiles.example/p.png', 'tiles.example'],
    ['/{r}/tiles.example/{z}/{x}/{y}.png', 'tiles.example'],
    ['/{ r }/tiles.example/{z}/{x}/{y}.png', 'tiles.example'],
  ])('of %j is %s', (address, host) => {
    expect(foreignHost(address)).toBe(host);
  });

  it.each(['/{attribution}tiles.example/{z}', 'https://', 'ftp:', 'javascript:0'])(
    'cannot be told of %j',
    (address) => {
      expect(foreignHost(address)).toBe(address);
    },
  );
});
