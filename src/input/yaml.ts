// Alone in a file, which the build makes one with the library's own: help would otherwise open 75 files first.
export { isMap, isScalar, isSeq, Lexer, LineCounter, type Node, parseDocument, stringify } from 'yaml';
