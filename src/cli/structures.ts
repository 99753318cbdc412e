import { findStructure, type Structure, structures } from '../structure/index.js';
import type { After, Unit } from '../structure/unit.js';
import { bold, EXIT, type Io, say, sayJson } from './io.js';

/** Tells of every structure in one line each, or of one in full. Returns the exit code. */
export function runStructures(name: string | undefined, json: boolean, io: Io): number {
  if (name === undefined) {
    if (json) sayJson(io, { format: 'shedlight-structures', version: 1, structures: structures.map(plainData) });
    else sayAll(io);
    return EXIT.done;
  }
  const structure = findStructure(name);
  if (json) sayJson(io, { format: 'shedlight-structure', version: 1, ...plainData(structure) });
  else for (const line of linesOf(structure, (text) => bold(io.stdout, text))) say(io.stdout, line);
  return EXIT.done;
}

function sayAll(io: Io): void {
  const width = Math.max(...structures.map((structure) => structure.name.length));
  for (const { name, shafts, blocks, about } of structures) {
    const size = `${shafts} shafts, ${blocks.length === 1 ? '1 block ' : `${blocks.length} blocks`}`;
    say(io.stdout, `${bold(io.stdout, name)}${' '.repeat(width - name.length)}  ${size}  ${firstSentence(about)}`);
  }
}

function firstSentence(text: string): string {
  return /^.*?(?=\.(\s|$))/.exec(text)?.[0] ?? text;
}

/** Everything a weaver wants to know of a structure, a line each. */
function linesOf(structure: Structure, head: (text: string) => string): string[] {
  const { name, aliases, about, shafts, blocks, profile, tieUp, tabby, manners } = structure;
  const row = (label: string, text: string): string => `  ${label.padEnd(12)}${text}`;
  return [
    head(name) + (aliases.length > 0 ? `, also ${aliases.join(', ')}` : ''),
    about,
    '',
    row('shafts', `${shafts}${structure.withBlocks ? ', more for more blocks' : ''}`),
    row('blocks', `${blocks.join(' ')}; woven as ${profile.join(' ')} where no profile is given`),
    ...blocks.map((block) => row(`  ${block}`, unitInWords(structure.threading.blocks[block]!, '-'))),
    row('tie-up', 'shafts raised by each treadle'),
    ...Object.entries(tieUp).map(([treadle, raised]) => row(`  ${treadle}`, raised.join(' '))),
    row('tabby', tabby === undefined ? 'none all over' : tabby.join(' and ')),
    ...manners.flatMap((manner, place) => [
      row('treadling', manner.name + (place === 0 && manners.length > 1 ? ', the usual one' : '')),
      ...(manner.about === undefined ? [] : [row('', manner.about)]),
      ...Object.entries(manner.blocks).map(([block, unit]) => row(`  ${block}`, unitInWords(unit, ' '))),
    ]),
    row('floats', structure.floatLaw),
    row('colour', structure.colour),
    row('enlarging', structure.scale),
    row('source', structure.source),
  ];
}

/** A unit, and what it becomes after certain strands. */
function unitInWords<S extends number | string>(unit: Unit<S>, joint: string): string {
  const after = Object.entries<After<S> | undefined>(unit.after ?? {}).flatMap(([last, change]) => {
    if (change === undefined) return [];
    if ('never' in change) return [`never after ${last}: ${change.never}`];
    const first = (change.first ?? []).map((strands) => strands.join(joint)).filter((strands) => strands !== '');
    const lay = change.lay?.join(joint);
    const said = [
      ...(first.length > 0 ? [`put in ${first.join(' or ')}`] : []),
      ...(lay === undefined ? [] : [lay === '' ? 'leave it out' : `lay ${lay}`]),
    ];
    return said.length === 0 ? [] : [`after ${last} ${said.join(' and ')}`];
  });
  return [unit.lay.join(joint), ...after].join('; ');
}

/** What there is of a structure that is data. */
function plainData({ withBlocks, ...data }: Structure) {
  return { ...data, moreBlocks: withBlocks !== undefined };
}
