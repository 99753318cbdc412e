import { drawdown, isUp } from '../../cloth/drawdown.js';
import { judgeFile, writeWhole } from '../../files/whole.js';
import { structureSheet } from '../../gallery/structures/structure-sheet.js';
import { Problem, quote } from '../../problem.js';
import { findStructure, type Structure, structures, weaveOf } from '../../structure/catalogue/catalogue.js';
import { MOST_BLOCKS, sized, tooMany } from '../../structure/model/sized.js';
import type { After, Unit } from '../../structure/model/unit.js';
import { counted } from '../../words/counts.js';
import { bold, EXIT, type Io, say, sayJson, sayLines } from '../shell/io.js';

/** The arguments of the command. */
export interface StructuresArguments {
  readonly name?: string | undefined;
  readonly blocks?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Lists all structures in short, or one in full, and draws it if asked for. Returns the exit code. */
export async function runStructures(given: StructuresArguments, io: Io): Promise<number> {
  const { name, blocks, out, json } = given;
  if (out !== undefined && !out.toLowerCase().endsWith('.png')) {
    throw new Problem(`--out: found ${quote(out)}; expected a name that ends in .png`);
  }
  if (name === undefined) {
    if (out !== undefined) throw new Problem('--out: found it without a structure; expected the name of one to draw');
    if (blocks !== undefined) throw new Problem('--blocks: found it without a structure; expected the name of one');
    if (json) sayJson(io, { format: 'shedlight-structures', version: 1, structures: structures.map(plainData) });
    else sayAll(io);
    return EXIT.done;
  }
  const structure = withBlocks(findStructure(name), blocks);
  if (out !== undefined) {
    judgeFile(out);
    writeWhole(out, await structureSheet(structure));
  }
  const picture = out === undefined ? {} : { picture: out };
  if (json) sayJson(io, { format: 'shedlight-structure', version: 1, ...plainData(structure), ...picture });
  else for (const line of linesOf(structure, (text) => bold(io.stdout, text))) say(io.stdout, line);
  if (!json && out !== undefined) sayLines(io.stdout, `\nOpen ${bold(io.stdout, out)}`);
  return EXIT.done;
}

/** The structure with the blocks that are asked for. */
function withBlocks(structure: Structure, asked: string | undefined): Structure {
  if (asked === undefined) return structure;
  const blocks = Number(asked);
  if (!Number.isInteger(blocks) || blocks < 1 || blocks > MOST_BLOCKS) {
    throw new Problem(`--blocks: found ${quote(asked)}; expected blocks from 1 to ${MOST_BLOCKS}`);
  }
  const fault = tooMany(structure, blocks);
  if (fault !== undefined) throw new Problem(`--blocks: ${fault}`);
  return sized(structure, blocks);
}

function sayAll(io: Io): void {
  for (const structure of structures) {
    const { name, shafts, blocks, tabby, tieUp, floatLaw, colour, withBlocks } = structure;
    const count = `${counted(blocks.length, 'block')}`;
    const more = withBlocks === undefined ? '' : ' (more on more shafts)';
    const sheds =
      tabby === undefined ? 'no tabby' : `tabby ${tabby.map((treadle) => tieUp[treadle]!.join(',')).join(' / ')}`;
    say(io.stdout, bold(io.stdout, name));
    say(io.stdout, `  ${shafts} shafts, ${count}${more}, unit ${unitOf(structure)}; ${sheds}; ${balanceOf(structure)}`);
    say(io.stdout, `  floats: ${floatLaw}`);
    say(io.stdout, `  colour: ${colour}`);
  }
}

/** Words for the ends in a unit: `4 ends`, or `4 to 7 ends` with incidental ends. */
function unitOf(structure: Structure): string {
  const { endUnits } = weaveOf(structure, structure.profile);
  const [least, most] = [Math.min(...endUnits), Math.max(...endUnits)];
  return least === most ? `${counted(least, 'end')}` : `${least} to ${most} ends`;
}

/** Whether the face shows mostly warp or weft; with a pattern weft, the face of the ground alone. */
function balanceOf(structure: Structure): string {
  const weave = weaveOf(structure, structure.profile);
  if (weave.pickKinds.includes('pattern')) return 'balanced ground under a pattern weft';
  if (weave.widths.ground < weave.widths.warp) return 'warp-faced by its sett, the weft being fine';
  const cloth = drawdown(weave);
  let up = 0;
  for (let j = 0; j < cloth.picks; j++) for (let i = 0; i < cloth.ends; i++) if (isUp(cloth, j, i)) up++;
  const share = up / (cloth.ends * cloth.picks);
  // Spots and lace on plain weave count as balanced; a 3/1 twill does not.
  return share > 0.65 ? 'warp-faced' : share < 0.35 ? 'weft-faced' : 'balanced';
}

/** Lines with everything a weaver wants to know about a structure. */
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
    row('balance', balanceOf(structure)),
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

/** Words for a unit and its exceptions after certain strands. */
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

/** A structure without its function, for JSON. */
function plainData({ withBlocks, ...data }: Structure) {
  const structure = { ...data, ...(withBlocks && { withBlocks }) };
  return { ...data, moreBlocks: withBlocks !== undefined, unit: unitOf(structure), balance: balanceOf(structure) };
}
