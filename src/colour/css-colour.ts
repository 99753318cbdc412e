// Alone in a file, which the build makes one with the library's own: help would otherwise open 150 files first.
import 'culori/css';

export { formatHex, parse } from 'culori/fn';
